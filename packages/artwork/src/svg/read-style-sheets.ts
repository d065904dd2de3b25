import { parseStyleSheet, type StyleRule } from './css-rules.ts';
import { indexRules, type RuleIndex } from './match-rules.ts';
import type { SvgNotices } from './scene.ts';
import { ownText, placeOf, type SvgElement } from './svg-element.ts';

/** Rules that a program which knows them would apply. */
const CONDITIONAL = /^@(?:supports|layer|container|scope)\b/u;

/** Selectors that hold only while a pointer or a keyboard acts, never in a picture. */
const OF_A_POINTER = /:(?:hover|active|focus|visited|target)\b/u;

/** The rules of all `style` elements of a file in order; what is left out gets a notice. */
export function readStyleSheets(styles: readonly SvgElement[], notices: SvgNotices): RuleIndex {
  const rules: StyleRule[] = [];
  for (const style of styles) {
    const type = style.attributes.get('type')?.trim().toLowerCase() ?? '';
    const media = style.attributes.get('media')?.trim().toLowerCase() ?? '';
    if ((type !== '' && type !== 'text/css') || !/^(?:|all|screen)$/.test(media)) {
      notices.add('style-skipped', placeOf(style), `a style element for ${type || media}`);
      continue;
    }
    const sheet = parseStyleSheet(ownText(style).replace(/^\s*<!--|-->\s*$/g, ''));
    rules.push(...sheet.rules);
    for (const skipped of sheet.skipped) {
      notices.add(CONDITIONAL.test(skipped) ? 'style-not-taken' : 'style-skipped', placeOf(style), skipped);
    }
    for (const address of sheet.imports) {
      notices.add('external-reference', placeOf(style), address.slice(0, 60));
    }
  }
  const index = indexRules(rules);
  for (const selector of index.unknown) {
    const code = OF_A_POINTER.test(selector) ? 'style-skipped' : 'style-not-taken';
    notices.add(code, {}, `the selector "${selector.slice(0, 40)}"`);
  }
  return index;
}
