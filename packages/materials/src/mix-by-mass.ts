import { type MixRatio, type Resin, type ResinId, resins } from './resin.ts';
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
  /** Class defaults that stood in for values the label should give. */
  readonly assumed: readonly ('densityA' | 'densityB')[];
  readonly sources: readonly SourceId[];
}

/**
 * Returns what to mix for a fill: (volume + overpour) × (1 + waste), split into parts A and B by weight.
 *
 * A ratio by volume becomes grams through the densities of both parts; where one is unknown the class default stands in and
 * is named in `assumed`. A ratio by weight uses the density of the mix.
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
  const massG = volumeMl * resin.densityMixedGPerMl.value;
  const partAG = (massG * ratio.a) / (ratio.a + ratio.b);
  const partBG = massG - partAG;
  return {
    massG,
    partAG,
    partBG,
    partAMl: resin.densityAGPerMl && partAG / resin.densityAGPerMl.value,
    partBMl: resin.densityBGPerMl && partBG / resin.densityBGPerMl.value,
    ratioByWeight: ratio,
    assumed: [],
    sources: [...new Set([...(resin.ratioByWeight?.because ?? []), ...resin.densityMixedGPerMl.because])],
  };
}

function splitByVolume(volumeMl: number, resin: Resin, ratio: MixRatio): Split {
  const densityA = resin.densityAGPerMl ?? resins.coating.densityAGPerMl;
  const densityB = resin.densityBGPerMl ?? resins.coating.densityBGPerMl;
  if (!densityA || !densityB) {
    throw new RangeError('A ratio by volume needs the densities of both parts.');
  }
  const assumed: ('densityA' | 'densityB')[] = [];
  if (!resin.densityAGPerMl) {
    assumed.push('densityA');
  }
  if (!resin.densityBGPerMl) {
    assumed.push('densityB');
  }
  const partAMl = (volumeMl * ratio.a) / (ratio.a + ratio.b);
  const partBMl = volumeMl - partAMl;
  const partAG = partAMl * densityA.value;
  const partBG = partBMl * densityB.value;
  return {
    massG: partAG + partBG,
    partAG,
    partBG,
    partAMl,
    partBMl,
    ratioByWeight: { a: ratio.a * densityA.value, b: ratio.b * densityB.value },
    assumed,
    sources: [
      ...new Set([...(resin.ratioByVolume?.because ?? []), ...densityA.because, ...densityB.because]),
    ],
  };
}
