import type { TypedJob } from '@pourproof/job';
import type { NamedBytes } from './artwork-source.ts';
import type { ChosenFont } from './loads.ts';
import { shippedFonts } from './shipped-fonts.ts';

/** A font of the maker's own. */
export const OWN_FONT = 'own';
/** Letters of single strokes, as wide as the bit. */
export const SINGLE_STROKES = 'single-line';

/** The font of a job's lettering, as forms name it: a file of the page's, {@link OWN_FONT} or {@link SINGLE_STROKES}. */
export function fontChoice({ singleLine, font }: TypedJob): string {
  if (singleLine === true) {
    return SINGLE_STROKES;
  }
  const shipped =
    shippedFonts.find(({ file }) => file === font) ?? (font === undefined ? shippedFonts[0] : undefined);
  return shipped?.file ?? OWN_FONT;
}

/** The maker's own font among those that can be chosen; `null` where the one at hand comes with the page. */
export function ownFont(atHand: NamedBytes | null): NamedBytes | null {
  return shippedFonts.some(({ file }) => file === atHand?.name) ? null : atHand;
}

/** What a choice loads; `undefined` where it is the maker's own font and none is at hand. */
export function chosenFont(choice: string, atHand: NamedBytes | null): ChosenFont | undefined {
  if (choice === SINGLE_STROKES) {
    return null;
  }
  const shipped = shippedFonts.find(({ file }) => file === choice);
  if (shipped !== undefined) {
    return { kind: 'shipped', font: shipped };
  }
  return atHand === null ? undefined : { kind: 'at-hand', font: atHand };
}
