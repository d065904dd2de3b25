import { DEFAULT_FLATTEN_TOLERANCE_MM } from '@pourproof/plane';
import {
  BIT_MM,
  CAP_HEIGHTS_MM,
  type Deviation,
  FACES,
  LETTERS,
  type Measured,
  TOLERANCES_MM,
  V_DEG,
} from '../support/accuracy-sweep.ts';

/** The page docs/method/accuracy.md, from the sweep. */
export function renderAccuracyPage(sweep: readonly Deviation[]): string {
  const um = (mm: number): string => `${Math.round(mm * 1000)} µm`;
  return `# How close figures come to the drawn curves

Every measure is exact for the polygon that curves are flattened to, to 1e-9 of the artwork's area or volume
(docs/method/medial-axis.md). What is left is the flattening. These tables show it; they are rendered from
\`tests/support/accuracy-sweep.ts\`, and \`tests/geometry/accuracy.test.ts\` fails when one of them is out of date.

Letters \`${LETTERS}\` of ${FACES.length} faces (${FACES.join(', ')}), read at each tolerance and cap height,
against the curves in the font's file, read without our reader. The true area is Green's theorem on the curves. The true volume is that
of chords with their ends on the curves, at two finenesses carried on to the limit (Richardson). Each cell is the largest error
of these faces, summed over the letters. The tolerance is ${um(DEFAULT_FLATTEN_TOLERANCE_MM)} unless a job says otherwise.

## Area, as a share of it
${table(sweep, 'area')}

The flattening keeps the area (docs/decisions/0001-area-true-flattening.md); what shows is rounding.

## Volume of a ${V_DEG}° V cut to its full depth, as a share of it
${table(sweep, 'vVolume')}

The volume comes out short: points that stick out into the letter keep more of it shallow than points that stick out of it make deeper.
The error grows with tolerance over stroke width. At the default tolerance it is at most 0.02 % from 8 mm caps up; ask for
a finer tolerance for smaller letters.

## Area that a ${BIT_MM} mm flat bit clears, as a share of the artwork
${table(sweep, 'opened')}

Where a stroke is about as wide as the bit, a hair decides whether the bit enters: there the error is that of a length of stroke, not of
its edge, and falls unevenly with the tolerance.
`;
}

function table(sweep: readonly Deviation[], key: keyof Measured): string {
  const worst = (toleranceMm: number, capHeightMm: number): number =>
    Math.max(
      ...sweep
        .filter((row) => row.toleranceMm === toleranceMm && row.capHeightMm === capHeightMm)
        .map((row) => Math.abs(row.share[key])),
    );
  // rounding differs between machines; below 1e-12 it is all the same
  const cell = (share: number): string =>
    share < 1e-12 ? 'below 1e-10 %' : share < 5e-7 ? 'below 0.0001 %' : `${(100 * share).toFixed(4)} %`;
  return [
    `| tolerance | ${CAP_HEIGHTS_MM.map((cap) => `caps ${cap} mm`).join(' | ')} |`,
    `| ---: | ${CAP_HEIGHTS_MM.map(() => '---:').join(' | ')} |`,
    ...TOLERANCES_MM.map(
      (tolerance) =>
        `| ${Math.round(tolerance * 1000)} µm | ${CAP_HEIGHTS_MM.map((cap) => cell(worst(tolerance, cap))).join(' | ')} |`,
    ),
  ].join('\n');
}
