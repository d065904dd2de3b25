import { formatLength } from '@pourproof/plane';
import { ArtworkError } from '../artwork-error.ts';
import type { RefusalTable } from '../refusal-words.ts';
import type { FontAxis } from './lettering-font.ts';
import { typedText } from './typed-text.ts';

/** What may be wrong with a font or with a text to be set; each code is explained in docs/lettering.md. */
interface LetteringFaults {
  readonly 'font-axis-missing': { readonly tag: string; readonly axes: readonly FontAxis[] };
  readonly 'font-axis-range': { readonly value: number; readonly axis: FontAxis };
  readonly 'font-face-missing': { readonly face: number; readonly faces: number };
  readonly 'font-single-line': { readonly font: string };
  /** Which part of the file is cut short. */
  readonly 'font-truncated': { readonly part: string };
  readonly 'font-unreadable':
    | { readonly cause: 'no-font' }
    | { readonly cause: 'damaged'; readonly packing: 'WOFF' | 'WOFF2' }
    | { readonly cause: 'too-large'; readonly bytes: number };
  readonly 'font-without-cap-height': Record<never, never>;
  readonly 'font-without-characters': Record<never, never>;
  readonly 'font-without-outlines': Record<never, never>;
  readonly 'lettering-arc-length': {
    readonly line: number;
    readonly lengthMm: number;
    readonly radiusMm: number;
    /** Radius that is enough, with a little to spare. */
    readonly enoughMm: number;
  };
  readonly 'lettering-arc-radius': { readonly line: number; readonly radiusMm: number };
  readonly 'lettering-blank': Record<never, never>;
  readonly 'lettering-size':
    | { readonly cause: 'huge'; readonly sizeMm: number }
    | { readonly cause: 'no-width' }
    | { readonly cause: 'tracking'; readonly widthMm: number };
  /** `tallMm`: capitals must be taller than this for the stroke. */
  readonly 'lettering-stroke': { readonly strokeMm: number; readonly tallMm: number };
  readonly 'missing-glyph': {
    /** `null` for the single-line alphabet. */
    readonly font: string | null;
    readonly characters: readonly MissingCharacter[];
  };
}

/** A character without a letter, with its marks, and the line where it first stands, from 1. */
interface MissingCharacter {
  readonly text: string;
  readonly line: number;
}

/** The error for a font or a text that cannot be used. */
export function letteringRefusal<Code extends keyof LetteringFaults>(
  code: Code,
  parameters: LetteringFaults[Code],
): ArtworkError {
  return new ArtworkError(code, parameters, (unit) => WORDS[code](parameters, unit));
}

const WORDS: RefusalTable<LetteringFaults> = {
  'font-axis-missing': ({ tag, axes }) => ({
    what: `The font has no axis "${tag}".`,
    remedy:
      axes.length === 0
        ? 'It is not a variable font: leave the axes out.'
        : `It has ${axes.map(axisText).join(', ')}.`,
  }),
  'font-axis-range': ({ value, axis }) => ({
    what: `The font's axis "${axis.tag}" cannot be ${value}.`,
    remedy: `Give a value in ${axisText(axis)}.`,
  }),
  'font-face-missing': ({ face, faces }) => ({
    what: `The font file holds ${faces} ${faces === 1 ? 'face' : 'faces'}; there is no face ${face}.`,
    remedy: `Ask for a face from 0 to ${faces - 1}.`,
  }),
  'font-single-line': ({ font }) => ({
    what: `The letters of the font ${font} are lines without width, so there is nothing between their edges to carve.`,
    remedy: 'Use single-line lettering, whose strokes are as wide as the bit, or a font with outlines.',
  }),
  'font-truncated': ({ part }) => ({
    what: `The font file is cut short: its "${part}" part runs past the end of the file.`,
    remedy: 'Copy or download the font again.',
  }),
  'font-unreadable': (fault) => ({
    what: `The font could not be read: ${unreadable(fault)}.`,
    remedy: 'Give a .ttf, .otf, .ttc, .woff or .woff2 file as its maker published it.',
  }),
  'font-without-cap-height': () => ({
    what: 'The font states no height of capitals and has no H to measure.',
    remedy: 'Give the size of the lettering as a width.',
  }),
  'font-without-characters': () => ({
    what: 'The font does not say which outline belongs to which character.',
    remedy: 'Choose another file of this font; this one was probably cut down for a single document.',
  }),
  'font-without-outlines': () => ({
    what: 'The font holds pictures of letters instead of outlines.',
    remedy: 'Choose a font with outlines (TrueType or OpenType).',
  }),
  'lettering-arc-length': ({ line, lengthMm, radiusMm, enoughMm }, unit) => ({
    what: `Line ${line} is ${formatLength(lengthMm, unit)} long, more than once round its circle of radius ${formatLength(radiusMm, unit)}.`,
    remedy: `Give a radius above ${formatLength(enoughMm, unit)} or smaller letters.`,
  }),
  'lettering-arc-radius': ({ line, radiusMm }, unit) => ({
    what: `Line ${line} would stand on a circle of radius ${formatLength(radiusMm, unit)}.`,
    remedy: 'Give a larger radius, smaller letters or fewer lines.',
  }),
  'lettering-blank': () => ({
    what: 'The text has no visible character.',
    remedy: 'Give at least one letter.',
  }),
  'lettering-size': (fault, unit) => {
    switch (fault.cause) {
      case 'huge':
        return {
          what: `A letter would be ${(fault.sizeMm / 1000).toPrecision(3)} m tall or wide.`,
          remedy: 'Check the size and its unit.',
        };
      case 'no-width':
        return {
          what: 'The text is a single upright line, which has no width to be sized by.',
          remedy: 'Give the size of the lettering as a cap height.',
        };
      case 'tracking':
        return {
          what: `The tracking alone takes ${formatLength(fault.widthMm, unit)} or more.`,
          remedy: 'Give a larger width or less tracking.',
        };
    }
  },
  'lettering-stroke': ({ strokeMm, tallMm }, unit) => ({
    what: `Strokes ${typedText(strokeMm, unit)} wide would run together in letters of this size.`,
    remedy: `Make the capitals taller than ${formatLength(tallMm, unit)}, or take a narrower bit.`,
  }),
  'missing-glyph': ({ font, characters }) => {
    const named = characters.map(
      ({ text, line }) => `${[...text].map(characterName).join(' with ')} in line ${line}`,
    );
    return {
      what: `The ${font === null ? 'single-line alphabet' : `font ${font}`} has no letter for ${named.join(', ')}.`,
      remedy:
        font === null
          ? 'Change the text, or give a font that has it.'
          : 'Choose a font that has it, or change the text.',
    };
  },
};

function axisText({ tag, min, max }: FontAxis): string {
  return `${tag} ${min}–${max}`;
}

function unreadable(fault: LetteringFaults['font-unreadable']): string {
  switch (fault.cause) {
    case 'no-font':
      return 'this is not a TrueType, OpenType, WOFF or WOFF2 font';
    case 'damaged':
      return `its ${fault.packing} packing is damaged`;
    case 'too-large':
      return `it claims to unpack to ${fault.bytes} bytes`;
  }
}

/** How a message names a character: `"é" (U+00E9)`. */
function characterName(char: string): string {
  const code = (char.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  // a mark is shown on a dotted circle, a control character not at all
  const shown = /\p{M}/u.test(char) ? `"\u25cc${char}" ` : /\p{C}|\p{Z}/u.test(char) ? '' : `"${char}" `;
  return `${shown}(U+${code})`;
}
