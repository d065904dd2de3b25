import { paintHex, type ResinColourId, resinColours } from '@pourproof/materials';
import * as z from 'zod/mini';
import { JobError } from '../refusals/job-error.ts';
import { shownInput } from '../values/measure-input.ts';
import { written } from './holds.ts';
import type { Rows } from './setting.ts';

/** The resin for a colour or layer of the drawing. */
export interface ResinFor {
  /** Name of the colour or layer, as the maker wrote it. */
  readonly drawn: string;
  /** Id of a resin colour, or `#rrggbb`. */
  readonly resin: ResinColourId | `#${string}`;
}

/** Resins of a drawing of several colours. */
export interface ColourSettings {
  readonly colourOf: readonly ResinFor[];
}

/** `red=black, blue=white`, or the same as an object. */
type ColourOfInput = string | Readonly<Record<string, string>>;

const COLOURS = Object.keys(resinColours) as readonly ResinColourId[];

/** Settings of several colours. */
export const COLOUR_SETTINGS = {
  colourOf: {
    isOfArtwork: true,
    holds: written<ColourOfInput, readonly ResinFor[]>(
      z.union([z.string(), z.record(z.string(), z.string())]),
      `pairs of a colour or layer of the drawing and a resin colour, such as "red=black, blue=white" or {"red": "black", "blue": "#f5f0e1"}`,
      readColourOf,
      typedColourOf,
    ),
    field: 'colourOf',
    absent: [],
    otherwise: 'each colour of a drawing of several colours is that of its paint',
    group: 'resin',
    takes: '"DRAWN=RESIN"',
    help: 'Resin of each colour or layer of the drawing, as "red=black, blue=#f5f0e1"',
    label: 'Resin of each colour of the drawing',
    hint: 'As in “red=black, blue=#f5f0e1”; colours or layers of the drawing stand before the sign',
    only: { formats: ['svg', 'dxf'], about: 'the resin of each colour' },
  },
} as const satisfies Rows<ColourSettings>;

function readColourOf(input: ColourOfInput): readonly ResinFor[] {
  const pairs = typeof input === 'string' ? pairsOf(input) : Object.entries(input);
  return pairs.map(([drawn, resin]) => ({ drawn, resin: readResinColour(resin, input) }));
}

function pairsOf(text: string): readonly (readonly [string, string])[] {
  return text.split(',').map((pair) => {
    const at = pair.lastIndexOf('=');
    const [drawn, resin] = [pair.slice(0, Math.max(0, at)).trim(), pair.slice(at + 1).trim()];
    if (drawn === '' || resin === '') {
      throw new JobError('not-colour-pairs', 'colourOf', { shown: text, known: COLOURS });
    }
    return [drawn, resin];
  });
}

function readResinColour(text: string, input: ColourOfInput): ResinFor['resin'] {
  const word = text.trim().toLowerCase();
  const known = COLOURS.find((id) => id === word);
  const hex = paintHex(word);
  if (known === undefined && hex === null) {
    throw new JobError('not-colour-pairs', 'colourOf', { shown: shownInput(input), known: COLOURS });
  }
  return known ?? (hex as `#${string}`);
}

function typedColourOf(input: ColourOfInput): string {
  return typeof input === 'string'
    ? input
    : Object.entries(input)
        .map(([drawn, resin]) => `${drawn}=${resin}`)
        .join(', ');
}
