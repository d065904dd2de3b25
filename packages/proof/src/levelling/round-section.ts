import { radiusAt } from '@pourproof/cutting';
import type { LevelledStroke, StrokeShop } from './stroke-margin.ts';
import { filmHeight, type StrokeSection, sectionWidth } from './stroke-section.ts';

/** Chords that an arc of the cutter's profile is taken as: the volume of a ball's dot is then right to 1e-4. */
const CHORDS_OF_ARC = 64;
/** Bisection steps to the level of the pooled seal: to rounding. */
const POOL_BISECTIONS = 60;

/** A frustum of a round pocket, from its lower to its upper rim; mm. */
interface Frustum {
  readonly fromMm: number;
  readonly toMm: number;
  readonly fromRadiusMm: number;
  readonly toRadiusMm: number;
}

/**
 * Width and depth of colour of a round pocket, a dot, after `removedMm` have come off the face: the section of a stroke turned around its middle. A
 * cone holds a third of its base times its depth where a groove holds half, so that less is lost to shrinkage and more to the seal that pools at its tip.
 *
 * @throws {RangeError} when a width or depth is not above 0
 */
export function levelledDot(section: StrokeSection, shop: StrokeShop, removedMm: number): LevelledStroke {
  const { widthMm, depthMm } = section;
  if (!(widthMm > 0 && depthMm > 0)) {
    throw new RangeError(`a dot of width ${widthMm} and depth ${depthMm} mm is no cut; both are above 0.`);
  }
  const frusta = frustaOf(section);
  const filmMm3 = shop.filmMm * surfaceOf(frusta);
  const dropMm = (volumeBelow(frusta, depthMm) * shop.shrinkagePct) / 100 / (Math.PI * (widthMm / 2) ** 2);
  const lowerMm = removedMm + shop.shallowByMm;
  return {
    widthMm: sectionWidth(section, depthMm - lowerMm),
    colourDepthMm: depthMm - poolHeight(frusta, filmMm3, depthMm) - dropMm - lowerMm,
    mostDepthMm: depthMm - filmHeight(section, shop.filmMm) - dropMm - lowerMm,
  };
}

/** Share of the room of a round pocket that its seal film takes, drained or not; above 1 if there is more film than room. */
export function clearShareOfDot(section: StrokeSection, filmMm: number): number {
  const frusta = frustaOf(section);
  return (filmMm * surfaceOf(frusta)) / volumeBelow(frusta, section.depthMm);
}

function frustaOf({ widthMm, depthMm, cutter }: StrokeSection): readonly Frustum[] {
  const beside = Math.max(0, widthMm / 2 - radiusAt(cutter, depthMm));
  const frusta: Frustum[] = [{ fromMm: 0, toMm: 0, fromRadiusMm: 0, toRadiusMm: beside }];
  for (const { fromHeightMm, toHeightMm, fromRadiusMm, toRadiusMm, arc } of cutter.pieces) {
    const top = Math.min(toHeightMm, depthMm);
    if (fromHeightMm === toHeightMm) {
      if (fromHeightMm < depthMm) {
        frusta.push(frustum(beside, fromHeightMm, toHeightMm, fromRadiusMm, toRadiusMm));
      }
    } else if (top > fromHeightMm) {
      const parts = arc === undefined ? 1 : CHORDS_OF_ARC;
      for (let k = 0; k < parts; k++) {
        const from = fromHeightMm + ((top - fromHeightMm) * k) / parts;
        const to = fromHeightMm + ((top - fromHeightMm) * (k + 1)) / parts;
        // just above a level piece its outer end would be read
        const fromRadius = k === 0 ? fromRadiusMm : radiusAt(cutter, from);
        const toRadius = to === toHeightMm ? toRadiusMm : radiusAt(cutter, to);
        frusta.push(frustum(beside, from, to, fromRadius, toRadius));
      }
    }
  }
  const reached = frusta.at(-1);
  if (reached !== undefined && reached.toMm < depthMm) {
    // above its profile a bit is upright
    frusta.push({ ...reached, fromMm: reached.toMm, fromRadiusMm: reached.toRadiusMm, toMm: depthMm });
  }
  return frusta;
}

function frustum(beside: number, fromMm: number, toMm: number, from: number, to: number): Frustum {
  return { fromMm, toMm, fromRadiusMm: beside + from, toRadiusMm: beside + to };
}

/** Area of floor, ledges and wall. */
function surfaceOf(frusta: readonly Frustum[]): number {
  return frusta.reduce(
    (sum, { fromMm, toMm, fromRadiusMm: a, toRadiusMm: b }) =>
      sum + Math.PI * (a + b) * Math.hypot(b - a, toMm - fromMm),
    0,
  );
}

function volumeBelow(frusta: readonly Frustum[], heightMm: number): number {
  let sum = 0;
  for (const { fromMm, toMm, fromRadiusMm: a, toRadiusMm: end } of frusta) {
    const top = Math.min(toMm, heightMm);
    if (top > fromMm) {
      const b = a + ((end - a) * (top - fromMm)) / (toMm - fromMm);
      sum += (Math.PI / 3) * (top - fromMm) * (a * a + a * b + b * b);
    }
  }
  return sum;
}

/** Height to which a volume of liquid stands, at most the depth. */
function poolHeight(frusta: readonly Frustum[], volumeMm3: number, depthMm: number): number {
  if (volumeMm3 >= volumeBelow(frusta, depthMm)) {
    return depthMm;
  }
  let low = 0;
  let high = depthMm;
  for (let k = 0; k < POOL_BISECTIONS; k++) {
    const middle = (low + high) / 2;
    if (volumeBelow(frusta, middle) < volumeMm3) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return low;
}
