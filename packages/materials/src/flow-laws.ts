import { type Capillary, capillaryLengthMm, closedVesselLengthMm, referenceCapillary } from './capillary.ts';
import { type Cited, type CitedRange, cited } from './cited.ts';
import { REFERENCE_TEMPERATURE_C } from './flow-parameters.ts';
import { fluidity } from './fluidity.ts';
import { type Resin, resins } from './resin.ts';
import { openTubeLimitMm, resinLaw } from './resin-flow.ts';
import type { Wood } from './wood.ts';

/**
 * Weight of the law of viscosity against that of trapped air, in woods whose vessels close within a board: nothing that was measured tells
 * which of them stops a streak, so half each.
 */
export const viscosityWeight: Cited = cited(0.5, 'inference', 'own-inference');
/** Mean open length of vessels behind a wall, mm: a fifth of those of a birch end within 20 mm, −20/ln 0.8, taken for every wood. */
export const openVesselMm: Cited = cited(
  -20 / Math.log(0.8),
  'inference',
  'own-inference',
  'birch-conductivity',
);

/** Half-width of a 95 % band in standard deviations. */
const BAND_SD = 1.959963984540054;

/** What may stop a streak in this wood and resin: upper bounds of its length, never lengths. */
export interface FlowBounds {
  /** Until the resin sets in a vessel that stays open, mm; low and high by the band of its gel time. */
  readonly viscosityMm: { readonly value: number; readonly low: number; readonly high: number };
  /** Until the air trapped in a closed vessel pushes back as hard as it is drawn in, mm; `null` where vessels run through the board. */
  readonly trappedAirMm: number | null;
  /** The smaller of the two. */
  readonly governs: 'viscosity' | 'trapped-air';
}

/** How a resin at a temperature runs against the reference, coating resin at 25 °C, with both laws weighed. */
export interface FlowFactor {
  /** Factor on the travel. */
  readonly factor: number;
  /** Added standard deviation of ln(travel): the two laws differ, and thin-layer gel times are known by a band only. */
  readonly spread: number;
  /** What the law of viscosity alone would give. */
  readonly byViscosity: number;
}

/**
 * By viscosity a resin runs with the root of gel time over viscosity; trapped air stops every resin at the same length. The factor is
 * their weighted mean in logs, and their distance goes into the spread: our inference, which a coupon decides.
 */
export function flowFactor(wood: Wood, resin: Resin, temperatureC: number): FlowFactor {
  const byViscosity =
    openTubeLimitMm(resin, temperatureC) / openTubeLimitMm(resins.coating, REFERENCE_TEMPERATURE_C);
  const weight = wood.pores.runsThrough ? 1 : viscosityWeight.value;
  const doubts = (['gelMin', 'viscosityPaS'] as const).flatMap((key) =>
    doubtOf(resin[key], resins.coating[key]),
  );
  return {
    factor: byViscosity ** weight,
    spread: Math.hypot(
      Math.abs(Math.log(byViscosity)) * Math.sqrt(weight * (1 - weight)),
      // the length goes with the root of both
      (weight * Math.hypot(...doubts)) / 2,
    ),
    byViscosity,
  };
}

/**
 * The prior is that of the reference resin and holds its own doubt already; of another value both are in doubt. Compared by numbers: a
 * row that was read from JSON or sent to a worker is a copy.
 */
function doubtOf(value: CitedRange, reference: CitedRange): readonly number[] {
  const isSame =
    value.value === reference.value && value.low === reference.low && value.high === reference.high;
  return isSame ? [] : [sdOf(value), sdOf(reference)];
}

/** Standard deviation of the logarithm of a value from its band; 0 for what the label says. */
function sdOf({ low, high }: CitedRange): number {
  return Math.log(high / low) / (2 * BAND_SD);
}

/** The two bounds in vessels of this wood. */
export function flowBounds(wood: Wood, resin: Resin, temperatureC: number): FlowBounds {
  const tube = vesselOf(wood);
  const until = (gelMin: number): number =>
    capillaryLengthMm(
      tube,
      fluidity(
        resinLaw({ ...resin, gelMin: { ...resin.gelMin, value: gelMin } }, temperatureC),
        Number.POSITIVE_INFINITY,
      ),
    );
  const { value, low, high } = resin.gelMin;
  const viscosityMm = { value: until(value), low: until(low), high: until(high) };
  const trappedAirMm = wood.pores.runsThrough ? null : closedVesselLengthMm(tube, openVesselMm.value);
  return {
    viscosityMm,
    trappedAirMm,
    governs: trappedAirMm !== null && trappedAirMm < viscosityMm.value ? 'trapped-air' : 'viscosity',
  };
}

/** A vessel of this wood's middle diameter; the reference where none is known. */
function vesselOf({ pores: { diameterUm } }: Wood): Capillary {
  return diameterUm === null
    ? referenceCapillary
    : { ...referenceCapillary, radiusUm: (diameterUm[0] + diameterUm[1]) / 4 };
}
