import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CHERRY, coupon, otherBoard, streaks } from '../../../../tests/support/coupons.ts';
import { cases } from '../../../../tests/support/lane.ts';
import { bruteBand } from '../../../../tests/support/oracles/brute-band.ts';
import { quantileOf } from '../../../../tests/support/oracles/normal-distribution.ts';
import { type BleedJob, bleedTravel } from '../bleed-travel.ts';
import { calibratedTravel } from './calibrated-travel.ts';
import type { CouponReading } from './coupon.ts';

describe('coupons of the board itself', () => {
  test('1.2, 1.6 and 0.9 mm bring 3 mm to 1.286 mm, the next slot to 0.436 to 5.948 mm, from 0.556 to 16.194 mm', () => {
    const before = calibratedTravel(CHERRY, []);
    expect(before.basis).toBe('prior');
    expect(before.lowMm).toBeCloseTo(0.556, 3);
    expect(before.highMm).toBeCloseTo(16.194, 3);
    const after = calibratedTravel(CHERRY, [coupon(1, streaks(1.2, 1.6, 0.9))]);
    expect(after.basis).toBe('calibrated');
    // by sums over 800 spreads and 4000 medians in another language
    expect(after.medianMm).toBeCloseTo(1.2856, 3);
    expect(after.lowMm).toBeCloseTo(0.4358, 3);
    expect(after.highMm).toBeCloseTo(5.948, 2);
    expect(after.couponRows).toEqual([1]);
    expect(after.slots).toBe(3);
    expect(after.sources).toContain('own-coupons');
  });

  test.each<readonly [name: string, readings: readonly CouponReading[]]>([
    ['one length', streaks(1.5)],
    ['lengths that differ much', streaks(0.3, 4, 1.2, 0.7)],
    ['lengths that hardly differ', streaks(1, 1.1, 0.95, 1.05, 1, 0.9, 1.1, 1)],
    [
      'lengths in steps of 1 mm',
      [1, 2, 1, 3, 1].map((lengthMm) => ({ kind: 'streak', lengthMm, stepMm: 1 })),
    ],
    [
      'lengths in steps that are just fine',
      [2.1, 2.5, 3.1, 2].map((lengthMm) => ({ kind: 'streak', lengthMm, stepMm: 0.49 })),
    ],
    [
      'all kinds',
      [
        { kind: 'none-visible', belowMm: 0.5 },
        { kind: 'class', class: 'slight' },
        { kind: 'between', fromMm: 1, toMm: 2.5 },
        ...streaks(0.8),
      ],
    ],
    ['nothing visible', Array.from({ length: 3 }, () => ({ kind: 'none-visible', belowMm: 0.45 }))],
  ])('agree with brute force over median and spread: %s', (_, readings) => {
    const { medianMm, lowMm, highMm } = calibratedTravel(CHERRY, [coupon(1, readings)]);
    const brute = bruteBand(readings);
    // bound: the brute force's step of 0.02 in ln, and what its ends cut off
    expect(medianMm / brute.medianMm).toBeCloseTo(1, 2);
    expect(lowMm / brute.lowMm).toBeCloseTo(1, 2);
    expect(highMm / brute.highMm).toBeCloseTo(1, 2);
  });

  test('streaks that a good seal should have held are believed, and no slot that is longer lowers the band', () => {
    const sealed: BleedJob = { wood: 'cherry', seal: 'epoxy', coats: 1, sealHours: 24 };
    expect(bleedTravel(sealed).medianMm).toBeLessThan(0.2);
    let before = 0;
    for (const factor of [0.1, 0.3, 1, 3]) {
      const slots = streaks(3 * factor, 4 * factor, 5 * factor);
      const { medianMm, lowMm } = calibratedTravel(sealed, [coupon(1, slots, { made: sealed })]);
      expect(medianMm / factor).toBeGreaterThan(2);
      expect(medianMm / factor).toBeLessThan(5);
      expect(medianMm).toBeGreaterThan(before);
      expect(lowMm).toBeGreaterThan(0);
      before = medianMm;
    }
  });

  test('many slots teach the spread, whatever it was taken to be', () => {
    for (const spread of [0.2, 0.5, 1.2]) {
      // quantiles of a normal variable stand for a sample of it
      const lengths = Array.from({ length: 60 }, (_, k) => Math.exp(spread * quantileOf((k + 0.5) / 60)));
      const { spreadWithin } = calibratedTravel(CHERRY, [coupon(1, streaks(...lengths))]);
      expect(Math.abs(spreadWithin / spread - 1)).toBeLessThan(0.1);
    }
  });

  test('three clean slots never leave a longer band than none', () => {
    const clean = Array.from({ length: 3 }, (): CouponReading => ({ kind: 'none-visible', belowMm: 0.45 }));
    for (const wood of ['cherry', 'walnut', 'maple', 'poplar'] as const) {
      const job = { ...CHERRY, wood };
      const after = calibratedTravel(job, [coupon(1, clean, { made: job })]);
      expect(after.highMm).toBeLessThan(bleedTravel(job).highMm);
      expect(after.visibleProbability).toBeLessThan(bleedTravel(job).visibleProbability);
    }
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

  test('slots under the seal of the job count where its hours are nearly the same, not where they are others', () => {
    const sealed: BleedJob = { wood: 'poplar', seal: 'epoxy', coats: 1, sealHours: 24 };
    const slotsAfter = (sealHours: number) =>
      calibratedTravel(sealed, [coupon(1, streaks(0.5), { made: { ...sealed, sealHours } })]).ownSlots?.slots;
    expect([24, 17, 35].map(slotsAfter)).toEqual([1, 1, 1]);
    expect([15, 37].map(slotsAfter)).toEqual([undefined, undefined]);
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

describe('a spread between boards that the maker has typed', () => {
  test('widens or narrows the band around the same median, with and without coupons', () => {
    const one = coupon(1, streaks(1.2, 1.6, 0.9));
    const bands = [0.4, undefined, 1].map((spreadBetween) => {
      const job = { ...CHERRY, ...(spreadBetween === undefined ? {} : { spreadBetween }) };
      return { prior: bleedTravel(job), own: calibratedTravel(job, [one]) };
    });
    expect(bands.map(({ prior }) => prior.medianMm)).toEqual([3, 3, 3]);
    // streaks of a board differ by 0.5 besides
    expect(bands.map(({ prior }) => prior.spread)).toEqual(
      [0.4, 0.7, 1].map((between) => Math.hypot(between, 0.5)),
    );
    const [tight, usual, wide] = bands.map(({ own }) => own.medianMm) as [number, number, number];
    // who knows that boards hardly differ believes three slots less
    expect(tight).toBeGreaterThan(usual);
    expect(usual).toBeGreaterThan(wide);
    expect(bands[1]?.own).toMatchObject({ medianMm: calibratedTravel(CHERRY, [one]).medianMm });
  });

  test('is what many boards leave in doubt', () => {
    const job: BleedJob = { ...CHERRY, spreadBetween: 0.3 };
    const many = calibratedTravel(
      job,
      Array.from({ length: 40 }, (_, k) => otherBoard(k + 1, `board ${k}`, Math.exp(-0.5), 1, Math.exp(0.5))),
    );
    expect(Math.abs(many.spread / Math.sqrt(0.09 / 3 + many.spreadWithin ** 2) - 1)).toBeLessThan(0.05);
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
    expect(others.highMm).toBeGreaterThan(own.highMm);
    // many boards leave the doubt between boards: a third of 0.7² and the 0.5² of a slot, which they have taught
    const many = calibratedTravel(
      CHERRY,
      Array.from({ length: 60 }, (_, k) => otherBoard(k + 1, `board ${k}`, Math.exp(-0.5), 1, Math.exp(0.5))),
    );
    expect(many.spreadWithin).toBeCloseTo(0.5, 1);
    expect(Math.abs(many.spread / Math.sqrt(0.49 / 3 + 0.25) - 1)).toBeLessThan(0.05);
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

test('the order of coupons does not matter, and the median is as likely passed as not', () => {
  const mm = fc.double({ min: 0.1, max: 20, noNaN: true });
  const any = fc.record({
    board: fc.constantFrom(null, 'a', 'b'),
    lengths: fc.array(mm, { minLength: 1, maxLength: 3 }),
  });
  fc.assert(
    fc.property(fc.array(any, { minLength: 1, maxLength: 5 }), mm, (list, extra) => {
      const coupons = list.map(({ board, lengths }, k) => coupon(k + 1, streaks(...lengths), { board }));
      const travel = calibratedTravel(CHERRY, coupons);
      expect(calibratedTravel(CHERRY, coupons.toReversed()).medianMm).toBeCloseTo(travel.medianMm, 7);
      const more = calibratedTravel(CHERRY, [...coupons, coupon(9, streaks(extra))]);
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
