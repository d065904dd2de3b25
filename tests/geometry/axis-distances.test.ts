import { readFileSync } from 'node:fs';
import Flatten from '@flatten-js/core';
import { resolveRegions } from '@pourproof/arrangement';
import { readLettering } from '@pourproof/artwork';
import { medialAxis } from '@pourproof/geometry';
import { type Rings, ringCoords } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';

/** Every so many nodes of the axis are checked: each against every edge of the artwork. */
const STRIDE = 23;

function edgesOf(region: Rings): Flatten.Segment[] {
  return Array.from(region.ringEnds, (_, k) => ringCoords(region, k)).flatMap((ring) =>
    Array.from({ length: ring.length / 2 }, (_, i) => {
      const j = (2 * i + 2) % ring.length;
      return new Flatten.Segment(
        new Flatten.Point(ring[2 * i]!, ring[2 * i + 1]!),
        new Flatten.Point(ring[j]!, ring[j + 1]!),
      );
    }),
  );
}

describe.each(['lora-400', 'bodoni-moda-400', 'dancing-script-400'])(
  'medial axis of lettering in %s',
  (face) => {
    test('its clearances are the distances to the nearest edge that another library measures', async () => {
      const font = readFileSync(`fixtures/fonts/${face}.ttf`);
      const drawing = await readLettering('Rg&8', { font, capHeightMm: 15, toleranceMm: 0.02 });
      const { region } = resolveRegions(drawing.shapes.map((shape) => shape.region));
      const edges = edgesOf(region);
      const { boundary, nodeX, nodeY, nodeR } = medialAxis(region);
      let checked = 0;
      for (let node = 0; node < nodeR.length; node += STRIDE) {
        const at = new Flatten.Point(nodeX[node]! + boundary.originX, nodeY[node]! + boundary.originY);
        const nearest = edges.reduce(
          (least, edge) => Math.min(least, at.distanceTo(edge)[0]),
          Number.POSITIVE_INFINITY,
        );
        expect(Math.abs(nearest - nodeR[node]!), `node ${node}`).toBeLessThan(1e-8);
        checked++;
      }
      expect(checked).toBeGreaterThan(50);
    });
  },
);
