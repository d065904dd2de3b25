import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { type BleedJob, bleedTravel } from '../bleed-travel.ts';
import { calibratedTravel } from './calibrated-travel.ts';
import type { Coupon, CouponReading } from './coupon.ts';

/** Prior median 3 mm: black cherry without a seal. */
const CHERRY: BleedJob = { wood: 'cherry', seal: 'none', coats: 0, sealHours: 0 };
const streaks = (...lengths: number[]): CouponReading[] =>
  lengths.map((lengthMm) => ({ kind: 'streak', lengthMm }));
const coupon = (row: number, readings: readonly CouponReading[], more: Partial<Coupon> = {}): Coupon => ({
  row,
  board: null,
  made: CHERRY,
  readings,
  ...more,
});
const otherBoard = (row: number, board: string, ...lengths: number[]): Coupon =>
  coupon(row, streaks(...lengths), { board });

describe('coupons of the board itself', () => {
  test('1.2, 1.6 and 0.9 mm bring 3 mm to 1.371 mm, next slot 0.451 to 4.163 mm, from 0.556 to 16.194 mm', () => {
    const before = calibratedTravel(CHERRY, []);
    expect(before.basis).toBe('prior');
    expect(before.lowMm).toBeCloseTo(0.556, 3);
    expect(before.highMm).toBeCloseTo(16.194, 3);
    const after = calibratedTravel(CHERRY, [coupon(1, streaks(1.2, 1.6, 0.9))]);
    expect(after.basis).toBe('calibrated');
    expect(after.medianMm).toBeCloseTo(1.371, 3);
    expect(after.lowMm).toBeCloseTo(0.451, 3);
    expect(after.highMm).toBeCloseTo(4.163, 3);
    expect(after.couponRows).toEqual([1]);
    expect(after.slots).toBe(3);
    expect(after.sources).toContain('own-coupons');
  });

  test('one coupon of three slots says the same as three coupons of one slot', () => {
    const one = calibratedTravel(CHERRY, [coupon(1, streaks(1.2, 1.6, 0.9))]);
    const three = calibratedTravel(
      CHERRY,
      [1.2, 1.6, 0.9].map((mm, k) => coupon(k + 1, streaks(mm))),
    );
    expect(three.medianMm).toBeCloseTo(one.medianMm, 12);
    expect(three.couponRows).toEqual([1, 2, 3]);
  });

  test('3 of 3 clean slots by themselves leave a chance of 0.20 and an upper end of 0.527', () => {
    const clean = Array.from({ length: 3 }, (): CouponReading => ({ kind: 'none-visible', belowMm: 0.45 }));
    const { ownSlots } = calibratedTravel(CHERRY, [coupon(1, clean)]);
    expect(ownSlots?.slots).toBe(3);
    expect(ownSlots?.bleeding).toBe(0);
    expect(ownSlots?.chance.mean).toBeCloseTo(0.2, 12);
    expect(ownSlots?.chance.upper95).toBeCloseTo(0.527, 3);
  });

  test('“none below 1 mm” leaves open whether a streak is seen and is not counted', () => {
    const { ownSlots } = calibratedTravel(CHERRY, [
      coupon(1, [
        { kind: 'none-visible', belowMm: 1 },
        { kind: 'class', class: 'slight' },
      ]),
    ]);
    expect(ownSlots).toMatchObject({ slots: 1, bleeding: 1 });
  });

  test('a coupon left a little longer is carried over by the curve of the seal', () => {
    const sealed: BleedJob = { wood: 'poplar', seal: 'epoxy', coats: 1, sealHours: 24 };
    const made: BleedJob = { ...sealed, sealHours: 20 };
    const ratio = bleedTravel(sealed).medianMm / bleedTravel(made).medianMm;
    const carried = calibratedTravel(sealed, [coupon(1, streaks(0.5), { made })]);
    const direct = calibratedTravel(sealed, [coupon(1, streaks(0.5 * ratio), { made: sealed })]);
    expect(carried.medianMm).toBeCloseTo(direct.medianMm, 12);
  });
});

