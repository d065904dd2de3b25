import type { Bounds } from '@pourproof/plane';
import type { OutlinePath } from '../fit/outline-path.ts';

/** Shapes of one colour and round, as they are written to a file. */
export interface OutlineGroup {
  /** Plain, in letters, digits and hyphens: `blue-round-1`. */
  readonly id: string;
  /** What it is, in words. */
  readonly title: string;
  /** `#rrggbb`. */
  readonly colour: string;
  /** Each shape by its outline and those of its holes. */
  readonly shapes: readonly (readonly OutlinePath[])[];
}

/** Everything that an artwork file holds. */
export interface OutlineFile {
  readonly title: string;
  /** Who wrote it, in a word or two on one line. */
  readonly mark: string;
  /** What is drawn, mm; the file is as large as this, so that several files of one artwork lie on one another. */
  readonly boundsMm: Bounds;
  readonly groups: readonly OutlineGroup[];
}

/** Digits after the point: 1 nm, so that corners and tangents stay what they are. */
const DIGITS = 6;

/** A length in mm as short as it can be written to 1 nm. */
export function lengthText(value: number): string {
  const text = value.toFixed(DIGITS).replace(/\.?0+$/u, '');
  return text === '-0' ? '0' : text;
}
