import { defaultDensityA, defaultDensityB, type Resin } from './resin.ts';

/** A ratio that reads as one of the other kind. */
export interface MistakenRatio {
  /** How it was entered. */
  readonly entered: 'by-weight' | 'by-volume';
  /** Parts A to one part B, as entered. */
  readonly typed: number;
  /** What it should be, entered that way. */
  readonly expected: number;
  /** Hardener too much (above 0) or too little, percent of what it should be. */
  readonly hardenerOffPct: number;
}

/**
 * A label's ratio by volume typed as one by weight, or the other way: it is that of the class in the other kind, and not that in its own.
 * `null` where it is neither, and where the label gives both kinds, which settles it.
 */
export function mistakenRatio(resin: Resin): MistakenRatio | null {
  const { ratioByVolume, ratioByWeight, usualRatioByVolume, ratioTolerancePct } = resin;
  const entered = ratioByWeight ?? ratioByVolume;
  if (
    usualRatioByVolume === null ||
    entered === null ||
    entered.status !== 'entered' ||
    (ratioByVolume !== null && ratioByWeight !== null)
  ) {
    return null;
  }
  const typed = entered.value.a / entered.value.b;
  const byVolume = usualRatioByVolume.value.a / usualRatioByVolume.value.b;
  const densityA = resin.densityAGPerMl ?? defaultDensityA;
  const densityB = resin.densityBGPerMl ?? defaultDensityB;
  const byWeight = (byVolume * densityA.value) / densityB.value;
  const isByWeight = ratioByWeight !== null;
  const [own, other] = isByWeight ? [byWeight, byVolume] : [byVolume, byWeight];
  const isNear = (ratio: number): boolean => Math.abs(typed / ratio - 1) <= ratioTolerancePct.value / 100;
  return isNear(other) && !isNear(own)
    ? {
        entered: isByWeight ? 'by-weight' : 'by-volume',
        typed,
        expected: own,
        hardenerOffPct: 100 * (own / typed - 1),
      }
    : null;
}
