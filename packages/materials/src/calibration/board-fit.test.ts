import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { type BoardPrior, beliefAfter } from './belief-after.ts';
import { bleedChance } from './bleed-chance.ts';
import { boardFit } from './board-fit.ts';
import type { CouponReading } from './coupon.ts';

const CHERRY = { medianMm: 3, spreadBetween: 0.7, spreadWithin: 0.5 };
/** What is believed under a spread that is known. */
const fitBoard = (prior: BoardPrior, readings: readonly CouponReading[]) => {
  const belief = beliefAfter(prior, readings);
  const { mean: meanLog, sd: sdLog } = belief;
  return { meanLog, sdLog, ...boardFit([{ weight: 1, within: prior.spreadWithin, belief }]) };
};
const streak = (lengthMm: number): CouponReading => ({ kind: 'streak', lengthMm });

test('worked example: 1.2, 1.6 and 0.9 mm on a 3 mm prior give a median of 1.371 mm', () => {
  const fit = fitBoard(CHERRY, [1.2, 1.6, 0.9].map(streak));
  expect(fit.meanLog).toBeCloseTo(0.315503, 6);
  expect(fit.sdLog).toBeCloseTo(0.266872, 6);
  expect(fit.board.medianMm).toBeCloseTo(1.371, 3);
  expect(fit.board.lowMm).toBeCloseTo(0.813, 3);
  expect(fit.board.highMm).toBeCloseTo(2.313, 3);
  expect(fit.nextSlot.lowMm).toBeCloseTo(0.451, 3);
  expect(fit.nextSlot.highMm).toBeCloseTo(4.163, 3);
});

test('before any coupon the next slot lies between 0.556 and 16.194 mm', () => {
  const fit = fitBoard(CHERRY, []);
  expect(fit.nextSlot.lowMm).toBeCloseTo(0.556, 3);
  expect(fit.nextSlot.highMm).toBeCloseTo(16.194, 3);
});

/**
 * Posterior mean by brute force: importance weights of the prior over a far finer, wider grid and an own
 * likelihood.
 */
function bruteMean(
  readings: readonly CouponReading[],
  likelihood: (r: CouponReading, mu: number) => number,
): number {
  let sum = 0;
  let moment = 0;
  for (let mu = -8; mu <= 10; mu += 0.0005) {
    let weight = Math.exp(-0.5 * ((mu - Math.log(3)) / 0.7) ** 2);
    for (const reading of readings) {
      weight *= likelihood(reading, mu);
    }
    sum += weight;
    moment += weight * mu;
  }
  return moment / sum;
}

/** Probability of N(mu, 0.5²) between two logs by Simpson's rule over the density: no use of our Φ. */
function between(low: number, high: number, mu: number): number {
  const from = Math.max(low, mu - 5);
  const to = Math.min(high, mu + 5);
  if (to <= from) {
    return 0;
  }
  let sum = 0;
  const steps = 60;
  for (let step = 0; step <= steps; step++) {
    const weight = step === 0 || step === steps ? 1 : step % 2 === 1 ? 4 : 2;
    sum += weight * Math.exp(-0.5 * ((from + ((to - from) * step) / steps - mu) / 0.5) ** 2);
  }
  return (sum * (to - from)) / steps / 3 / (0.5 * Math.sqrt(2 * Math.PI));
}

test('censored, classed and measured readings together agree with brute force', () => {
  const readings: CouponReading[] = [
    { kind: 'none-visible', belowMm: 0.45 },
    { kind: 'class', class: 'slight' },
    streak(0.8),
  ];
  const expected = bruteMean(readings, (reading, mu) => {
    if (reading.kind === 'streak') {
      return Math.exp(-0.5 * ((Math.log(reading.lengthMm) - mu) / 0.5) ** 2);
    }
    return reading.kind === 'none-visible'
      ? between(-Infinity, Math.log(reading.belowMm), mu)
      : between(Math.log(0.45), Math.log(1), mu);
  });
  // bound: the brute force cuts at five standard deviations, 6e-7
  expect(fitBoard(CHERRY, readings).meanLog).toBeCloseTo(expected, 5);
});

test('the band of a board whose streaks were not seen agrees with brute force', () => {
  const below = 0.45;
  const { board } = fitBoard(CHERRY, [{ kind: 'none-visible', belowMm: below }]);
  const step = 0.001;
  const weights = Array.from({ length: 12_000 }, (_, k) => {
    const mu = -7 + k * step;
    return Math.exp(-0.5 * ((mu - Math.log(3)) / 0.7) ** 2) * between(-Infinity, Math.log(below), mu);
  });
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const shareUpTo = (mm: number) =>
    weights.reduce((sum, weight, k) => (-7 + k * step <= Math.log(mm) ? sum + weight : sum), 0) / all;
  // bound: cells of the grid, a quarter of a standard deviation wide, hold their weight evenly: 0.001 of it is off
  expect(shareUpTo(board.lowMm)).toBeCloseTo(0.025, 2.5);
  expect(shareUpTo(board.medianMm)).toBeCloseTo(0.5, 2.5);
  expect(shareUpTo(board.highMm)).toBeCloseTo(0.975, 2.5);
});

