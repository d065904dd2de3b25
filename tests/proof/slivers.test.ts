import { type JobInput, settleJob } from '@pourproof/job';
import { packRings } from '@pourproof/plane';
import { judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../support/drawing-of.ts';

const BARE: JobInput = { bit: ['flat:1mm'], depth: '4mm', seal: 'none' };
const JOB: JobInput = { ...BARE, wood: 'walnut' };
const slivers = (drawing: ReturnType<typeof drawingOf>, job: JobInput = {}, base = JOB) =>
  judgeDrawing(drawing, 'test', settleJob({ ...base, ...job })).report.slivers;

describe('thin wood', () => {
  test('between two pockets has the gap as its thickness, their height as its length, and its angle to the fibres', () => {
    for (const turnDeg of [0, 20, 65]) {
      const rings = [rectangle(0, 0, 20, 30), rectangle(21.2, 0, 20, 30)];
      // turning the artwork clockwise and the fibres with it changes nothing
      const { narrowestMm, shortGrain } = slivers(drawingOf(rings, { turnDeg }), { grain: `${-turnDeg}deg` });
      expect(narrowestMm).toBeCloseTo(1.2, 4);
      expect(shortGrain).toHaveLength(1);
      expect(shortGrain[0]).toMatchObject({ heightMm: 4, isShortGrain: true, limitMm: 2 });
      expect(shortGrain[0]?.widthMm).toBeCloseTo(1.2, 4);
      expect(shortGrain[0]?.angleDeg).toBeCloseTo(90, 1);
      // the 1 mm bit rounds the pockets' corners: beyond 29 mm the rib opens to 2 mm between two arcs, but for flattening
      const ends = 2 * Math.sqrt((1 + 0.5) ** 2 - (0.6 + 0.5) ** 2);
      expect(Math.abs((shortGrain[0]?.lengthMm ?? 0) - 29 - ends)).toBeLessThan(0.01);
    }
  });

  test('in a counter is measured as well', () => {
    // a ring of pocket round a bar of wood 1.3 mm thick, fibres across it
    const pocket = drawingOf([rectangle(0, 0, 30, 30)]);
    const rings = packRings([rectangle(0, 0, 30, 30), rectangle(14, 5, 1.3, 20)]);
    const ring = {
      ...pocket,
      shapes: pocket.shapes.map((shape) => ({
        ...shape,
        region: { ...rings, fillRule: 'evenodd' as const },
      })),
    };
    const { shortGrain } = slivers(ring);
    expect(shortGrain[0]?.widthMm).toBeCloseTo(1.3, 3);
  });

  test('is looked up in the fibres of the block that it stands in', () => {
    const rings = [rectangle(0, 0, 20, 30), rectangle(21.2, 0, 20, 30)];
    const along = { board: 'plain 300x200x20mm walnut', turn: '90deg' };
    // the rib lies along the fibres after a quarter turn: a third of 4 mm is asked for
    expect(slivers(drawingOf(rings), along, BARE).shortGrain[0]).toMatchObject({
      isShortGrain: false,
      limitMm: expect.closeTo(4 / 3, 9),
    });
  });
});
