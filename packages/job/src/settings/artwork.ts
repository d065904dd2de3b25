import { measure, number, words } from './holds.ts';
import type { Rows } from './setting.ts';

/** Sizes that a job asks for; where none is, the file's own size stands. */
export interface ArtworkSize {
  readonly widthMm?: number;
  readonly heightMm?: number;
  readonly scale?: number;
}

const SIZE = {
  above: 0,
  // no board is this long (our choice)
  max: 10_000,
  why: 'No board is longer: check the unit.',
  example: '120mm or 4-3/4in',
};

/** Names of what is vetted, for job files. */
export const SOURCE_SETTINGS = {
  artwork: {
    holds: words('a path, such as "sign.svg"'),
    field: null,
    group: 'output',
    flag: null,
    help: 'SVG or DXF file, relative to this job file',
  },
  text: {
    holds: words('the words to carve'),
    field: null,
    group: 'lettering',
    takes: '"WORDS"',
    help: 'Vet lettering instead of a file',
  },
  font: {
    holds: words('a path, such as "serif.ttf"'),
    field: null,
    group: 'lettering',
    takes: 'FILE',
    help: 'Font file for the lettering, or for live text in a drawing',
  },
} as const satisfies Rows<Record<never, never>>;

/** Settings of the size. */
export const SIZE_SETTINGS = {
  width: {
    isOfArtwork: true,
    holds: measure('length', '120mm', SIZE),
    field: 'widthMm',
    otherwise: 'the size that the file states',
    group: 'size',
    takes: 'LENGTH',
    help: 'Scale the artwork to this width',
    label: 'Width of the artwork',
    hint: 'One of width, height and factor; empty for the size as drawn',
  },
  height: {
    isOfArtwork: true,
    holds: measure('length', '3in', SIZE),
    field: 'heightMm',
    otherwise: 'the size that the file states',
    group: 'size',
    takes: 'LENGTH',
    help: 'Scale the artwork to this height',
    label: 'Height of the artwork',
    only: { formats: ['svg', 'dxf'] },
  },
  scale: {
    isOfArtwork: true,
    // beyond these the file's unit is at fault (our choice)
    holds: number('a factor without a unit', 1.25, {
      percent: 'hundredths',
      min: 1e-4,
      max: 1e4,
      why: 'Check the unit of the file.',
    }),
    field: 'scale',
    otherwise: 'the size that the file states',
    group: 'size',
    takes: 'NUMBER',
    help: 'Scale the artwork by this factor',
    label: 'Factor',
    only: { formats: ['svg', 'dxf'] },
  },
} as const satisfies Rows<ArtworkSize>;

/** The same limits for the height of capitals. */
export const LETTER_SIZE: typeof SIZE = SIZE;
