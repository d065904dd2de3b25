import { type JobInput, settleJob } from '@pourproof/job';
import { type Finding, judgeDrawing } from '@pourproof/proof';
import { expect, test } from 'vitest';
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
/** A rectangle's ring the other way round: a hole in what lies around it. */
const hole = (x: number, y: number, width: number, height: number): number[] => [
  x,
  y,
  x,
  y + height,
  x + width,
  y + height,
  x + width,
  y,
];
/** A tray of 30 mm with an island in its middle, beside whatever else is given. */
const tray = (widthMm: number, heightMm = widthMm): readonly (readonly number[])[] => [
  rectangle(-15, -15, 30, 30),
  hole(-widthMm / 2, -heightMm / 2, widthMm, heightMm),
];
const find = (rings: readonly (readonly number[])[], job: JobInput = {}, turnDeg = 0): Finding | undefined =>
  judgeDrawing(trayDrawing(rings, turnDeg), 'test', settleJob({ ...CALM, ...job })).report.findings.find(
    ({ code }) => code === 'island-too-small',
  );

/** All rings as one shape, so that holes are holes. */
function trayDrawing(rings: readonly (readonly number[])[], turnDeg: number): ReturnType<typeof drawingOf> {
  const parts = drawingOf(rings, { turnDeg });
  const coords = parts.shapes.flatMap(({ region }) => [...region.coords]);
  let end = 0;
  const ringEnds = parts.shapes.map(({ region }) => (end += region.coords.length / 2));
  const [first] = parts.shapes;
  if (first === undefined) {
    throw new Error('there is a ring');
  }
  return {
    ...parts,
    shapes: [
      {
        ...first,
        region: {
          coords: Float64Array.from(coords),
          ringEnds: Uint32Array.from(ringEnds),
          fillRule: 'nonzero',
        },
      },
    ],
  };
}

test.each([0, 30, 45])('an island of a millimetre is told at its place, turned by %s°', (turnDeg) => {
  const finding = find(tray(1), {}, turnDeg);
  expect(finding?.severity).toBe('caution');
  expect(finding?.measured.value).toBeCloseTo(1, 6);
  // π w²/4 = 2 · 3 mm² at w = √(24/π)
  expect(finding?.limit.value).toBeCloseTo(Math.sqrt(24 / Math.PI), 9);
  expect(finding?.where).toHaveLength(1);
  expect(Math.hypot(...(finding?.where[0]?.atMm ?? [9, 9]))).toBeLessThan(0.001);
});

test('it is silent from the limit on, which is 3 mm where the cut is deep', () => {
  expect(find(tray(2.75))).toBeDefined();
  expect(find(tray(2.77))).toBeUndefined();
  const deep: JobInput = { depth: '8mm', resin: 'deep-pour' };
  expect(find(tray(2.99), deep)?.limit.value).toBe(3);
  expect(find(tray(3), deep)).toBeUndefined();
});

test('cutting shallower clears it, and is not offered where more than half would have to go', () => {
  const toMm = fixOf(find(tray(2.5)), 'cut-shallower')?.toMm ?? 0;
  expect(toMm).toBe(Math.floor(((Math.PI / 4) * 2.5 ** 2 * 100) / 2) / 100);
  expect(find(tray(2.5), { depth: `${toMm}mm` })).toBeUndefined();
  expect(fixOf(find(tray(1)), 'cut-shallower')).toBeUndefined();
});

test('company never helps: bars and walls elsewhere leave it told', () => {
  const finding = find([...tray(1), rectangle(40, -15, 60, 6), rectangle(40, 5, 60, 6)]);
  expect(finding?.where).toHaveLength(1);
  expect(Math.hypot(...(finding?.where[0]?.atMm ?? [9, 9]))).toBeLessThan(0.001);
});
