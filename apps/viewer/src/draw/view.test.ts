import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fittingView, toPx, viewBetween, zoomedView } from './view.ts';

/** Coordinates reach 10⁶ px, so rounding takes some 10⁻⁹ px. */
const ROUNDING_PX = 1e-6;

const size = fc.record({
  widthPx: fc.integer({ min: 100, max: 3000 }),
  heightPx: fc.integer({ min: 100, max: 3000 }),
});
const mm = fc.double({ min: -1000, max: 1000, noNaN: true });
const view = fc.record({
  atMm: fc.tuple(mm, mm),
  pxPerMm: fc.double({ min: 0.1, max: 500, noNaN: true }),
});

test('a fitting view shows all four corners of a box', () => {
  const side = fc.double({ min: 0.01, max: 2000, noNaN: true });
  fc.assert(
    fc.property(size, mm, mm, side, side, (sheet, x, y, width, height) => {
      const fit = fittingView([x, y, x + width, y + height], sheet);
      for (const corner of [
        [x, y],
        [x + width, y + height],
      ] as const) {
        const [px, py] = toPx(corner, fit, sheet);
        expect(Math.min(px, py)).toBeGreaterThanOrEqual(-ROUNDING_PX);
        expect(px).toBeLessThanOrEqual(sheet.widthPx + ROUNDING_PX);
        expect(py).toBeLessThanOrEqual(sheet.heightPx + ROUNDING_PX);
      }
    }),
  );
});

test('zooming keeps the point under the pointer where it is', () => {
  fc.assert(
    fc.property(
      size,
      view,
      mm,
      mm,
      fc.double({ min: 0.2, max: 5, noNaN: true }),
      (sheet, from, x, y, factor) => {
        const before = toPx([x, y], from, sheet);
        const after = toPx([x, y], zoomedView(from, factor, before, sheet), sheet);
        expect(Math.hypot(after[0] - before[0], after[1] - before[1])).toBeLessThan(ROUNDING_PX);
      },
    ),
  );
});

test('an empty box and a single point have a view of finite scale', () => {
  expect(fittingView([0, 0, 0, 0], { widthPx: 300, heightPx: 200 })).toEqual({ atMm: [0, 0], pxPerMm: 4 });
});

test('between two views the scale grows by equal factors', () => {
  const from = { atMm: [0, 0], pxPerMm: 1 } as const;
  const to = { atMm: [10, 20], pxPerMm: 16 } as const;
  expect(viewBetween(from, to, 0.5)).toEqual({ atMm: [5, 10], pxPerMm: 4 });
});
