import type { Bounds } from '@pourproof/plane';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import { type Beside, besideWood, partsOf } from '../slivers/beside-wood.ts';
import type { Sliver } from '../slivers/find-slivers.ts';
import { PartIndex } from '../slivers/part-index.ts';

/**
 * Ways to make wood wider by moving what lies beside it, nothing of which changes its own shape: letters and lines set farther apart, or
 * parts of a drawing moved. Empty where all thin wood lies within one letter or part.
 */
export function spacingFixes({ drawing, artwork }: Measured, thin: readonly Sliver[]): Fix[] {
  const isLettering = drawing.format === 'lettering';
  const parts = new PartIndex(isLettering ? drawing.shapes.map(({ region }) => region) : partsOf(artwork));
  const gaps = thin.flatMap((sliver) => {
    const beside = besideWood(parts, sliver);
    return beside === null ? [] : [{ beside, missingMm: sliver.limitMm - sliver.widthMm }];
  });
  if (gaps.length === 0) {
    return [];
  }
  return isLettering
    ? letteringFixes(gaps, parts)
    : [{ do: 'move-apart', byMm: upToHundredth(Math.max(...gaps.map(missing))), clears: true }];
}

/** Parts with wood between that is too thin, and by how much. */
interface Gap {
  readonly beside: Beside;
  readonly missingMm: number;
}

function missing({ missingMm }: Gap): number {
  return missingMm;
}

/** Letters side by side by their tracking, one above the other by the distance of lines. */
function letteringFixes(gaps: readonly Gap[], letters: PartIndex): Fix[] {
  const isAbove = ({ beside: { gapMm } }: Gap): boolean => Math.abs(gapMm[1]) > Math.abs(gapMm[0]);
  const across = gaps.filter((gap) => !isAbove(gap)).map((gap) => slideMm(gap, 0));
  const factors = gaps.filter(isAbove).map((gap) => {
    const lineMm = Math.abs(bottomOf(letters, gap.beside.other) - bottomOf(letters, gap.beside.one));
    return 1 + slideMm(gap, 1) / lineMm;
  });
  const options: Fix[] = [];
  if (across.length > 0) {
    options.push({ do: 'track', byMm: upToHundredth(Math.max(...across)), clears: true });
  }
  const factor = upToHundredth(Math.max(0, ...factors));
  if (Number.isFinite(factor) && factor > 1) {
    options.push({ do: 'space-lines', factor, clears: true });
  }
  return options;
}

/** How far one of two letters has to slide along an axis, so that the wood between them has its width. */
function slideMm({ beside: { gapMm }, missingMm }: Gap, axis: 0 | 1): number {
  const wideMm = Math.hypot(...gapMm) + missingMm;
  const asideMm = gapMm[1 - axis] as number;
  return Math.sqrt(Math.max(0, wideMm ** 2 - asideMm ** 2)) - Math.abs(gapMm[axis] as number);
}

/** Where a letter stands: its lowest point, a descender's apart the line. */
export function bottomOf(letters: PartIndex, index: number): number {
  return (letters.boxes[index] as Bounds)[3];
}

/** As it is printed, and never too little. */
function upToHundredth(value: number): number {
  return Math.ceil(value * 100) / 100;
}