describe('heart and sap', () => {
  const heart: BleedJob = { ...CHERRY, part: 'heart' };
  const one = (part: 'heart' | 'sap' | null = null) =>
    calibratedTravel(heart, [coupon(1, streaks(1, 1, 1), { made: { ...CHERRY, part } })]);

  test('a coupon that says neither, or the same, counts fully', () => {
    expect(one().medianMm).toBeCloseTo(calibratedTravel(CHERRY, [coupon(1, streaks(1, 1, 1))]).medianMm, 12);
    expect(one('heart').medianMm).toBe(one().medianMm);
  });

  test('a coupon of the other part counts by what it says of board and wood', () => {
    expect(one('sap').medianMm).toBeGreaterThan(one('heart').medianMm);
    expect(one('sap').medianMm).toBeLessThan(3);
    expect(one('sap').ownSlots).toBeNull();
  });
});

describe('coupons of other boards', () => {
  test('of one other board say nothing of the wood', () => {
    const travel = calibratedTravel(CHERRY, [otherBoard(1, 'a', 1, 1, 1), otherBoard(2, 'a', 1.2)]);
    expect(travel.basis).toBe('prior');
    expect(travel.couponRows).toEqual([]);
    expect(travel.medianMm).toBe(bleedTravel(CHERRY).medianMm);
  });

  test('of several boards move the wood, but never as much as the board’s own', () => {
    const others = calibratedTravel(CHERRY, [otherBoard(1, 'a', 1, 1), otherBoard(2, 'b', 1, 1)]);
    const own = calibratedTravel(CHERRY, [coupon(1, streaks(1, 1, 1, 1))]);
    expect(others.medianMm).toBeLessThan(3);
    expect(others.medianMm).toBeGreaterThan(own.medianMm);
    expect(others.spread).toBeGreaterThan(own.spread);
    // many boards leave the doubt between boards: a third of 0.7² and the 0.5² of a slot
    const many = calibratedTravel(
      CHERRY,
      Array.from({ length: 60 }, (_, k) => otherBoard(k + 1, `board ${k}`, 1, 1, 1)),
    );
    expect(many.spread).toBeGreaterThan(Math.sqrt(0.49 / 3 + 0.25));
    expect(many.spread).toBeLessThan(Math.sqrt(0.49 / 3 + 0.25) * 1.02);
    expect(many.medianMm).toBeLessThan(1.05);
  });

  test('of another wood say nothing', () => {
    const made: BleedJob = { ...CHERRY, wood: 'maple' };
    expect(calibratedTravel(CHERRY, [coupon(1, streaks(1), { made })]).basis).toBe('prior');
  });

  test('in another seal say what they know of board and wood, and leave the seal’s doubt', () => {
    const made: BleedJob = { wood: 'cherry', seal: 'shellac', coats: 1, sealHours: 2 };
    // a tenth of what the prior gives under shellac
    const tenth = streaks(0.105, 0.105, 0.105);
    const other = calibratedTravel(CHERRY, [coupon(1, tenth, { made })]);
    const own = calibratedTravel(CHERRY, [coupon(1, streaks(0.3, 0.3, 0.3))]);
    expect(other.basis).toBe('calibrated');
    expect(other.medianMm).toBeGreaterThan(own.medianMm);
    expect(other.medianMm).toBeLessThan(3);
    expect(other.ownSlots).toBeNull();
  });
});

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

test('streaks of three boards and two seals agree with the joint solution for all parts', () => {
  const shellac: BleedJob = { wood: 'cherry', seal: 'shellac', coats: 1, sealHours: 2 };
  const travel = calibratedTravel(CHERRY, [
    coupon(1, streaks(1.2, 2.5)),
    otherBoard(2, 'a', 0.8),
    coupon(3, streaks(0.4), { board: 'b', made: shellac }),
    coupon(4, streaks(0.9), { made: shellac }),
  ]);
  // parts: wood, treatment none, treatment shellac, own board, a, b
  const log = Math.log;
  const x = byParts(
    [
      { parts: [1, 1, 0, 1, 0, 0], y: log(1.2 / 3) },
      { parts: [1, 1, 0, 1, 0, 0], y: log(2.5 / 3) },
      { parts: [1, 1, 0, 0, 1, 0], y: log(0.8 / 3) },
      { parts: [1, 0, 1, 0, 0, 1], y: log(0.4 / 1.05) },
      { parts: [1, 0, 1, 1, 0, 0], y: log(0.9 / 1.05) },
    ],
    new Array<number>(6).fill(0.49 / 3),
  );
  expect(log(travel.medianMm / 3)).toBeCloseTo(x[0]! + x[1]! + x[3]!, 9);
});

