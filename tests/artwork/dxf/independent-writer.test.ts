import { readDxf } from '@pourproof/artwork';
import {
  DxfWriter,
  HatchBoundaryPaths,
  HatchPolylineBoundary,
  HatchPredefinedPatterns,
  LWPolylineFlags,
  pattern,
  point2d,
  point3d,
  SplineFlags,
  Units,
  vertex,
} from '@tarikjabiri/dxf';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawingArea } from '../../support/dxf/drawing-area.ts';
import { cases } from '../../support/lane.ts';

type Target = Pick<
  DxfWriter,
  | 'addLine'
  | 'addArc'
  | 'addCircle'
  | 'addEllipse'
  | 'addLWPolyline'
  | 'addPolyline3D'
  | 'addSpline'
  | 'addHatch'
>;

interface Case {
  readonly name: string;
  readonly areaMm2: number;
  readonly draw: (target: Target) => void;
}

const ROOT_HALF = Math.SQRT1_2;
const solid = pattern({ name: HatchPredefinedPatterns.SOLID });

// hatches by edges are left to the fixtures: this writer leaves out the type of each edge
const CASES: readonly Case[] = [
  {
    name: 'lines',
    areaMm2: 30,
    draw: (t) => {
      t.addLine(point3d(0, 0), point3d(10, 0));
      t.addLine(point3d(10, 6), point3d(10, 0));
      t.addLine(point3d(0, 0), point3d(10, 6));
    },
  },
  { name: 'circle', areaMm2: Math.PI * 9, draw: (t) => t.addCircle(point3d(2, 3), 3) },
  {
    name: 'arc and line',
    areaMm2: (Math.PI * 16) / 2,
    draw: (t) => {
      t.addArc(point3d(1, 1), 4, 90, 270);
      t.addLine(point3d(1, 5), point3d(1, -3));
    },
  },
  {
    name: 'ellipse',
    areaMm2: Math.PI * 5 * 2,
    draw: (t) => t.addEllipse(point3d(0, 0), point3d(3, 4), 0.4, 0, 2 * Math.PI),
  },
  {
    name: 'polyline with bulges',
    areaMm2: 80 + Math.PI * 16,
    draw: (t) =>
      t.addLWPolyline(
        [
          { point: point2d(0, 0) },
          { point: point2d(10, 0), bulge: 1 },
          { point: point2d(10, 8) },
          { point: point2d(0, 8), bulge: 1 },
        ],
        { flags: LWPolylineFlags.Closed },
      ),
  },
  {
    name: 'rational spline',
    areaMm2: Math.PI * 25,
    draw: (t) =>
      t.addSpline({
        degreeCurve: 2,
        flags: SplineFlags.Rational | SplineFlags.Closed,
        knots: [0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4],
        weights: [1, ROOT_HALF, 1, ROOT_HALF, 1, ROOT_HALF, 1, ROOT_HALF, 1],
        controlPoints: [
          [5, 0],
          [5, 5],
          [0, 5],
          [-5, 5],
          [-5, 0],
          [-5, -5],
          [0, -5],
          [5, -5],
          [5, 0],
        ].map(([x, y]) => point3d(x, y)),
      }),
  },
  {
    name: 'hatch with polyline boundary',
    areaMm2: 50 + (Math.PI * 25) / 2,
    draw: (t) => {
      const paths = new HatchBoundaryPaths();
      paths.addPolylineBoundary(
        new HatchPolylineBoundary([vertex(0, 0), vertex(10, 0, 1), vertex(10, 10), vertex(5, 5)]),
      );
      t.addHatch(paths, solid);
    },
  },
];

describe.each(CASES)('$name by an independent writer', ({ areaMm2, draw }) => {
  test('has its closed-form area', () => {
    const dxf = new DxfWriter();
    dxf.setUnits(Units.Millimeters);
    draw(dxf);
    const drawing = readDxf(dxf.stringify());
    expect(drawing.notices).toEqual([]);
    expect(drawingArea(drawing) / areaMm2).toBeCloseTo(1, 9);
  });

  test('keeps it in blocks: mirrored, stretched, turned, in arrays and nested', () => {
    const factor = fc.oneof(
      fc.double({ min: -3, max: -0.2, noNaN: true }),
      fc.double({ min: 0.2, max: 3, noNaN: true }),
    );
    fc.assert(
      fc.property(
        factor,
        factor,
        factor,
        fc.double({ min: -360, max: 360, noNaN: true }),
        fc.integer({ min: 1, max: 3 }),
        (sx, sy, s, angle, copies) => {
          const dxf = new DxfWriter();
          dxf.setUnits(Units.Inches);
          const inner = dxf.addBlock('inner');
          draw(inner);
          const outer = dxf.addBlock('outer');
          outer.addInsert('inner', point3d(3, -4), {
            scaleFactor: { x: sx, y: sy, z: 1 },
            rotationAngle: angle,
          });
          dxf.addInsert('outer', point3d(-20, 7), {
            scaleFactor: { x: s, y: -s, z: 1 },
            rotationAngle: -angle / 3,
            columnCount: copies,
            columnSpacing: 500,
          });
          const drawing = readDxf(dxf.stringify());
          const expected = areaMm2 * Math.abs(sx * sy) * s * s * copies * 25.4 ** 2;
          expect(drawing.notices).toEqual([]);
          expect(drawingArea(drawing) / expected).toBeCloseTo(1, 8);
        },
      ),
      cases(25),
    );
  });
});

test('layers, colours and names of the writer arrive', () => {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.addLayer('Deep blue', 5);
  dxf.setCurrentLayerName('Deep blue');
  dxf.addCircle(point3d(0, 0), 1);
  dxf.addCircle(point3d(5, 0), 1, { colorNumber: 3 });
  const found = readDxf(dxf.stringify()).shapes.map((s) => `${s.layer} ${s.colour}`);
  expect(found).toEqual(['Deep blue #0000ff', 'Deep blue #00ff00']);
});
