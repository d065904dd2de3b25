import type { Notice, NoticePlace } from '@pourproof/plane';
import type { LayoutOptions } from './layout-options.ts';
import { letteringNotice } from './lettering-notices.ts';
import { lostJoins } from './lost-joins.ts';
import type { OpenedFont } from './opened-font.ts';
import type { Layout, Letter } from './place-lines.ts';

/**
 * Scripts whose letters change form by their neighbours or reorder, so that a font without rules for them
 * sets them wrongly.
 */
const SHAPED_SCRIPTS: ReadonlySet<string> = new Set(
  'Arab Syrc Nkoo Adlm Mong Deva Beng Guru Gujr Orya Taml Telu Knda Mlym Sinh Khmr Mymr Tibt Java Bali'.split(
    ' ',
  ),
);

/**
 * Notices about a setting of text: letters that the font cannot set right, and options that spoil the
 * setting.
 */
export function settingNotices(
  font: OpenedFont,
  text: string,
  layout: Layout,
  options: LayoutOptions,
  blank: ReadonlySet<Letter>,
): readonly Notice[] {
  const { letters } = layout;
  const isMoved = (options.trackingMm ?? 0) !== 0 || options.arc !== undefined;
  const unshaped = [...new Set(letters.map((letter) => letter.cluster.script))]
    .filter((script) => SHAPED_SCRIPTS.has(script) && !hasRulesFor(font, script))
    .map(scriptName);
  return [
    ...font.notices,
    ...(text.includes('\t') ? [letteringNotice('lettering-tab', {}, [{}])] : []),
    ...aboutLetters(
      'lettering-loose-mark',
      letters.filter((letter) => letter.cluster.looseMark),
    ),
    ...(unshaped.length === 0
      ? []
      : [
          letteringNotice(
            'lettering-no-shaping',
            { scripts: unshaped },
            unshaped.map((name) => ({ element: `${name} letters` })),
          ),
        ]),
    ...aboutLetters('lettering-joins-apart', isMoved ? lostJoins(font, layout) : []),
    ...aboutLetters(
      'lettering-invisible',
      letters.filter((letter) => blank.has(letter)),
    ),
  ];
}

function aboutLetters(
  code: 'lettering-loose-mark' | 'lettering-joins-apart' | 'lettering-invisible',
  letters: readonly Letter[],
): Notice[] {
  return letters.length === 0 ? [] : [letteringNotice(code, { count: letters.length }, letters.map(placeOf))];
}

function placeOf(letter: Letter): NoticePlace {
  return {
    element: `"${letter.text}" in line ${letter.line}`,
    atMm: [letter.emToMm[4], letter.emToMm[5]],
  };
}

function hasRulesFor({ shaper, shaped }: OpenedFont, script: string): boolean {
  const wanted: readonly string[] = shaper.otTagsFromScriptAndLanguage(script, '').scriptTags;
  return shaped.face.getTableScriptTags('GSUB').some((tag) => wanted.includes(tag));
}

function scriptName(tag: string): string {
  return new Intl.DisplayNames('en', { type: 'script' }).of(tag) ?? tag;
}
