import type { Cited, CitedRange } from './cited.ts';
import {
  defaultDensityA,
  defaultDensityB,
  type MixRatio,
  type Resin,
  type ResinId,
  resins,
} from './resin.ts';
import type { SourceId } from './sources.ts';

/** What has to be filled. */
export interface FillVolume {
  /** Volume of the cut in ml. */
  readonly volumeMl: number;
  /** Resin that will stand proud of the face, in ml (default 0). */
  readonly overpourMl?: number;
  /** Share of the mix that stays in cup and stick, in percent of the fill. */
  readonly wastePct: number;
}

/** A density that the maker has not entered. */
export type AssumedDensity = 'densityA' | 'densityB' | 'densityMixed';

/** What to weigh out. Masses are exact; rounding is for the printer. */
export interface Mix {
  /** Volume to mix in ml, waste included. */
  readonly volumeMl: number;
  /** Part of `volumeMl` that is waste. */
  readonly wasteMl: number;
  readonly massG: number;
  readonly partAG: number;
  readonly partBG: number;
  /** Volumes of the parts in ml; `null` where a density is unknown. */
  readonly partAMl: number | null;
  readonly partBMl: number | null;
  /** A over B by weight. */
  readonly ratioByWeight: MixRatio;
  /** How much less or more the same volume may weigh by the range of densities that were assumed, shares of the mass. */
  readonly massMayBe: { readonly less: number; readonly more: number };
  /** Class defaults that stood in for values the label should give; masses are as good as these. */
  readonly assumed: readonly AssumedDensity[];
  readonly sources: readonly SourceId[];
}

/**
 * Returns what to mix for a fill: (volume + overpour) × (1 + waste), split into parts A and B by weight.
 *
 * A ratio by volume becomes grams through the densities of both parts, a ratio by weight through the density
 * of the mix. What the maker has not entered is a class default and is named in `assumed`.
 * @throws {RangeError} when a volume or the waste is negative or not finite, or the resin has no ratio
 */
export function mixByMass(fill: FillVolume, resin: Resin | ResinId): Mix {
  const overpourMl = fill.overpourMl ?? 0;
  for (const [name, value] of Object.entries({ ...fill, overpourMl })) {
    if (!(value >= 0 && Number.isFinite(value))) {
      throw new RangeError(`${name} is ${value}; it must be 0 or more.`);
    }
  }
  const chosen = typeof resin === 'string' ? resins[resin] : resin;
  const neededMl = fill.volumeMl + overpourMl;
  const volumeMl = neededMl * (1 + fill.wastePct / 100);
  const common = { volumeMl, wasteMl: volumeMl - neededMl };
  if (chosen.ratioByWeight) {
    return { ...common, ...splitByWeight(volumeMl, chosen, chosen.ratioByWeight.value) };
  }
  if (chosen.ratioByVolume) {
    return { ...common, ...splitByVolume(volumeMl, chosen, chosen.ratioByVolume.value) };
  }
  throw new RangeError(`Resin “${chosen.name}” has no mixing ratio; give one by weight or by volume.`);
}

type Split = Omit<Mix, 'volumeMl' | 'wasteMl'>;

function splitByWeight(volumeMl: number, resin: Resin, ratio: MixRatio): Split {
  const mixed = mixedDensity(resin, ratio);
  const isLabelled = mixed.status === 'entered';
  const massG = volumeMl * mixed.value;
  const partAG = (massG * ratio.a) / (ratio.a + ratio.b);
  const partBG = massG - partAG;
  return {
    massG,
    partAG,
    partBG,
    partAMl: resin.densityAGPerMl && partAG / resin.densityAGPerMl.value,
    partBMl: resin.densityBGPerMl && partBG / resin.densityBGPerMl.value,
    ratioByWeight: ratio,
    massMayBe: isLabelled
      ? { less: 0, more: 0 }
      : {
          less: 1 - resin.densityMixedGPerMl.low / mixed.value,
          more: resin.densityMixedGPerMl.high / mixed.value - 1,
        },
    assumed: isLabelled ? [] : ['densityMixed'],
    sources: [...new Set([...(resin.ratioByWeight?.because ?? []), ...mixed.because])],
  };
}

/**
 * The label's density of the mix; else, where the label gives both parts, their volumes added up; else the
 * class default.
 */
function mixedDensity(resin: Resin, ratio: MixRatio): Cited {
  const { densityAGPerMl: a, densityBGPerMl: b, densityMixedGPerMl: mixed } = resin;
  if (mixed.status !== 'entered' && a?.status === 'entered' && b?.status === 'entered') {
    return { ...a, value: (ratio.a + ratio.b) / (ratio.a / a.value + ratio.b / b.value) };
  }
  return mixed;
}

function splitByVolume(volumeMl: number, resin: Resin, ratio: MixRatio): Split {
  const densityA = resin.densityAGPerMl ?? defaultDensityA;
  const densityB = resin.densityBGPerMl ?? defaultDensityB;
  const partAMl = (volumeMl * ratio.a) / (ratio.a + ratio.b);
  const partBMl = volumeMl - partAMl;
  const partAG = partAMl * densityA.value;
  const partBG = partBMl * densityB.value;
  const assumed: AssumedDensity[] = [];
  if (densityA.status !== 'entered') {
    assumed.push('densityA');
  }
  if (densityB.status !== 'entered') {
    assumed.push('densityB');
  }
  return {
    massG: partAG + partBG,
    partAG,
    partBG,
    partAMl,
    partBMl,
    ratioByWeight: { a: ratio.a * densityA.value, b: ratio.b * densityB.value },
    massMayBe: spreadOf(
      [
        ...(assumed.includes('densityA') ? [{ ...defaultDensityA, share: ratio.a * densityA.value }] : []),
        ...(assumed.includes('densityB') ? [{ ...defaultDensityB, share: ratio.b * densityB.value }] : []),
      ],
      ratio.a * densityA.value + ratio.b * densityB.value,
    ),
    assumed,
    sources: [
      ...new Set([...(resin.ratioByVolume?.because ?? []), ...densityA.because, ...densityB.because]),
    ],
  };
}

/** The densities of the two parts are independent: each side is the root of the sum of squares. */
function spreadOf(
  parts: readonly (CitedRange & { readonly share: number })[],
  whole: number,
): Mix['massMayBe'] {
  return {
    less: Math.hypot(...parts.map(({ share, value, low }) => (share / whole) * (1 - low / value))),
    more: Math.hypot(...parts.map(({ share, value, high }) => (share / whole) * (high / value - 1))),
  };
}
