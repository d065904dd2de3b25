import { readDxf } from '@pourproof/artwork';
import dxfParser from 'dxf-parser';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawingArea } from '../../support/dxf/drawing-area.ts';
import { dxfText, MM } from '../../support/dxf/dxf-text.ts';
import { cases } from '../../support/lane.ts';

/** The parser's class: its types describe the module, Node hands over the class itself. */
const DxfParser = dxfParser as unknown as new () => {
  parseSync(text: string): { entities: { color: number }[] };
};

interface ParsedVertex {
  x: number;
  y: number;
  bulge?: number;
}

test('colours of the index are those of an independent table', () => {
  const entities = Array.from({ length: 255 }, (_, i) => [
    0,
    'CIRCLE',
    8,
    'A',
    62,
    i + 1,
    10,
    3 * i,
    20,
    0,
    40,
    1,
  ]);
  const text = dxfText(entities.flat(), { header: MM });
  const theirs = new DxfParser()
    .parseSync(text)
    .entities.map((e) => `#${e.color.toString(16).padStart(6, '0')}`);
  const ours = new Map(
    readDxf(text).shapes.flatMap(({ region, colour }) =>
      [...region.ringEnds].map((end): [number, string] => [
        Math.round((region.coords[2 * end - 2] - 1) / 3),
        colour,
      ]),
    ),
  );
  const channels = (hex: string): number[] => [1, 3, 5].map((k) => Number.parseInt(hex.slice(k, k + 2), 16));
  for (let i = 0; i < 255; i++) {
    // 7 is drawn white there and black here, as on paper
    if (i + 1 !== 7) {
      const theirChannels = channels(theirs[i]!);
      const apart = channels(ours.get(i)!).map((c, k) => Math.abs(c - theirChannels[k]));
      // tables round brightness up or down, by one step of 255
      expect(Math.max(...apart), `${i + 1}: ${ours.get(i)}, theirs ${theirs[i]}`).toBeLessThanOrEqual(1);
    }
  }
});

test('polylines with bulges cover what an independent parser and the segment formula say', () => {
  const corner = fc.record({
    r: fc.double({ min: 20, max: 40, noNaN: true }),
    bulge: fc.double({ min: -0.15, max: 0.6, noNaN: true }).map((b) => (Math.abs(b) < 1e-6 ? 0 : b)),
  });
  fc.assert(
    fc.property(fc.array(corner, { minLength: 5, maxLength: 9 }), (corners) => {
      const vertices = corners.flatMap(({ r, bulge }, k) => {
        const a = (2 * Math.PI * k) / corners.length;
        return [10, r * Math.cos(a), 20, r * Math.sin(a), 42, bulge];
      });
      const text = dxfText([0, 'LWPOLYLINE', 8, 'A', 90, corners.length, 70, 1, ...vertices], { header: MM });
      const parsed = new DxfParser().parseSync(text).entities[0] as unknown as { vertices: ParsedVertex[] };
      // outlines of arcs can cross near sharp corners; the signed area by Green's theorem then still holds for the ring itself
      const ring = readDxf(text).shapes[0].region.coords;
      expect(Math.abs(shoelace(ring)) / Math.abs(greenArea(parsed.vertices))).toBeCloseTo(1, 9);
    }),
    cases(100),
  );
});

function greenArea(vertices: readonly ParsedVertex[]): number {
  return vertices.reduce((sum, v, k) => {
    const w = vertices[(k + 1) % vertices.length];
    const chord = Math.hypot(w.x - v.x, w.y - v.y);
    const b = v.bulge ?? 0;
    const angle = 4 * Math.atan(b);
    const radius = b === 0 ? 0 : (chord * (1 + b * b)) / (4 * b);
    return sum + (v.x * w.y - w.x * v.y) / 2 + (radius * radius * (angle - Math.sin(angle))) / 2;
  }, 0);
}

function shoelace(coords: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < coords.length; i += 2) {
    const j = (i + 2) % coords.length;
    sum += coords[i] * coords[j + 1] - coords[j] * coords[i + 1];
  }
  return sum / 2;
}

test('a drawing that both read gives the same areas per entity', () => {
  const text = dxfText(
    [
      ...[0, 'CIRCLE', 8, 'A', 10, 0, 20, 0, 40, 4],
      ...[0, 'ELLIPSE', 8, 'B', 10, 50, 20, 0, 11, 6, 21, 2, 40, 0.5, 41, 0, 42, 2 * Math.PI],
      ...[0, 'SOLID', 8, 'C', 10, 100, 20, 0, 11, 110, 21, 0, 12, 100, 22, 5, 13, 110, 23, 5],
    ],
    { header: MM },
  );
  const [circle, ellipse, solid] = new DxfParser().parseSync(text).entities as unknown as [
    { radius: number },
    { majorAxisEndPoint: { x: number; y: number }; axisRatio: number },
    { points: { x: number; y: number }[] },
  ];
  const [p, q, r] = solid.points;
  const total =
    Math.PI * circle.radius ** 2 +
    Math.PI * (ellipse.majorAxisEndPoint.x ** 2 + ellipse.majorAxisEndPoint.y ** 2) * ellipse.axisRatio +
    Math.abs((q.x - p.x) * (r.y - p.y));
  expect(drawingArea(readDxf(text)) / total).toBeCloseTo(1, 9);
});
