import type { StrokeWidths } from '@pourproof/geometry';
import { parseBit } from '@pourproof/job';
import { describe, expect, test } from 'vitest';
import { cutShape } from '../cut/cut-shape.ts';
import { levellingMap } from './levelling-map.ts';
import { type LevellingPlan, levellingPlan } from './levelling-plan.ts';

/**
 * Strokes of 100 mm in all whose width grows evenly from 0.5 mm to 2.5 mm: 50 mm of length for each mm of
 * width.
 */
const WEDGE: StrokeWidths = {
  narrowestMm: 0.5,
  narrowestAt: [3, 4],
  tapers: null,
  lengthMm: 100,
  lengthNarrowerThan: (widthMm) => 50 * Math.min(2, Math.max(0, widthMm - 0.5)),
  histogram: () => new Float64Array(),
};
/** The same strokes as a line whose middle is that long. */
const LINE = {
  kind: 'stroke',
  part: 0,
  path: Float64Array.of(3, 4, 103, 4),
  widths: Float64Array.of(0.5, 2.5),
} as const;

const plan = ({
  bit = 'flat:0.5mm',
  depthMm = 3.2,
  levelMm = 0.5,
  filmMm = 0,
  shrinkagePct = 2,
  shallowByMm = 0,
}: {
  bit?: string;
  depthMm?: number;
  levelMm?: number;
  filmMm?: number;
  shrinkagePct?: number;
  shallowByMm?: number;
} = {}): LevellingPlan => {
  const shape = cutShape([parseBit(bit)], depthMm);
  const map = levellingMap([LINE], [{ part: 0, atMm: [103, 4], widthMm: 2.5, strokeMm: 2.5 }], {
    planMm: levelMm,
    sectionAt: shape.sectionAt,
    shop: { filmMm, shrinkagePct },
    shallowAt: () => shallowByMm,
    keeps: { narrowestMm: 0, faintWidthMm: 0 },
    needsAt: () => ({ shallowestMm: 0, faintMm: 0 }),
  });
  return levellingPlan(map, { shape, filmMm }, WEDGE);
};

describe('a flat cut of 3.2 mm', () => {
  test('keeps 2.636 mm of colour after 0.5 mm of sanding and 2 % of shrinkage (handbook arithmetic)', () => {
    expect(plan().leftMm).toBeCloseTo(2.636, 9);
    expect(plan().marginMm).toBeCloseTo(3.136, 9);
    expect(plan().firstLostAt).toEqual([3, 4]);
  });

  test('has ghosts below 2 t D / (D − t), whatever levelling takes', () => {
    const { ghostBelowMm, ghostLengthMm } = plan({ filmMm: 0.4 });
    expect(ghostBelowMm).toBeCloseTo((2 * 0.4 * 3.2) / (3.2 - 0.4), 9);
    expect(ghostLengthMm).toBeCloseTo(50 * (ghostBelowMm - 0.5), 9);
    expect(plan({ filmMm: 0.4, levelMm: 2 }).ghostLengthMm).toBe(ghostLengthMm);
  });

  test('loses depth where the board is low, millimetre by millimetre', () => {
    expect(plan({ shallowByMm: 0.4 }).marginMm).toBeCloseTo((plan().marginMm ?? 0) - 0.4, 9);
  });

  test('does not count strokes that the bit does not enter', () => {
    const wide = plan({ filmMm: 0.4, bit: 'flat:0.9mm' });
    expect(wide.ghostLengthMm).toBeCloseTo(50 * ((2 * 0.4 * 3.2) / 2.8 - 0.9), 9);
    expect(plan({ filmMm: 0.4, bit: 'flat:3mm' })).toMatchObject({
      firstLostAt: null,
      marginMm: null,
      leftMm: null,
    });
  });

  test('loses everything when the plan takes more than there is', () => {
    expect(plan({ levelMm: 4 }).leftMm).toBeLessThan(0);
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

  test('has ghosts below 4 t / cos(A/2)', () => {
    expect(vee({ filmMm: 0.2 }).ghostBelowMm).toBeCloseTo(0.8 / Math.cos(half), 9);
    expect(vee({ filmMm: 0 }).ghostBelowMm).toBe(0);
  });
});
