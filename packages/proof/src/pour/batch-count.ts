/** Minutes to fill one pocket or letter by stick or syringe (our estimate, 0.25 to 1). */
export const MINUTES_PER_POCKET = 0.5;
/** Minutes to stir two parts and pigment before the first drop (our estimate). */
export const MINUTES_TO_MIX = 3;

/** How a mix is divided into cups. */
export interface BatchCount {
  readonly batches: number;
  /** Working time of a cup at the shop's temperature, minutes. */
  readonly workingMinutes: number;
  /** Time to fill all pockets in all layers, without mixing, minutes. */
  readonly fillingMinutes: number;
  /** Pockets that one cup fills within its working time. */
  readonly pocketsPerBatch: number;
  /** Whether more cups are needed for the working time but each would be too small to weigh. */
  readonly isHurried: boolean;
  /** Cups of one layer that heat, or what the scale takes, asks for: none holds more. */
  readonly coolCups: number;
}

/**
 * Number of cups of a pour. Layers are hours apart, so each is mixed separately: with enough cups that each
 * is empty before it thickens, but none smaller than the scale can split, and at least one.
 *
 * @param pockets letters and pockets to fill on all boards
 * @param workingMinutes pot life at the shop's temperature, above 0
 * @param massG mass of the mix for all layers
 * @param smallestG smallest batch that the scale can split
 * @param layers 1 or more
 * @param largestG most that one cup may hold, which goes before what can be weighed
 */
export function batchCount(
  pockets: number,
  workingMinutes: number,
  massG: number,
  smallestG: number,
  layers: number,
  largestG = Number.POSITIVE_INFINITY,
): BatchCount {
  const fillingMinutes = layers * pockets * MINUTES_PER_POCKET;
  const usable = Math.max(MINUTES_PER_POCKET, workingMinutes - MINUTES_TO_MIX);
  const pocketsPerBatch = Math.max(1, Math.floor(usable / MINUTES_PER_POCKET));
  const wanted = Math.max(1, Math.ceil(pockets / pocketsPerBatch));
  const weighable = Math.max(1, Math.floor(massG / layers / smallestG));
  const coolCups = Math.max(1, Math.ceil(massG / layers / largestG));
  const perLayer = Math.max(coolCups, Math.min(wanted, weighable));
  return {
    batches: layers * perLayer,
    workingMinutes,
    fillingMinutes,
    pocketsPerBatch,
    isHurried: perLayer < wanted,
    coolCups,
  };
}
