import type { StrokeWidths } from '@pourproof/geometry';
import { parseBit } from '@pourproof/job';
import { describe, expect, test } from 'vitest';
import { cutShape } from '../cut/cut-shape.ts';
import { type LevellingPlan, levellingPlan } from './levelling-plan.ts';

/**
 * Strokes of 100 mm in all whose width grows evenly from 0.5 mm to 2.5 mm: 50 mm of length for each mm of
 * width.
 */
const WEDGE: StrokeWidths = {
  narrowestMm: 0.5,
  narrowestAt: [3, 4],
  lengthMm: 100,
  lengthNarrowerThan: (widthMm) => 50 * Math.min(2, Math.max(0, widthMm - 0.5)),
  histogram: () => new Float64Array(),
};
const plan = ({
  bit = 'flat:0.5mm',
  depthMm = 3.2,
  ...job
}: {
  bit?: string;
  depthMm?: number;
  levelMm?: number;
  filmMm?: number;
  shrinkagePct?: number;
  shallowByMm?: number;
} = {}): LevellingPlan =>
  levellingPlan(
    {
      shape: cutShape([parseBit(bit)], depthMm),
      levelMm: 0.5,
      filmMm: 0,
      shrinkagePct: 2,
      shallowByMm: 0,
      ...job,
    },
    WEDGE,
  );

describe('a flat cut of 3.2 mm', () => {
  test('keeps 2.636 mm of colour after 0.5 mm of sanding and 2 % of shrinkage (handbook arithmetic)', () => {
    expect(plan().leftMm).toBeCloseTo(2.636, 9);
    expect(plan().marginMm).toBeCloseTo(3.136, 9);
    expect(plan().lostBelowMm).toBe(0);
    expect(plan().firstLostAt).toEqual([3, 4]);
  });

  test.each([1.6, 3.2, 6.4])(
    'at %s mm deep loses exactly the strokes that its film fills up to the plan',
    (depthMm) => {
      // 0.3 mm of film in a stroke of width w pools to 0.3 (w + 2 D)/w; what the plan leaves is D − 0.02 D −
      // s
      const levelMm = 0.6 * depthMm;
      const { lostBelowMm } = plan({ depthMm, levelMm, filmMm: 0.3 });
      const pooled = (0.3 * (lostBelowMm + 2 * depthMm)) / lostBelowMm;
      expect(pooled).toBeCloseTo(0.98 * depthMm - levelMm, 9);
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
    const wide = plan({ filmMm: 0.4, bit: 'flat:0.9mm' });
    expect(wide.ghostLengthMm).toBeCloseTo(50 * ((2 * 0.4 * 3.2) / 2.8 - 0.9), 9);
    expect(plan({ filmMm: 0.4, bit: 'flat:3mm' })).toMatchObject({
      firstLostAt: null,
      marginMm: 0,
    });
  });

  test('loses everything when the plan takes more than there is', () => {
    const all = plan({ levelMm: 4 });
    expect(all.lostBelowMm).toBe(Number.POSITIVE_INFINITY);
    expect(all.leftMm).toBeLessThan(0);
  });
});

describe.each([30, 60, 90])('a V cut of %s°', (angleDeg) => {
  const half = (angleDeg * Math.PI) / 360;
  const vee = (job: Parameters<typeof plan>[0] = {}): LevellingPlan =>
    plan({ bit: `vee:${angleDeg}deg:25mm`, depthMm: 20, shrinkagePct: 0, ...job });

  test('keeps its depth less what is taken, and gets narrower by 2 s tan(A/2)', () => {
    const { marginMm, leftMm, leftWidthMm } = vee({ levelMm: 0.2 });
    expect(marginMm).toBeCloseTo(0.5 / (2 * Math.tan(half)), 9);
    expect(leftMm).toBeCloseTo(0.5 / (2 * Math.tan(half)) - 0.2, 9);
    expect(leftWidthMm).toBeCloseTo(0.5 - 0.4 * Math.tan(half), 9);
  });

  test('loses strokes narrower than 2 s tan(A/2)', () => {
    const { lostBelowMm } = vee({ levelMm: 1 });
    expect(lostBelowMm).toBeCloseTo(2 * Math.tan(half), 9);
  });

  test('has ghosts below 4 t / cos(A/2)', () => {
    expect(vee({ filmMm: 0.2 }).ghostBelowMm).toBeCloseTo(0.8 / Math.cos(half), 9);
    expect(vee({ filmMm: 0 }).ghostBelowMm).toBe(0);
  });

  test('loses to seal and levelling together what solves both closed forms', () => {
    const { lostBelowMm } = vee({ filmMm: 0.05, levelMm: 0.4 });
    const depth = lostBelowMm / (2 * Math.tan(half));
    const pooled = Math.sqrt((0.05 * lostBelowMm) / (Math.sin(half) * Math.tan(half)));
    expect(depth - pooled).toBeCloseTo(0.4, 9);
  });
});
