import { readSvg } from '@pourproof/artwork/svg';
import { settleJob } from '@pourproof/job';
import { judgeDrawing, type Report } from '@pourproof/proof';
import type fc from 'fast-check';
import { expect } from 'vitest';
import { magnitude } from '../arbitraries.ts';

/** The figures of a cut that state a bound, as they are for the curves themselves. */
export interface Truth {
  readonly areaMm2: number;
  readonly leftStandingMm2: number;
  readonly volumeMm3: number;
  readonly floorAreaMm2: number;
  readonly wallAreaMm2: number;
  readonly wallLengthMm: number;
  readonly maxDepthMm: number;
  readonly lengthNarrowerThanBitMm: number;
}

/** A size in mm, small and large ones alike likely. */
export const sized = (low: number, high: number): fc.Arbitrary<number> =>
  magnitude(Math.log10(low), Math.log10(high));
/** Flattening tolerances from 1 to 50 µm. */
export const tolerance = sized(0.001, 0.05);
export const DEPTH_MM = 2;

export interface Vetted {
  readonly path: string;
  readonly bit: string;
  readonly toleranceMm: number;
  readonly turnDeg: number;
}

export function reportOn({ path, bit, toleranceMm, turnDeg }: Vetted): Report {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="-100 -100 200 200">
    <path transform="rotate(${turnDeg})" fill-rule="evenodd" d="${path}"/></svg>`;
  const job = settleJob({ bit: [bit], depth: `${DEPTH_MM}mm` });
  return judgeDrawing(readSvg(svg, { toleranceMm }), 'shape', job).report;
}

/** Rounding of figures of some hundred mm² to ten digits, and of sums over some hundred pieces. */
export const ROUNDING = 1e-6;

export function expectWithin({ cut, strokes }: Report, truth: Partial<Truth>, what: unknown): void {
  const { errorBound } = cut;
  const stated: Record<keyof Truth, readonly [number, number]> = {
    areaMm2: [cut.areaMm2, errorBound.areaMm2],
    leftStandingMm2: [cut.leftStandingMm2, errorBound.areaMm2],
    volumeMm3: [cut.volumeMm3, errorBound.volumeMm3],
    floorAreaMm2: [cut.floorAreaMm2, errorBound.floorAreaMm2],
    wallAreaMm2: [cut.wallAreaMm2, errorBound.wallAreaMm2],
    wallLengthMm: [cut.wallLengthMm, errorBound.wallLengthMm],
    maxDepthMm: [cut.maxDepthMm, errorBound.maxDepthMm],
    lengthNarrowerThanBitMm: [strokes.lengthNarrowerThanBitMm, errorBound.lengthNarrowerThanBitMm],
  };
  for (const [key, value] of Object.entries(truth) as [keyof Truth, number][]) {
    const [figure, bound] = stated[key];
    const message = `${key} ${figure} ± ${bound}, true ${value}: ${JSON.stringify(what)}`;
    expect(Math.abs(figure - value) - bound, message).toBeLessThan(ROUNDING * Math.max(1, value));
  }
}

export const circle = (r: number): string => `M${r} 0A${r} ${r} 0 1 1 ${-r} 0A${r} ${r} 0 1 1 ${r} 0z`;
