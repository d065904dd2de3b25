import { type Cited, cited } from './cited.ts';
import type { SourceId } from './sources.ts';

/**
 * Surface tension of mixed epoxy in N/m, chosen in the measured range: 0.031 fresh, rising to 0.040 to 0.046
 * within hours.
 */
export const surfaceTensionNPerM: Cited = cited(0.043, 'inference', 'own-inference', 'dearlove-1978');
/** Contact angle of epoxy on freshly sanded wood in degrees. */
export const contactAngleDeg: Cited = cited(30, 'inference', 'own-inference', 'jankowska-2018');
/** Radius in µm of the vessel that travel is referred to. */
export const referenceRadiusUm: Cited = cited(25, 'inference', 'own-inference', 'panshin-dezeeuw');
/** Viscosity at gel over viscosity just mixed. */
export const viscosityRiseToGel: Cited = cited(1000, 'memory', 'from-memory');
/** Temperature in °C at which resin and seal values are given. */
export const REFERENCE_TEMPERATURE_C = 25;
/** Degrees of warming that halve the viscosity just mixed. */
export const viscosityHalvesPerC: Cited = cited(5, 'seen', 'resin-kit-manual');
/** Degrees of warming that double the rate of cure. */
export const cureDoublesPerC: Cited = cited(10, 'seen', 'resin-temperature-page');

/** Sources of the flow law and of its parameters. */
export const capillarySources: readonly SourceId[] = [
  'lucas-1918',
  'washburn-1921',
  'cheng-1994',
  'castro-macosko',
  'mendoza-2010',
  ...surfaceTensionNPerM.because,
  ...contactAngleDeg.because,
];