test('readings that leave intervals on two boards agree with brute force over what the boards share', () => {
  const readings: CouponReading[] = [
    { kind: 'none-visible', belowMm: 0.45 },
    { kind: 'class', class: 'slight' },
  ];
  const travel = calibratedTravel(CHERRY, [
    coupon(1, readings),
    coupon(2, [{ kind: 'class', class: 'clean' }], { board: 'a' }),
  ]);
  const phi = (low: number, high: number, mu: number): number => {
    let sum = 0;
    const from = Math.max(low, mu - 4);
    const to = Math.min(high, mu + 4);
    for (let k = 0; k < 80 && to > from; k++) {
      const at = from + ((k + 0.5) * (to - from)) / 80;
      sum += Math.exp(-0.5 * ((at - mu) / 0.5) ** 2) * ((to - from) / 80);
    }
    return sum;
  };
  const log = Math.log;
  const sd = (share: number): number => Math.sqrt(0.49 * share);
  let total = 0;
  let moment = 0;
  const step = 0.08;
  const ownAt = new Map<number, number>();
  const otherAt = new Map<number, number>();
  const cached = (map: Map<number, number>, k: number, value: () => number): number => {
    const known = map.get(k) ?? value();
    map.set(k, known);
    return known;
  };
  for (let c = -40; c <= 40; c++) {
    const common = Math.exp(-0.5 * ((c * step) / sd(2 / 3)) ** 2);
    let other = 0;
    let own = 0;
    let ownMoment = 0;
    for (let z = -30; z <= 30; z++) {
      const mu = log(3) + (c + z) * step;
      const weight = Math.exp(-0.5 * ((z * step) / sd(1 / 3)) ** 2);
      other += weight * cached(otherAt, c + z, () => phi(-9, log(0.45), mu));
      const likely = weight * cached(ownAt, c + z, () => phi(-9, log(0.45), mu) * phi(log(0.45), 0, mu));
      own += likely;
      ownMoment += likely * mu;
    }
    total += common * other * own;
    moment += common * other * ownMoment;
  }
  // bound: the other board's interval is matched by mean and variance only
  expect(log(travel.medianMm)).toBeCloseTo(moment / total, 2);
});

test('the order of coupons does not matter, and more coupons of the board never widen the band by much', () => {
  const mm = fc.double({ min: 0.1, max: 20, noNaN: true });
  const any = fc.record({
    board: fc.constantFrom(null, 'a', 'b'),
    lengths: fc.array(mm, { minLength: 1, maxLength: 3 }),
  });
  fc.assert(
    fc.property(fc.array(any, { minLength: 1, maxLength: 5 }), mm, (list, extra) => {
      const coupons = list.map(({ board, lengths }, k) => coupon(k + 1, streaks(...lengths), { board }));
      const travel = calibratedTravel(CHERRY, coupons);
      expect(calibratedTravel(CHERRY, coupons.toReversed()).medianMm).toBeCloseTo(travel.medianMm, 9);
      // streak lengths are normal in the log: every one narrows the belief
      const more = calibratedTravel(CHERRY, [...coupons, coupon(9, streaks(extra))]);
      expect(more.spread).toBeLessThan(travel.spread + 1e-12);
      expect(more.longerThan(more.medianMm)).toBeCloseTo(0.5, 9);
    }),
    cases(50),
  );
});

test('forty coupons of as many boards, sixty classes each, still settle to a belief', () => {
  const classes = ['clean', 'slight', 'moderate', 'severe'] as const;
  const travel = calibratedTravel(
    CHERRY,
    Array.from({ length: 40 }, (_, k) =>
      coupon(
        k + 1,
        Array.from(
          { length: 60 },
          (_, slot): CouponReading => ({ kind: 'class', class: classes[(k + slot) % 3] ?? 'clean' }),
        ),
        { board: `board ${k}` },
      ),
    ),
  );
  // a third of the slots each below 0.45, 1 and 2 mm: the wood lies about the middle class
  expect(travel.medianMm).toBeGreaterThan(0.45);
  expect(travel.medianMm).toBeLessThan(1);
  expect(travel.slots).toBe(2400);
});
