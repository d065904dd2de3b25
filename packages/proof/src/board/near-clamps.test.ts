import { resolveRegions } from '@pourproof/arrangement';
import { radiusAt } from '@pourproof/cutting';
import { type HeldDown, parseBit, settleJob } from '@pourproof/job';
import { packRings, translation } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { cutterOf } from '../cut/cutter-of.ts';
import { measureCut } from '../cut/measure-cut.ts';
import { nearClamps } from './near-clamps.ts';

const BOARD = { blocks: [], toBoard: translation(0, 0), toArtwork: translation(0, 0) };
const roomOf = (ring: readonly number[], bit: string, clamp: HeldDown): number => {
  const artwork = resolveRegions([{ ...packRings([ring]), fillRule: 'nonzero' }]).region;
  const job = settleJob({ bit: [bit], depth: '3mm' });
  return nearClamps(measureCut(artwork, job, job.toleranceMm), job, [clamp], BOARD)[0]?.roomMm ?? Number.NaN;
};
/** 30 by 10 mm with its corner at the origin. */
const BAR = [0, 0, 30, 0, 30, 10, 0, 10];

test('a flat bit is as wide as its cut: the room is that beside the cut', () => {
  const at = (x: number): HeldDown => ({ kind: 'clamp', atMm: [x, 5], sizeMm: [20, 40] });
  expect(roomOf(BAR, 'flat:4mm', at(45))).toBeCloseTo(5, 6);
  // 8 mm of a clamp over the cut; one right over its middle, 10 mm within its sides
  expect(roomOf(BAR, 'flat:4mm', at(32))).toBeCloseTo(-8, 6);
  expect(roomOf(BAR, 'flat:4mm', at(15))).toBeCloseTo(-10, 6);
});

test('a small hold-down within a pocket is run over whole', () => {
  expect(roomOf(BAR, 'flat:4mm', { kind: 'hold-down', atMm: [15, 5], diameterMm: 3 })).toBeCloseTo(-1.5, 6);
});

test('a V stands beside its groove by half of its diameter less what the groove is wide there', () => {
  // 60°: 3 mm deep is 3 tan 30° on each side; the axis runs into each corner
  const side: HeldDown = { kind: 'hold-down', atMm: [15, 20], diameterMm: 4 };
  expect(roomOf(BAR, 'vee:60deg:12mm', side)).toBeCloseTo(8 - 6 + Math.sqrt(3), 6);
  const beyondCorner: HeldDown = { kind: 'hold-down', atMm: [40, 20], diameterMm: 4 };
  expect(roomOf(BAR, 'vee:60deg:12mm', beyondCorner)).toBeCloseTo(Math.hypot(10, 10) - 2 - 6, 6);
});

test('definition: no place that the axis of a clearing bit comes to is nearer', () => {
  const some = fc.record({
    bit: fc.constantFrom('flat:4mm', 'ball:8mm', 'taper:1mm:5deg:6mm'),
    x: fc.integer({ min: -20, max: 50 }),
    y: fc.integer({ min: -20, max: 30 }),
    width: fc.integer({ min: 2, max: 20 }),
    height: fc.integer({ min: 2, max: 20 }),
  });
  fc.assert(
    fc.property(some, ({ bit, x, y, width, height }) => {
      const cutter = cutterOf(parseBit(bit));
      const inset = radiusAt(cutter, 3);
      const full = radiusAt(cutter, 100);
      let least = Number.POSITIVE_INFINITY;
      // the axis stays off the edge by the radius of the cut
      for (let u = 0; u <= 60; u++) {
        for (let v = 0; v <= 20; v++) {
          const at = [inset + ((30 - 2 * inset) * u) / 60, inset + ((10 - 2 * inset) * v) / 20] as const;
          const [dx, dy] = [Math.abs(at[0] - x) - width / 2, Math.abs(at[1] - y) - height / 2];
          const outside = Math.hypot(Math.max(dx, 0), Math.max(dy, 0));
          least = Math.min(least, (outside > 0 ? outside : Math.max(dx, dy)) - full);
        }
      }
      const room = roomOf(BAR, bit, { kind: 'clamp', atMm: [x, y], sizeMm: [width, height] });
      // the corners of the cut are flattened, and half a step of the grid is 0.3 mm
      if (least > 0) {
        expect(room).toBeLessThanOrEqual(least + 0.02);
        expect(room).toBeGreaterThan(least - 0.5);
      } else {
        // how deep it goes in is that of the cut; that it does is exact
        expect(room).toBeLessThan(1e-3);
      }
    }),
    cases(100),
  );
});
