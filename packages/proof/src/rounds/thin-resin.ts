import { booleans } from '@pourproof/arrangement';
import { medialAxis, narrowStretches, separateParts } from '@pourproof/geometry';
import { type CleanRegion, type Point, signedArea } from '@pourproof/plane';
import { type FilledPocket, resinAt } from './filled-pockets.ts';

/** Cured resin of an earlier round that a cut leaves too narrow; lengths in mm. */
export interface ThinResin {
  readonly form: 'stroke' | 'dot';
  readonly atMm: Point;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly path: Float64Array;
}

/** A cut that takes less than this of a colour leaves it as it is, mm²: rounding. */
const MIN_TAKEN_MM2 = 0.01;
/** Resin that is thinner than this throughout goes with the chips, mm (our choice: about the run-out of a router). */
const GONE_MM = 0.05;
/** Places and widths nearer than this are the same, mm. */
const SAME_MM = 0.01;

/**
 * Lines and dots of cured resin that a cut leaves narrower than a limit, and that were not before, narrowest first. Each colour is taken as it is seen:
 * less what rounds after it have taken.
 *
 * @param filled pockets of earlier rounds, in their order
 */
export function thinResin(
  cut: CleanRegion,
  filled: readonly FilledPocket[],
  limitMm: number,
): readonly ThinResin[] {
  return filled
    .flatMap((pocket, k) => {
      const later = resinAt(filled.slice(k + 1), 0);
      const seen = booleans(resinAt([pocket], 0), later, 'subtract');
      if (signedArea(booleans(seen, cut, 'intersect')) < MIN_TAKEN_MM2) {
        return [];
      }
      const before = narrowIn(seen, limitMm);
      return narrowIn(booleans(seen, cut, 'subtract'), limitMm).filter(
        (each) => !before.some((known) => isSame(each, known)),
      );
    })
    .toSorted((a, b) => a.widthMm - b.widthMm);
}

function narrowIn(region: CleanRegion, limitMm: number): readonly ThinResin[] {
  if (region.ringEnds.length === 0) {
    return [];
  }
  const axis = medialAxis(region);
  const strokes = narrowStretches(axis, limitMm)
    .filter(
      ({ kind, lengthMm, widths }) =>
        // shorter than the limit is a waist, not a line
        kind === 'stroke' && lengthMm > limitMm && Math.max(...widths) >= GONE_MM,
    )
    .map(
      ({ atMm, narrowestMm, lengthMm, path }): ThinResin => ({
        form: 'stroke',
        atMm,
        widthMm: narrowestMm,
        lengthMm,
        path,
      }),
    );
  const dots = separateParts(axis)
    .filter(({ strokeMm, widthMm }) => strokeMm === 0 && widthMm < limitMm && widthMm >= GONE_MM)
    .map(
      ({ atMm, widthMm }): ThinResin => ({
        form: 'dot',
        atMm,
        widthMm,
        lengthMm: widthMm,
        path: new Float64Array(),
      }),
    );
  return [...strokes, ...dots];
}

function isSame(a: ThinResin, b: ThinResin): boolean {
  return (
    Math.hypot(a.atMm[0] - b.atMm[0], a.atMm[1] - b.atMm[1]) < SAME_MM &&
    Math.abs(a.widthMm - b.widthMm) < SAME_MM
  );
}
