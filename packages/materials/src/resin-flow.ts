import { capillaryLengthMm, referenceCapillary } from './capillary.ts';
import {
  cureDoublesPerC,
  REFERENCE_TEMPERATURE_C,
  viscosityHalvesPerC,
  viscosityRiseToGel,
} from './flow-parameters.ts';
import { fluidity, type ViscosityLaw } from './fluidity.ts';
import type { Resin } from './resin.ts';

/** How many times faster resin cures at `temperatureC` than at 25 °C: doubles every 10 °C. */
export function cureSpeed(temperatureC: number): number {
  return 2 ** ((temperatureC - REFERENCE_TEMPERATURE_C) / cureDoublesPerC.value);
}

/** Viscosity law of a resin at a temperature: the start halves every 5 °C, the rate doubles every 10 °C. */
export function resinLaw(
  resin: Resin,
  temperatureC: number,
): ViscosityLaw & { readonly kind: 'exponential' } {
  const thinning = 2 ** ((REFERENCE_TEMPERATURE_C - temperatureC) / viscosityHalvesPerC.value);
  return {
    kind: 'exponential',
    startPaS: resin.viscosityPaS.value * thinning,
    ratePerS: (Math.log(viscosityRiseToGel.value) / (resin.gelMin.value * 60)) * cureSpeed(temperatureC),
  };
}

/** Open-tube bound in mm on how far a resin runs before it sets, in the 25 µm reference vessel. */
export function openTubeLimitMm(resin: Resin, temperatureC: number): number {
  return capillaryLengthMm(
    referenceCapillary,
    fluidity(resinLaw(resin, temperatureC), Number.POSITIVE_INFINITY),
  );
}
