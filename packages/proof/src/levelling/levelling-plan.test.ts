import type { StrokeWidths } from '@pourproof/geometry';
import { describe, expect, test } from 'vitest';
import { type LevellingJob, levellingPlan } from './levelling-plan.ts';

/** Strokes of 100 mm in all whose width grows evenly from 0.5 mm to 2.5 mm: 50 mm of length for each mm of width. */
const WEDGE: StrokeWidths = {
  narrowestMm: 0.5,
  narrowestAt: [3, 4],
  lengthMm: 100,
  lengthNarrowerThan: (widthMm) => 50 * Math.min(2, Math.max(0, widthMm - 0.5)),
  histogram: () => new Float64Array(),
};
const JOB: LevellingJob = {
  depthMm: 3.2,
  levelMm: 0.5,
  filmMm: 0,
  shrinkagePct: 2,
  shallowByMm: 0,
  bitMm: 0.5,
};
const plan = (job: Partial<LevellingJob> = {}) => levellingPlan({ ...JOB, ...job }, WEDGE);

describe('a flat cut of 3.2 mm', () => {
  test('keeps 2.636 mm of colour after 0.5 mm of sanding and 2 % of shrinkage (handbook arithmetic)', () => {
    expect(plan().leftMm).toBeCloseTo(2.636, 9);
    expect(plan().marginMm).toBeCloseTo(3.136, 9);
    expect(plan().lostLengthMm).toBe(0);
    expect(plan().firstLostAt).toEqual([3, 4]);
  });

  test.each([1.6, 3.2, 6.4])(
    'at %s mm deep loses exactly the strokes that its film fills up to the plan',
    (depthMm) => {
      // 0.3 mm of film in a stroke of width w pools to 0.3 (w + 2 D)/w; what the plan leaves is D − 0.02 D − s
      const levelMm = 0.6 * depthMm;
      const { lostBelowMm, lostLengthMm } = plan({ depthMm, levelMm, filmMm: 0.3 });
      const pooled = (0.3 * (lostBelowMm + 2 * depthMm)) / lostBelowMm;
      expect(pooled).toBeCloseTo(0.98 * depthMm - levelMm, 9);
      expect(lostLengthMm).toBeCloseTo(50 * (Math.min(2.5, lostBelowMm) - 0.5), 9);
    },
  );

  test('has ghosts below 2 t D / (D − t), whatever levelling takes', () => {
    const { ghostBelowMm, ghostLengthMm } = plan({ filmMm: 0.4 });
    expect(ghostBelowMm).toBeCloseTo((2 * 0.4 * 3.2) / (3.2 - 0.4), 9);
    expect(ghostLengthMm).toBeCloseTo(50 * (ghostBelowMm - 0.5), 9);
    expect(plan({ filmMm: 0.4, levelMm: 2 }).ghostLengthMm).toBe(ghostLengthMm);
  });

  test('loses depth where the board is low, millimetre by millimetre', () => {
    expect(plan().marginMm - plan({ shallowByMm: 0.4 }).marginMm).toBeCloseTo(0.4, 9);
  });

  test('does not count strokes that the bit does not enter', () => {
    const wide = plan({ filmMm: 0.4, bitMm: 0.9 });
    expect(wide.ghostLengthMm).toBeCloseTo(50 * ((2 * 0.4 * 3.2) / 2.8 - 0.9), 9);
    expect(plan({ filmMm: 0.4, bitMm: 3 })).toMatchObject({
      lostLengthMm: 0,
      firstLostAt: null,
      marginMm: 0,
    });
  });

  test('loses everything when the plan takes more than there is', () => {
    const all = plan({ levelMm: 4 });
    expect(all.lostBelowMm).toBe(Number.POSITIVE_INFINITY);
    expect(all.leftMm).toBeLessThan(0);
    expect(all.lostLengthMm).toBe(100);
  });
});
