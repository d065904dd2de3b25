import { type CleanRegion, packRings, signedArea } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { medialAxis } from '../medial-axis/medial-axis.ts';
import { areaOfAll, crossingEdges } from './axis-blocks.ts';
import { AxisEdge } from './axis-edge.ts';
import { AREA, areaBeyondStrip, cappedVolume, LENGTH, noCells, TURN, VOLUME } from './cell-sums.ts';
import { cellsAbove, cellsBelow } from './part-cells.ts';

/** A ring of even angles whose radius swings. */
function ring(corners: number, radius: number, swing: number, waves: number): [number, number][] {
  return Array.from({ length: corners }, (_, i) => {
    const turn = (2 * Math.PI * i) / corners;
    const r = radius + swing * Math.cos(waves * turn);
    return [r * Math.cos(turn), r * Math.sin(turn)];
  });
}

/** Two such rings, one a hole: lines, parabola arcs, pairs of points and bottlenecks. */
const swinging = packRings([
  ring(240, 20, 3, 7).flat(),
  ring(160, 9, 4, 5).toReversed().flat(),
]) as CleanRegion;
const axis = medialAxis(swinging);
const area = signedArea(swinging);

describe('sums of cells', () => {
  test.each([0, 0.3, 1, 1.7, 2.5, 4, 30])('above and below %f mm are those of all edges one by one', (mm) => {
    const crossing = crossingEdges(axis, mm);
    const edge = new AxisEdge(axis);
    const wanted: number[] = [];
    const want = { above: 0, beyond: 0, capped: 0 };
    const oneByOne = noCells();
    for (let e = 0; e < axis.edgeFrom.length; e++) {
      edge.load(e);
      if (edge.kind !== 'secondary' && edge.r0 < mm && edge.r1 >= mm) {
        wanted.push(e);
      }
      if (edge.r1 >= mm) {
        const low = Math.max(mm, edge.r0);
        want.above += edge.area(low, edge.r1, 0);
        want.beyond += edge.area(low, edge.r1, mm);
        // the layers of all heights up to the cap; in a strip's width they are quadratic, for which Simpson's
        // rule is exact
        const layer = (mmOff: number): number => edge.area(low, edge.r1, mmOff);
        want.capped += (mm * (layer(0) + 4 * layer(mm / 2) + layer(mm))) / 6;
      }
      if (edge.r0 < mm) {
        edge.addCells(edge.r0, Math.min(mm, edge.r1), oneByOne);
      }
    }
    const above = cellsAbove(axis, mm, crossing);
    const below = cellsBelow(axis, mm, crossing);
    expect(crossing).toEqual(wanted);
    // 3000 sums of terms of both signs: rounding makes 1e-14 of the artwork
    const close = (value: number, wish: number, whole: number): void =>
      expect(Math.abs(value - wish)).toBeLessThan(1e-12 * whole);
    close(above[AREA]!, want.above, area);
    close(areaBeyondStrip(above, mm), want.beyond, area);
    close(cappedVolume(above, mm), want.capped, area * Math.max(mm, 1));
    close(below[VOLUME]!, oneByOne[VOLUME]!, area);
    close(below[LENGTH]!, oneByOne[LENGTH]!, area);
    close(below[TURN]!, oneByOne[TURN]!, area);
    close(above[AREA]! + below[AREA]!, area, area);
  });

  test('all blocks together are the artwork', () => {
    expect(areaOfAll(axis.blocks) / area).toBeCloseTo(1, 13);
  });
});
