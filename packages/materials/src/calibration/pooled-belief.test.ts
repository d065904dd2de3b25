import { expect, test } from 'vitest';
import { streaks } from '../../../../tests/support/coupons.ts';
import { logNormal, phi, quantileOf } from '../../../../tests/support/oracles/normal-distribution.ts';
import { beliefAfter } from './belief-after.ts';
import type { CouponReading } from './coupon.ts';
import { beliefFromElsewhere } from './pooled-belief.ts';

/**
 * Mean of a normal after equations of the parts, by solving for all parts at once: no covariances of groups,
 * no updates.
 */
function byParts(
  rows: readonly { readonly parts: readonly number[]; readonly y: number }[],
  variances: readonly number[],
) {
  const n = variances.length;
  const a = variances.map((variance, i) =>
    variances.map(
      (_, j) =>
        (i === j ? 1 / variance : 0) +
        rows.reduce((sum, { parts }) => sum + (parts[i]! * parts[j]!) / 0.25, 0),
    ),
  );
  const b = variances.map((_, i) => rows.reduce((sum, { parts, y }) => sum + (parts[i]! * y) / 0.25, 0));
  for (let i = 0; i < n; i++) {
    for (let k = i + 1; k < n; k++) {
      const f = a[k]![i]! / a[i]![i]!;
      for (let j = i; j < n; j++) {
        a[k]![j]! -= f * a[i]![j]!;
      }
      b[k]! -= f * b[i]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    x[i] = (b[i]! - x.reduce((sum, value, j) => sum + (j > i ? a[i]![j]! * value : 0), 0)) / a[i]![i]!;
  }
  return x;
}

/** Groups of the job's own board and treatment, another board, and another treatment on both. */
const GROUPS: readonly (readonly [board: string | null, treatment: string, lengths: readonly number[]])[] = [
  [null, 'own', [1.2, 2.5]],
  ['a', 'own', [0.8]],
  ['b', 'shellac', [1.1]],
  [null, 'shellac', [2.6]],
];
const POOLED = {
  medianMm: 3,
  variance: 0.49,
  woodVariance: 0,
  shares: { wood: 1 / 3, treatment: 1 / 3, board: 1 / 3 },
  spreadWithin: 0.5,
};
const groupsWith = (readingsOf: (lengths: readonly number[]) => readonly CouponReading[]) =>
  GROUPS.map(([board, treatment, lengths]) => ({
    board,
    treatment,
    isOwnBoard: board === null,
    isOwnTreatment: treatment === 'own',
    readings: readingsOf(lengths),
  }));

test('streaks of three boards and two seals agree with the joint solution for all parts', () => {
  const groups = groupsWith((lengths) => streaks(...lengths));
  const elsewhere = beliefFromElsewhere(groups, POOLED);
  const { mean } = beliefAfter(
    { medianMm: 3 * Math.exp(elsewhere.mean), spreadBetween: elsewhere.sd, spreadWithin: 0.5 },
    streaks(1.2, 2.5),
  );
  // parts: wood, treatment none, treatment shellac, own board, a, b
  const log = Math.log;
  const x = byParts(
    [
      { parts: [1, 1, 0, 1, 0, 0], y: log(1.2 / 3) },
      { parts: [1, 1, 0, 1, 0, 0], y: log(2.5 / 3) },
      { parts: [1, 1, 0, 0, 1, 0], y: log(0.8 / 3) },
      { parts: [1, 0, 1, 0, 0, 1], y: log(1.1 / 3) },
      { parts: [1, 0, 1, 1, 0, 0], y: log(2.6 / 3) },
    ],
    new Array<number>(6).fill(0.49 / 3),
  );
  expect(mean - log(3)).toBeCloseTo(x[0]! + x[1]! + x[3]!, 9);
});

test.each([0.2, 0.5, 1.4])(
  'the density of all streaks under a spread of %d is that of one joint normal',
  (spread) => {
    const groups = groupsWith((lengths) => streaks(...lengths));
    const { logEvidence } = beliefFromElsewhere(groups, { ...POOLED, spreadWithin: spread });
    const rows = GROUPS.flatMap(([board, treatment, lengths], g) =>
      lengths.map((length) => ({ board, treatment, g, y: Math.log(length / 3) })),
    );
    const covariance = rows.map((a, i) =>
      rows.map(
        (b, j) =>
          (0.49 / 3) * (1 + (a.treatment === b.treatment ? 1 : 0) + (a.board === b.board ? 1 : 0)) +
          (i === j ? spread ** 2 : 0),
      ),
    );
    expect(logEvidence).toBeCloseTo(
      logNormal(
        covariance,
        rows.map(({ y }) => y),
      ),
      9,
    );
  },
);

test('the density of readings that leave intervals agrees with drawing from the prior', () => {
  const groups = groupsWith((lengths) =>
    lengths.map((lengthMm) => ({ kind: 'streak', lengthMm, stepMm: 1 })),
  );
  const ratio =
    beliefFromElsewhere(groups, { ...POOLED, spreadWithin: 0.3 }).logEvidence -
    beliefFromElsewhere(groups, { ...POOLED, spreadWithin: 0.9 }).logEvidence;
  // a lattice of uniform points, one for each part, through the quantiles of a normal variable
  const draws = 15_000;
  const steps = [Math.SQRT2, Math.sqrt(3), Math.sqrt(5), Math.sqrt(7), Math.sqrt(11), Math.sqrt(13)];
  const density = (spread: number): number => {
    let sum = 0;
    for (let k = 1; k <= draws; k++) {
      const [wood, none, shellac, own, a, b] = steps.map(
        (step) => Math.sqrt(0.49 / 3) * quantileOf((k * step) % 1),
      ) as [number, number, number, number, number, number];
      const at = [wood + none + own, wood + none + a, wood + shellac + b, wood + shellac + own];
      sum += GROUPS.reduce(
        (product, [, , lengths], g) =>
          lengths.reduce(
            (each, length) =>
              each *
              (phi((Math.log((length + 0.5) / 3) - at[g]!) / spread) -
                phi((Math.log((length - 0.5) / 3) - at[g]!) / spread)),
            product,
          ),
        1,
      );
    }
    return sum / draws;
  };
  // bound: intervals are matched by mean and variance only, and the draws have an error of their own
  expect(ratio).toBeCloseTo(Math.log(density(0.3) / density(0.9)), 1);
});