test('“none visible below T” and “clean” are the same statement at T = 0.45 mm', () => {
  const censored = fitBoard(CHERRY, [{ kind: 'none-visible', belowMm: 0.45 }]);
  const classed = fitBoard(CHERRY, [{ kind: 'class', class: 'clean' }]);
  expect(classed.meanLog).toBe(censored.meanLog);
});

test('“none visible” is not a streak of length 0: the band stays finite and moves down', () => {
  const fit = fitBoard(
    CHERRY,
    Array.from({ length: 6 }, () => ({ kind: 'none-visible', belowMm: 0.45 }) as const),
  );
  expect(fit.board.medianMm).toBeLessThan(0.45);
  expect(fit.board.lowMm).toBeGreaterThan(0.01);
  expect(fit.longerThan(0.45)).toBeLessThan(fitBoard(CHERRY, []).longerThan(0.45));
});

test('the order of readings does not matter, more readings narrow the band, and quantiles are ordered', () => {
  const reading = fc.oneof(
    fc.double({ min: 0.1, max: 20, noNaN: true }).map(streak),
    fc.constant<CouponReading>({ kind: 'none-visible', belowMm: 0.45 }),
    fc
      .constantFrom('clean', 'slight', 'moderate', 'severe')
      .map((name): CouponReading => ({ kind: 'class', class: name as 'clean' })),
  );
  fc.assert(
    fc.property(fc.array(reading, { minLength: 1, maxLength: 5 }), (readings) => {
      const fit = fitBoard(CHERRY, readings);
      expect(fitBoard(CHERRY, [...readings].reverse()).meanLog).toBeCloseTo(fit.meanLog, 9);
      expect(fit.sdLog).toBeLessThan(0.7);
      expect(fit.board.lowMm).toBeLessThan(fit.board.medianMm);
      expect(fit.nextSlot.lowMm).toBeLessThan(fit.board.lowMm);
      expect(fit.nextSlot.highMm).toBeGreaterThan(fit.board.highMm);
      expect(fit.longerThan(fit.nextSlot.medianMm)).toBeCloseTo(0.5, 9);
    }),
    cases(40),
  );
});

test('readings far beyond the prior and hundreds that contradict each other still give a belief', () => {
  const far = fitBoard({ medianMm: 0.001, spreadBetween: 0.1, spreadWithin: 0.5 }, [
    { kind: 'class', class: 'severe' },
  ]);
  expect(far.board.medianMm).toBeGreaterThan(0.001);
  const torn = fitBoard(
    CHERRY,
    Array.from(
      { length: 1200 },
      (_, index) => ({ kind: 'class', class: index % 2 ? 'clean' : 'severe' }) as const,
    ),
  );
  // half below 0.45 mm and half above 2 mm: the median lies between
  expect(torn.board.medianMm).toBeGreaterThan(0.45);
  expect(torn.board.medianMm).toBeLessThan(2);
});

test('a thousand readings weigh as many: the spread falls with the root of their number', () => {
  const clean = (count: number) =>
    fitBoard(
      CHERRY,
      Array.from(
        { length: count },
        (_, index) => ({ kind: 'class', class: index % 2 ? 'clean' : 'slight' }) as const,
      ),
    );
  // the prior has hardly any weight in either; bound: its share in 400 readings
  expect(clean(400).sdLog / clean(1600).sdLog).toBeCloseTo(2, 1);
});

test('a reading of 0 mm is refused: nothing visible is its own kind', () => {
  expect(() => fitBoard(CHERRY, [streak(0)])).toThrow(RangeError);
});

test('3 of 3 clean leave a mean chance of 0.20 and an upper end of 0.527; 28 clean bring it below 0.10', () => {
  expect(bleedChance(0, 3).mean).toBeCloseTo(0.2, 12);
  expect(bleedChance(0, 3).upper95).toBeCloseTo(0.527, 3);
  expect(bleedChance(0, 28).upper95).toBeLessThan(0.1);
  expect(bleedChance(0, 27).upper95).toBeGreaterThan(0.1);
});

test('the upper end after k of n is the 95 % point of the beta law, checked by its integral', () => {
  const { upper95 } = bleedChance(2, 7);
  let below = 0;
  let all = 0;
  for (let p = 0.00005; p < 1; p += 0.0001) {
    const density = p ** 2 * (1 - p) ** 5;
    all += density;
    below += p < upper95 ? density : 0;
  }
  expect(below / all).toBeCloseTo(0.95, 3);
});
