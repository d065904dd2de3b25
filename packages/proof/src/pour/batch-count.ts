/** Minutes to fill one pocket or letter by stick or syringe, our estimate; from 0.25 to 1. */
export const MINUTES_PER_POCKET = 0.5;
/** Minutes to stir two parts and pigment before the first drop, our estimate. */
export const MINUTES_TO_MIX = 3;

/** How a mix is spread over cups. */
export interface BatchCount {
  readonly batches: number;
  /** Minutes that a cup stays workable at the shop's temperature. */
  readonly workingMinutes: number;
  /** Minutes that filling all pockets takes in all lifts, without mixing. */
  readonly fillingMinutes: number;
  /** Pockets that one cup fills before it thickens. */
  readonly pocketsPerBatch: number;
  /** True where more cups would fit the working time but each would be too small to weigh. */
  readonly isHurried: boolean;
}

/**
 * How many cups a pour needs: lifts are hours apart, so each is mixed for itself; enough for each lift that a cup is empty before it thickens, and none
 * smaller than the scale can split, but for the one that every lift needs.
 *
 * @param pockets letters and pockets to fill on all boards
 * @param workingMinutes pot life at the shop's temperature, above 0
 * @param massG whole mix of all lifts
 * @param smallestG smallest batch that the scale can split
 * @param lifts 1 or more
 */
export function batchCount(
  pockets: number,
  workingMinutes: number,
  massG: number,
  smallestG: number,
  lifts: number,
): BatchCount {
  const fillingMinutes = lifts * pockets * MINUTES_PER_POCKET;
  const usable = Math.max(MINUTES_PER_POCKET, workingMinutes - MINUTES_TO_MIX);
  const pocketsPerBatch = Math.max(1, Math.floor(usable / MINUTES_PER_POCKET));
  const wanted = Math.max(1, Math.ceil(pockets / pocketsPerBatch));
  const weighable = Math.max(1, Math.floor(massG / lifts / smallestG));
  const perLift = Math.min(wanted, weighable);
  return {
    batches: lifts * perLift,
    workingMinutes,
    fillingMinutes,
    pocketsPerBatch,
    isHurried: perLift < wanted,
  };
}
