import type { Notice, NoticePlace } from '@pourproof/plane';
import type { LayoutOptions } from './layout-options.ts';
import { lostJoins } from './lost-joins.ts';
import type { OpenedFont } from './opened-font.ts';
import type { Layout, Letter } from './place-lines.ts';

/** Scripts whose letters change form by their neighbours or reorder, so that a font without rules for them sets them wrongly. */
const SHAPED_SCRIPTS: ReadonlySet<string> = new Set(
  'Arab Syrc Nkoo Adlm Mong Deva Beng Guru Gujr Orya Taml Telu Knda Mlym Sinh Khmr Mymr Tibt Java Bali'.split(
    ' ',
  ),
);

/** What is worth saying about a setting of text: letters that the font cannot set right, and options that spoil the setting. */
export function letteringNotices(
  font: OpenedFont,
  text: string,
  layout: Layout,
  options: LayoutOptions,
  blank: ReadonlySet<Letter>,
): readonly Notice[] {
  const { letters } = layout;
  const scripts = [...new Set(letters.map((letter) => letter.cluster.script))];
  const moved = (options.trackingMm ?? 0) !== 0 || options.arc !== undefined;
  return [
    ...font.notices,
    ...notice(
      text.includes('\t') ? [{}] : [],
      'lettering-tab',
      'note',
      'Each tab of the text was taken as four spaces.',
    ),
    ...notice(
      letters.filter((letter) => letter.cluster.looseMark).map(placeOf),
      'lettering-loose-mark',
      'caution',
      'The font does not say where these marks sit on their letters: look at them, or choose another font.',
    ),
    ...notice(
      scripts
        .filter((script) => SHAPED_SCRIPTS.has(script) && !hasRulesFor(font, script))
        .map((script) => ({ element: `${scriptName(script)} letters` })),
      'lettering-no-shaping',
      'caution',
      'The font has no rules for joining or ordering the letters of this script, so the text will read wrongly: choose another font.',
    ),
    ...notice(
      moved ? lostJoins(font, layout).map(placeOf) : [],
      'lettering-joins-apart',
      'caution',
      'These letters join their right neighbour in this font, but stand apart here: use less tracking or a wider arc.',
    ),
    ...notice(
      letters.filter((letter) => blank.has(letter)).map(placeOf),
      'lettering-invisible',
      'caution',
      'The font draws nothing for these characters: if they should show, choose another font.',
    ),
  ];
}

function notice(
  where: readonly NoticePlace[],
  code: string,
  severity: Notice['severity'],
  text: string,
): Notice[] {
  return where.length === 0 ? [] : [{ code, text, where, severity }];
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
