import { expect, test } from 'vitest';
import {
  capillaryLengthMm,
  capillaryPressurePa,
  closedVesselLengthMm,
  referenceCapillary,
} from './capillary.ts';
import { cureDoublesPerC } from './flow-parameters.ts';
import { fluidity, type ViscosityLaw } from './fluidity.ts';
import { resins } from './resin.ts';
import { cureSpeed, openTubeLimitMm } from './resin-flow.ts';

const tube = (radiusUm: number) => ({ ...referenceCapillary, radiusUm });
const rising = (startPaS: number, gelS: number): ViscosityLaw => ({
  kind: 'exponential',
  startPaS,
  ratePerS: Math.log(1000) / gelS,
});
const still = (startPaS: number): ViscosityLaw => ({ kind: 'constant', startPaS });
const power = (exponent: number): ViscosityLaw => ({ kind: 'power', startPaS: 1, gelS: 2400, exponent });

// γ 0.043 N/m, θ 30°; lengths by hand from √(γ r cos θ F/2), each to its last digit
test.each<[string, number, ViscosityLaw, number, number]>([
  ['W1 thin wood vessel, constant 1 Pa·s', 25, still(1), 600, 16.712],
  ['W2 three times as thick', 25, still(3), 600, 9.649],
  ['W3 wide vessel', 65, still(1), 600, 26.947],
  ['W4 rising to gel at 40 min, after 10 min', 25, rising(1, 2400), 600, 11.531],
  ['W5 the same at gel', 25, rising(1, 2400), 2400, 12.711],
  ['W6 the same without end', 25, rising(1, 2400), Infinity, 12.717],
  ['W7 wide vessel without end', 65, rising(1, 2400), Infinity, 20.506],
  ['W8 thin resin, 12 h to gel', 25, rising(0.3, 12 * 3600), Infinity, 98.507],
  ['W9 thick resin, 20 min to gel', 25, rising(3, 1200), Infinity, 5.192],
  ['W10 power law n = 1', 25, power(1), 2400, 23.634],
  ['W10 power law n = 2', 25, power(2), 2400, 19.297],
  ['W10 power law n = 4', 25, power(4), 2400, 14.948],
])('%s', (_name, radiusUm, law, timeS, lengthMm) => {
  expect(capillaryLengthMm(tube(radiusUm), fluidity(law, timeS))).toBeCloseTo(lengthMm, 3);
});

test('the sums of fluidity in the worked cases', () => {
  expect(fluidity(rising(1, 2400), 600)).toBeCloseTo(285.652, 3);
  expect(fluidity(rising(1, 2400), 2400)).toBeCloseTo(347.088, 3);
  expect(fluidity(rising(1, 2400), Infinity)).toBeCloseTo(347.436, 3);
});

/** ∫ dt/η by Simpson's rule on the law itself. */
function bySimpson(viscosity: (t: number) => number, end: number): number {
  const steps = 20_000;
  let sum = 0;
  for (let step = 0; step <= steps; step++) {
    const weight = step === 0 || step === steps ? 1 : step % 2 === 1 ? 4 : 2;
    sum += weight / viscosity((end * step) / steps);
  }
  return (sum * end) / steps / 3;
}

test('closed forms equal the integral of 1/η to 1e-9', () => {
  const rate = Math.log(1000) / 2400;
  const exponential = bySimpson((t) => Math.exp(rate * t), 2400);
  expect(Math.abs(fluidity(rising(1, 2400), 2400) / exponential - 1)).toBeLessThan(1e-9);
  const powered = bySimpson((t) => (1 - t / 2400) ** -2, 2000);
  expect(Math.abs(fluidity(power(2), 2000) / powered - 1)).toBeLessThan(1e-9);
});

test('a power law gives nothing more after gel', () => {
  expect(fluidity(power(2), 5000)).toBe(fluidity(power(2), 2400));
});

test.each([
  [25, 2979, 2.856],
  [65, 1146, 1.118],
  [150, 497, 0.488],
])(
  'a closed vessel of %d µm pulls with %d Pa and lets in %d %% of its length',
  (radiusUm, pressurePa, pct) => {
    expect(capillaryPressurePa(tube(radiusUm))).toBeCloseTo(pressurePa, 0);
    expect(closedVesselLengthMm(tube(radiusUm), 100)).toBeCloseTo(pct, 3);
  },
);

test('a vessel closed at 5 mm lets in 0.143 mm', () => {
  expect(closedVesselLengthMm(tube(25), 5)).toBeCloseTo(0.143, 3);
});

test('the trapped air holds the balance: pressure × volume stays', () => {
  const entered = closedVesselLengthMm(tube(40), 8);
  const airPressure = (101_325 * 8) / (8 - entered);
  expect(airPressure).toBeCloseTo(101_325 + capillaryPressurePa(tube(40)), 6);
});

test('a liquid that does not wet does not enter', () => {
  const repelled = { ...referenceCapillary, contactAngleDeg: 100 };
  expect(capillaryLengthMm(repelled, 1000)).toBe(0);
  expect(closedVesselLengthMm(repelled, 5)).toBe(0);
});

test('the resin classes run to their worked limits: coating 12.717 mm of a cup, √2.5 times that as a thin layer, deep pour 98.507 mm', () => {
  // 40 min in the worked figure, 4 × 25 min as a thin layer
  expect(openTubeLimitMm(resins.coating, 25)).toBeCloseTo(12.717 * Math.sqrt(2.5), 2);
  expect(openTubeLimitMm(resins['deep-pour'], 25)).toBeCloseTo(98.507, 3);
});

test('limits move little with wetting: 11.6 to 14.3 mm for γ cos θ from 31 to 47 mN/m, 9.66 mm at 60°', () => {
  const limit = (surfaceTensionNPerM: number, contactAngleDeg: number) =>
    capillaryLengthMm(
      { radiusUm: 25, surfaceTensionNPerM, contactAngleDeg },
      fluidity(rising(1, 2400), Infinity),
    );
  expect(limit(0.031, 0)).toBeCloseTo(11.6, 1);
  expect(limit(0.047, 0)).toBeCloseTo(14.3, 1);
  expect(limit(0.043, 60)).toBeCloseTo(9.66, 2);
});

test('a rise of 100 instead of 1000 up to gel would lengthen the limit by 22 %', () => {
  const law: ViscosityLaw = { kind: 'exponential', startPaS: 1, ratePerS: Math.log(100) / 2400 };
  const longer = capillaryLengthMm(tube(25), fluidity(law, Infinity));
  expect(longer / 12.717).toBeCloseTo(1.22, 2);
});

test('doubling per 10 °C is Arrhenius with 52.9 kJ/mol between 25 and 35 °C', () => {
  const ratio = Math.exp((52_900 / 8.314462618) * (1 / 298.15 - 1 / 308.15));
  expect(cureSpeed(25 + cureDoublesPerC.value) / cureSpeed(25)).toBeCloseTo(ratio, 2);
});
