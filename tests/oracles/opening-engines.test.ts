import { readFileSync } from 'node:fs';
import { readLettering } from '@pourproof/artwork';
import { medialAxis, openedArea, openedOutline, polygonFromArcs, resolveRegions } from '@pourproof/geometry';
import { type CleanRegion, perimeter, type Rings, ringCoords, signedArea } from '@pourproof/plane';
import ClipperLib from 'clipper-lib';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import GeoJSONReader from 'jsts/org/locationtech/jts/io/GeoJSONReader.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import polygonClipping from 'polygon-clipping';
import { describe, expect, test } from 'vitest';

/** Whole numbers in one mm for the integer engine: 10 nm steps. */
const STEPS = 1e5;
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

function openedByIntegerOffsets(region: Rings, radius: number): number {
  const paths = rings(region).map((ring) => {
    const path: { X: number; Y: number }[] = [];
    for (let i = 0; i < ring.length; i += 2) {
      path.push({ X: Math.round(ring[i]! * STEPS), Y: Math.round(ring[i + 1]! * STEPS) });
    }
    return path;
  });
  const offset = (from: typeof paths, by: number): typeof paths => {
    const engine = new ClipperLib.ClipperOffset(2, ARC_MM * STEPS);
    engine.AddPaths(from, ClipperLib.JoinType.jtRound, ClipperLib.EndType.etClosedPolygon);
    const out: typeof paths = [];
    engine.Execute(out, by * STEPS);
    return out;
  };
  const opened = offset(offset(paths, -radius), radius);
  return opened.reduce((sum, path) => sum + ClipperLib.Clipper.Area(path), 0) / STEPS ** 2;
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
      expect(Math.abs(area - openedByIntegerOffsets(region, radius))).toBeLessThan(bound);
      expect(Math.abs(area - openedByBuffers(region, radius))).toBeLessThan(bound);
      const outline = polygonFromArcs(openedOutline(axis, radius), 1e-4);
      expect(Math.abs(area - signedArea(outline))).toBeLessThan(1e-4 * perimeter(region));
    },
  );
});
