import { readFileSync } from 'node:fs';
import { resolveRegions } from '@pourproof/arrangement';
import { readLettering } from '@pourproof/artwork';
import { reachedOutline } from '@pourproof/cutting';
import { medialAxis, openedArea, polygonFromArcs } from '@pourproof/geometry';
import { type CleanRegion, perimeter, type Rings, ringCoords, signedArea } from '@pourproof/plane';
import ClipperLib from 'clipper-lib';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import GeoJSONReader from 'jsts/org/locationtech/jts/io/GeoJSONReader.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import polygonClipping from 'polygon-clipping';
import { describe, expect, test } from 'vitest';

/** Whole numbers for one arc tolerance of the integer engine: its rounding stays far below its arcs. */
const STEPS_PER_ARC = 50;
/** Arcs of the other engines deviate no more than this, mm. */
const ARC_MM = 5e-4;
/** jsts' arcs: 64 chords a quarter deviate r(1 − cos(π/256)), below 1.3e-4 mm for the radii here. */
const QUADRANT_SEGMENTS = 64;

const FACES = ['lora-400', 'bodoni-moda-400', 'dancing-script-400', 'josefin-sans-100', 'arvo-400'] as const;
const RADII = [0.4, 0.8, 1.6] as const;

async function lettered(face: string): Promise<CleanRegion> {
  const font = readFileSync(`fixtures/fonts/${face}.ttf`);
  const drawing = await readLettering('Rag 8 est', { font, capHeightMm: 15, toleranceMm: 0.01 });
  return resolveRegions(drawing.shapes.map((shape) => shape.region)).region;
}

const rings = (region: Rings): Float64Array[] => Array.from(region.ringEnds, (_, k) => ringCoords(region, k));

function openedByIntegerOffsets(region: Rings, radius: number, arcMm: number): number {
  const steps = STEPS_PER_ARC / arcMm;
  const paths = rings(region).map((ring) => {
    const path: { X: number; Y: number }[] = [];
    for (let i = 0; i < ring.length; i += 2) {
      path.push({ X: Math.round(ring[i]! * steps), Y: Math.round(ring[i + 1]! * steps) });
    }
    return path;
  });
  const offset = (from: typeof paths, by: number): typeof paths => {
    const engine = new ClipperLib.ClipperOffset(2, arcMm * steps);
    engine.AddPaths(from, ClipperLib.JoinType.jtRound, ClipperLib.EndType.etClosedPolygon);
    const out: typeof paths = [];
    engine.Execute(out, by * steps);
    return out;
  };
  const opened = offset(offset(paths, -radius), radius);
  return opened.reduce((sum, path) => sum + ClipperLib.Clipper.Area(path), 0) / steps ** 2;
}

type Position = [number, number];

/** The region as GeoJSON polygons: each outer ring with the holes that lie in it, by the union of an independent engine. */
function multiPolygon(region: Rings): Position[][][] {
  const closed = rings(region).map((ring) => {
    const points: Position[] = [];
    for (let i = 0; i < ring.length; i += 2) {
      points.push([ring[i]!, ring[i + 1]!]);
    }
    return [...points, points[0]!];
  });
  return polygonClipping.xor(
    [closed[0]!],
    ...closed.slice(1).map((ring) => [ring] as Position[][]),
  ) as Position[][][];
}

function openedByBuffers(region: Rings, radius: number): number {
  const geometry = new GeoJSONReader(new GeometryFactory()).read({
    type: 'MultiPolygon',
    coordinates: multiPolygon(region),
  });
  return BufferOp.bufferOp(
    BufferOp.bufferOp(geometry, -radius, QUADRANT_SEGMENTS),
    radius,
    QUADRANT_SEGMENTS,
  ).getArea();
}

describe.each(FACES)('lettering in %s opened by a disc', (face) => {
  test.each(RADII)(
    'of radius %d mm agrees with two offset engines and with its own outline',
    async (radius) => {
      const region = await lettered(face);
      const axis = medialAxis(region);
      const area = openedArea(axis, radius);
      // an opened outline is no longer than the artwork's; the other engines' arcs move it by their tolerance, twice
      const bound = 2 * ARC_MM * perimeter(region);
      expect(Math.abs(area - openedByIntegerOffsets(region, radius, ARC_MM))).toBeLessThan(bound);
      expect(Math.abs(area - openedByBuffers(region, radius))).toBeLessThan(bound);
      const outline = polygonFromArcs(reachedOutline(axis, radius, radius), 1e-4);
      expect(Math.abs(area - signedArea(outline))).toBeLessThan(1e-4 * perimeter(region));
    },
  );
});

test('the integer engine closes in on our area as its arcs get finer', async () => {
  const region = await lettered('lora-400');
  const area = openedArea(medialAxis(region), 0.8);
  for (const arcMm of [5e-4, 5e-5, 5e-6]) {
    const apart = area - openedByIntegerOffsets(region, 0.8, arcMm);
    // its arcs are chords, so it loses area, a part of arc tolerance × length; ours is the limit
    expect(apart).toBeGreaterThan(0);
    expect(apart).toBeLessThan(0.2 * arcMm * perimeter(region));
  }
});
