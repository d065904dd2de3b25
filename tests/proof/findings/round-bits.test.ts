import { type JobFile, type JobInput, settleJob } from '@pourproof/job';
import { type FindingCode, judgeDrawing, type Report } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf } from '../../support/fix-of.ts';

const ROUND: JobFile = {
  schema: 'pourproof/job@1',
  bit: ['ball:3mm'],
  depth: '1.4mm',
  wood: 'walnut',
  seal: 'none',
  level: '0.3mm',
};
const reportOf = (rings: readonly number[][], job: JobInput = {}): Report =>
  judgeDrawing(drawingOf(rings), 'test', settleJob({ ...ROUND, ...job })).report;
const find = (rings: readonly number[][], code: FindingCode, job: JobInput = {}) =>
  reportOf(rings, job).findings.find((finding) => finding.code === code);
/** Width of a groove that a ball of 3 mm cuts in one pass. */
const chord = (depthMm: number): number => 2 * Math.sqrt(3 * depthMm - depthMm * depthMm);

describe('a ball of 3 mm, shallower than its radius', () => {
  test('leaves the chord 2 √(2 R z − z²) after levelling, and a floor more in a wider stroke', () => {
    const thin = reportOf([rectangle(0, 0, 40, chord(1.4) + 1e-6)]).levelling;
    expect(thin.leftWidthMm).toBeCloseTo(chord(1.1), 5);
    const wide = reportOf([rectangle(0, 0, 40, 5)]).levelling;
    expect(wide.leftWidthMm).toBeCloseTo(5 - chord(1.4) + chord(1.1), 9);
    // the face falls by the section's area over its width, 2 % of it
    const [r, z] = [1.5, 1.4];
    const area = r * r * Math.acos((r - z) / r) - ((r - z) * chord(z)) / 2 + (5 - chord(z)) * z;
    expect(wide.marginMm).toBeCloseTo(z - (0.02 * area) / 5, 9);
  });

  test('fills with clear seal below the width at which film and room are the same', () => {
    const sealed: JobInput = { seal: 'epoxy', coats: 4, sealHours: '24h', depth: '1.5mm' };
    const { filmMm } = reportOf([rectangle(0, 0, 40, 5)], sealed).seal;
    // half of the section: t (π R + w − 2 R) = (π R²/2 + (w − 2 R) R)/2
    const R = 1.5;
    const beside = (Math.PI * R * (R / 4 - filmMm)) / (filmMm - R / 2);
    expect(beside).toBeGreaterThan(0);
    const at = (width: number) => find([rectangle(0, 0, 40, width)], 'ghost-stroke', sealed);
    expect(at(2 * R + beside * 0.99)).toBeDefined();
    expect(at(2 * R + beside * 1.01)).toBeUndefined();
  });

  test('leaves wood between strokes thicker further down', () => {
    // 1.4 mm deep, across the fibres: 1.5 mm of thickness half way down are asked for
    const gap = (mm: number) =>
      find([rectangle(0, 0, 10, 40), rectangle(10 + mm, 0, 10, 40)], 'short-grain-will-break');
    const gain = chord(1.4) - chord(0.7);
    expect(gap(1.5 - gain - 0.01)).toBeDefined();
    expect(gap(1.5 - gain + 0.01)).toBeUndefined();
    expect(
      find([rectangle(0, 0, 10, 40), rectangle(11.4, 0, 10, 40)], 'short-grain-will-break', {
        bit: ['flat:3mm'],
      }),
    ).toBeDefined();
  });
});

describe('a tapered ball', () => {
  const taper: JobInput = { bit: ['taper:0.4mm:8deg:3mm'], depth: '2.1mm', level: '0.6mm' };
  const lost = 2 * 0.6 * Math.tan((8 * Math.PI) / 180);

  test('loses 2 s tan of its side, and sands-through tells where that is too much; each way out clears it', () => {
    const stroke = [rectangle(0, 0, 40, 0.95)];
    expect(reportOf(stroke, taper).levelling.leftWidthMm).toBeCloseTo(0.95 - lost, 9);
    const finding = find(stroke, 'sands-through', taper);
    expect(finding).toMatchObject({
      severity: 'caution',
      limit: { value: 0.8, quantity: 'width', unit: 'mm' },
    });
    expect(finding?.measured.value).toBeCloseTo(0.95 - lost, 9);
    expect(
      find([rectangle(0, 0, 40, 0.95 + (fixOf(finding, 'widen')?.byMm ?? 0))], 'sands-through', taper),
    ).toBeUndefined();
    expect(
      find(stroke, 'sands-through', {
        ...taper,
        level: `${0.6 - (fixOf(finding, 'level-less')?.byMm ?? 0)}mm`,
      }),
    ).toBeUndefined();
  });

  test('is told once where a stroke was too narrow before levelling', () => {
    const stroke = [rectangle(0, 0, 40, 0.79)];
    expect(find(stroke, 'sands-through', { ...taper, depth: '1.5mm', level: '0.2mm' })).toBeUndefined();
    expect(
      find(stroke, 'stroke-too-narrow-to-level', { ...taper, depth: '1.5mm', level: '0.2mm' }),
    ).toBeDefined();
  });
});

test('of several bits goes by the one that leaves most room: a flat one after a ball makes the walls upright', () => {
  const both = reportOf([rectangle(0, 0, 40, 4)], { bit: ['ball:3mm', 'flat:2mm'] }).levelling;
  expect(both.leftWidthMm).toBe(4);
  expect(both.marginMm).toBeCloseTo(1.4 * 0.98, 9);
});

describe('two colours of a ball', () => {
  const volumes = (rings: readonly number[][], bit: string): readonly number[] => {
    const drawing = drawingOf(rings);
    const shapes = drawing.shapes.map((shape, k) => ({ ...shape, colour: k === 0 ? '#102030' : '#a04020' }));
    const job = settleJob({
      ...ROUND,
      bit: [bit],
      depth: '1.5mm',
      overpour: '0mm',
      wastePct: 0,
      grain: '0deg',
    });
    const { pour } = judgeDrawing({ ...drawing, shapes }, 'two colours', job).report;
    return pour.colours.map(({ volumeMl }) => volumeMl);
  };

  test('get what their own strokes hold: a narrow one less than its share of the face', () => {
    // half circles of π R²/2 in 3 × 1.5 mm, and the same at both edges of 9 mm
    const [narrow = 0, wide = 1] = volumes(
      [rectangle(0, 0, 200, 3 + 1e-6), rectangle(0, 10, 200, 9)],
      'ball:3mm',
    );
    const [byArea = 0, threeTimes = 1] = volumes(
      [rectangle(0, 0, 200, 3 + 1e-6), rectangle(0, 10, 200, 9)],
      'flat:3mm',
    );
    expect(byArea / threeTimes).toBeCloseTo(1 / 3, 2);
    const half = (Math.PI * 1.5 * 1.5) / 2;
    expect(narrow / wide).toBeCloseTo(half / (half + 6 * 1.5), 2);
  });

  test('that touch share by the face: neither may have room for the bit alone', () => {
    const [left = 0, right = 0] = volumes([rectangle(0, 0, 50, 2), rectangle(0, 2, 50, 2)], 'ball:3mm');
    expect(left).toBeGreaterThan(0);
    expect(left / right).toBeCloseTo(1, 6);
  });
});
