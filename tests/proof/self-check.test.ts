import { type JobInput, settleJob } from '@pourproof/job';
import { type CleanRegion, ringCoords } from '@pourproof/plane';
import { judgeDrawing } from '@pourproof/proof';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyPolygon, between } from '../arbitraries.ts';
import { drawingOf } from '../support/drawing-of.ts';
import { cases } from '../support/lane.ts';

const bits = fc.constantFrom<readonly string[]>(
  ['flat:0.5mm'],
  ['flat:3mm', 'flat:1mm'],
  ['ball:2mm'],
  ['vee:60deg:1/2in'],
  ['vee:60deg:1/2in:tip 0.2mm'],
  ['vee:90deg:1/4in', 'flat:1mm'],
  ['taper:0.5mm:5deg:1/4in'],
);

const jobs: fc.Arbitrary<JobInput> = fc.record({
  bit: bits,
  depth: fc.constantFrom('0.8mm', '3mm', '6mm'),
  wood: fc.constantFrom('maple', 'red-oak'),
  seal: fc.constantFrom('none', 'epoxy'),
  boards: fc.constantFrom(1, 12),
  resin: fc.constantFrom('coating', 'deep-pour'),
});

/** A region as drawn: rings of one colour after the other, so that colours overlap or touch. */
function painted(region: CleanRegion, colours: number) {
  const rings = Array.from(region.ringEnds, (_, k) => [...ringCoords(region, k)]);
  const drawing = drawingOf(rings, { fillRule: 'evenodd' });
  return {
    ...drawing,
    shapes: drawing.shapes.map((shape, k) => ({
      ...shape,
      colour: ['#000000', '#ff0000'][k % colours] ?? '',
    })),
  };
}

test('figures of any job balance', () => {
  fc.assert(
    fc.property(
      anyPolygon,
      jobs,
      fc.integer({ min: 1, max: 2 }),
      between(0.3, 4),
      (region, input, colours, scale) => {
        const scaled = { ...region, coords: region.coords.map((value) => value * scale) } as CleanRegion;
        const drawing = painted(scaled, colours);
        expect(() =>
          judgeDrawing(drawing, 'any', settleJob({ ...input, bit: [...(input.bit as string[])] })),
        ).not.toThrow();
      },
    ),
    cases(12),
  );
});
