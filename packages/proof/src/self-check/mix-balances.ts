import { defaultDensityA, defaultDensityB, type Resin } from '@pourproof/materials';
import type { Measured } from '../measured.ts';
import type { ColourPour } from '../pour/pour-plan.ts';
import { type Balance, equalWithin } from './balance.ts';

/** Rounding of sums of volumes and grams. */
const MIX_REL_TOL = 1e-9;

/** What is weighed against what is filled. */
export function mixBalances({ job, pour }: Measured): readonly Balance[] {
  const { resin, scale } = job.rows;
  return pour.colours.flatMap((colour, index) => {
    const { budget, volumeMl, massG, partAG, partBG, pigmentG, cup, count } = colour;
    const fill = job.boards * (budget.cutMl + budget.overpourMl + budget.uptakeMl);
    const step = scale.resolutionG.value;
    return [
      equalWithin('mix-is-its-fill', 'ml', within(volumeMl, fill * (1 + job.wastePct / 100)), index),
      equalWithin('grams-are-volume-by-density', 'ml', within(volumeOf(colour, resin), volumeMl), index),
      equalWithin('parts-keep-the-ratio', 'g', within(partAG, partOfA(massG, resin)), index),
      equalWithin('parts-keep-the-ratio', 'g', within(partAG + partBG, massG), index),
      // each part of each cup is rounded to the scale
      equalWithin(
        'cups-add-up-to-mix',
        'g',
        [count.batches * cup.totalG, massG + pigmentG, count.batches * cup.partsG.length * step],
        index,
      ),
    ];
  });
}

function within(got: number, want: number): readonly [number, number, number] {
  return [got, want, MIX_REL_TOL * (1 + Math.abs(want))];
}

/** Volume of the grams, part by part where the ratio is by volume. */
function volumeOf({ partAG, partBG, massG }: ColourPour, resin: Resin): number {
  const { densityAGPerMl: a, densityBGPerMl: b, densityMixedGPerMl: mixed, ratioByWeight } = resin;
  const isByParts = mixed.status !== 'entered' && a?.status === 'entered' && b?.status === 'entered';
  if (ratioByWeight && !isByParts) {
    return massG / mixed.value;
  }
  return partAG / (a ?? defaultDensityA).value + partBG / (b ?? defaultDensityB).value;
}

/** Grams of part A in a mix. */
function partOfA(massG: number, resin: Resin): number {
  const { ratioByWeight, ratioByVolume, densityAGPerMl, densityBGPerMl } = resin;
  const ratio = ratioByWeight?.value ?? {
    a: (ratioByVolume?.value.a ?? 0) * (densityAGPerMl ?? defaultDensityA).value,
    b: (ratioByVolume?.value.b ?? 0) * (densityBGPerMl ?? defaultDensityB).value,
  };
  return ratio.a + ratio.b > 0 ? (massG * ratio.a) / (ratio.a + ratio.b) : Number.NaN;
}
