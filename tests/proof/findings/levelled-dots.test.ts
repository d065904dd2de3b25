import { type JobInput, settleJob } from '@pourproof/job';
import { applyFix, type Finding, judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf } from '../../support/fix-of.ts';

const CALM: JobInput = {
  bit: ['flat:2mm'],
  depth: '3mm',
  wood: 'walnut',
  seal: 'epoxy',
  sealHours: '24h',
  boards: 10,
};
const disc = (x: number, y: number, diameter: number): number[] =>
  Array.from({ length: 128 }, (_, k) => (2 * Math.PI * k) / 128).flatMap((angle) => [
    x + (diameter / 2) * Math.cos(angle),
    y + (diameter / 2) * Math.sin(angle),
  ]);
const sanded = (
  rings: readonly (readonly number[])[],
  job: JobInput,
  turnDeg = 0,
): { readonly finding: Finding | undefined; readonly marginMm: number | null } => {
  const { report } = judgeDrawing(drawingOf(rings, { turnDeg }), 'test', settleJob({ ...CALM, ...job }));
  return {
    finding: report.findings.find(({ code }) => code === 'sands-through'),
    marginMm: report.levelling.marginMm,
  };
};

describe.each([0, 30, 45])('turned by %s°', (turnDeg) => {
  test('a square of 40 mm is gone when more is taken off than it is deep', () => {
    const { finding, marginMm } = sanded([rectangle(-20, -20, 40, 40)], { level: '5mm' }, turnDeg);
    expect(finding?.severity).toBe('stop');
    expect(finding?.where).toHaveLength(1);
    expect(Math.hypot(...(finding?.where[0]?.atMm ?? [9, 9]))).toBeLessThan(0.01);
    // 3 mm less 2 % of shrinkage less 0.1 mm of film (1 + 2 · 3/20) on the floor of a round pocket
    expect(marginMm).toBeCloseTo(3 - 0.06 - 0.1 * (1 + (2 * 3) / 20), 3);
  });
});

test('a stop, a caution and silence, and taking less off clears it', () => {
  const square = [rectangle(0, 0, 40, 40)];
  expect(sanded(square, { level: '2.7mm' }).finding?.severity).toBe('stop');
  const { finding } = sanded(square, { level: '2mm' });
  expect(finding?.severity).toBe('caution');
  expect(sanded(square, { level: '1.5mm' }).finding).toBeUndefined();
  const fix = fixOf(finding, 'level-less');
  const changed = fix === undefined ? null : applyFix({ ...CALM, level: '2mm' }, fix);
  expect(changed).not.toBeNull();
  expect(sanded(square, changed ?? {}).finding).toBeUndefined();
});

test('dots that a V cuts are cones: the smallest goes first, at its own place, whatever stands beside it', () => {
  const bit = ['vee:60deg:1/2in'];
  const dots = [disc(0, 0, 3), disc(20, 0, 2)];
  const alone = sanded(dots, { bit, level: '2mm', seal: 'none' });
  expect(alone.finding?.severity).toBe('stop');
  expect(alone.finding?.where).toHaveLength(1);
  expect(alone.finding?.where[0]?.atMm[0]).toBeCloseTo(20, 2);
  // √3 mm deep, a third of 2 % of it lost
  expect(alone.marginMm).toBeCloseTo(Math.sqrt(3) * (1 - 0.02 / 3), 2);
  const inCompany = sanded([...dots, rectangle(0, 30, 80, 6)], { bit, level: '2mm', seal: 'none' });
  expect(inCompany.finding?.severity).toBe('stop');
  expect(inCompany.finding?.where.map(({ atMm }) => atMm)).toEqual(
    alone.finding?.where.map(({ atMm }) => atMm),
  );
});

test('a dot that no bit enters is not cut, so levelling says nothing of it', () => {
  expect(sanded([disc(0, 0, 1.5)], { level: '5mm' }).finding).toBeUndefined();
});
