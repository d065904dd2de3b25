import { radians } from '@pourproof/plane';
import { contactAngleDeg, referenceRadiusUm, surfaceTensionNPerM } from './flow-parameters.ts';

/** A round, uniform capillary that wets. */
export interface Capillary {
  readonly radiusUm: number;
  readonly surfaceTensionNPerM: number;
  readonly contactAngleDeg: number;
}

/** The capillary that travel is referred to: a 25 µm vessel with the default wetting. */
export const referenceCapillary: Capillary = {
  radiusUm: referenceRadiusUm.value,
  surfaceTensionNPerM: surfaceTensionNPerM.value,
  contactAngleDeg: contactAngleDeg.value,
};

const M_PER_UM = 1e-6;
/** Standard atmosphere in Pa, exactly. */
const ATMOSPHERE_PA = 101_325;

/**
 * Length in mm that a liquid has entered a long open capillary: √(γ r cos θ F / 2) with F the fluidity in
 * 1/Pa.
 *
 * An upper bound for wood: vessels end, are blocked or trap air. 0 where the liquid does not wet (θ ≥ 90°).
 * Gravity and inertia are left out: a 3.2 mm head is 34 Pa against about 3000 Pa of capillary pressure.
 * @see washburn-1921
 */
export function capillaryLengthMm(tube: Capillary, fluidityPerPa: number): number {
  const pull = tube.surfaceTensionNPerM * tube.radiusUm * M_PER_UM * Math.cos(radians(tube.contactAngleDeg));
  return 1000 * Math.sqrt((Math.max(0, pull) * fluidityPerPa) / 2);
}

/** Capillary pressure in Pa: 2 γ cos θ / r; negative where the liquid does not wet. */
export function capillaryPressurePa(tube: Capillary): number {
  return (
    (2 * tube.surfaceTensionNPerM * Math.cos(radians(tube.contactAngleDeg))) / (tube.radiusUm * M_PER_UM)
  );
}

/**
 * Length in mm that a liquid can enter a vessel closed at `vesselMm`, whose trapped air it compresses:
 * L₀·P_c/(P + P_c).
 *
 * Isothermal, air neither dissolves nor escapes; P is one standard atmosphere.
 */
export function closedVesselLengthMm(tube: Capillary, vesselMm: number): number {
  const pressure = Math.max(0, capillaryPressurePa(tube));
  return (vesselMm * pressure) / (ATMOSPHERE_PA + pressure);
}
