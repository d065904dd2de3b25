import type { Job } from '@pourproof/job';
import { rowsAtHandFirst, type Scale } from '@pourproof/materials';

/** The id of a scale that does: of those at hand if there is one, and the coarsest of them; `null` where none does. */
export function scaleFor({ materials }: Job, isEnough: (scale: Scale) => boolean): string | null {
  const enough = rowsAtHandFirst(materials.scales, materials.atHand?.scales).filter(([, scale]) =>
    isEnough(scale),
  );
  const own = enough.filter(([id]) => materials.atHand?.scales.includes(id) === true);
  const [first] = (own.length > 0 ? own : enough).toSorted(
    ([, a], [, b]) => b.resolutionG.value - a.resolutionG.value,
  );
  return first?.[0] ?? null;
}
