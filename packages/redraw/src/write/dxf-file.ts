import type { OutlinePath, XY } from '../fit/outline-path.ts';
import { cubicsOf } from './cubics-of.ts';
import { type DxfGroup, dxfText, fileSections } from './dxf-sections.ts';
import { layerColours } from './layer-colours.ts';
import { lengthText, type OutlineFile } from './outline-file.ts';

/**
 * A DXF file of release 2000 (AC1015) in millimetres, by the published DXF reference. One layer for each colour and round; outlines of straight sides
 * and arcs are closed LWPOLYLINEs with bulges, all others closed SPLINEs of degree 3, whose knots of multiplicity 3 keep each corner and
 * each tangent. The lower left corner of the artwork lies at 0, 0, y points up.
 */
export function dxfFile({ mark, boundsMm, groups }: OutlineFile): string {
  const [minX, minY, maxX, maxY] = boundsMm;
  const colours = layerColours(groups.map(({ colour }) => colour));
  const layers = groups.map(({ id }, k) => ({ name: id, colour: colours[k] ?? 7 }));
  const flip = ([x, y]: XY): XY => [x - minX, maxY - y];
  return dxfText(
    fileSections({
      mark,
      layers,
      extents: [maxX - minX, maxY - minY],
      entities: groups.flatMap(({ id, shapes }) =>
        shapes.flatMap((rings) => rings.map((ring) => ({ layer: id, ...entityOf(ring, flip) }))),
      ),
    }),
  );
}

interface Entity {
  readonly type: 'LWPOLYLINE' | 'SPLINE';
  readonly groups: readonly DxfGroup[];
}

function entityOf(ring: OutlinePath, flip: (point: XY) => XY): Entity {
  return ring.pieces.some(({ kind }) => kind === 'cubic') ? splineOf(ring, flip) : polylineOf(ring, flip);
}

/** Group codes of LWPOLYLINE: 90 number of points, 70 flag (1 closed), 43 width, 10 and 20 point, 42 bulge. */
function polylineOf({ start, pieces }: OutlinePath, flip: (point: XY) => XY): Entity {
  const points = [start, ...pieces.slice(0, -1).map(({ to }) => to)].map(flip);
  return {
    type: 'LWPOLYLINE',
    groups: [
      [100, 'AcDbPolyline'],
      [90, points.length],
      [70, 1],
      [43, '0.0'],
      ...pieces.flatMap((piece, k): DxfGroup[] => {
        const [x, y] = points[k] as XY;
        // mirrored, an arc turns the other way
        const bulge = piece.kind === 'arc' ? -piece.bulge : 0;
        return [
          [10, lengthText(x)],
          [20, lengthText(y)],
          ...(bulge === 0 ? [] : [[42, bulge.toPrecision(15)] as DxfGroup]),
        ];
      }),
    ],
  };
}

/**
 * Group codes of SPLINE: 210 normal, 70 flags (1 closed, 8 planar), 71 degree, 72 knots, 73 control points, 74 fit points, 42 and 43 tolerances,
 * 40 knot, 10 control point.
 */
function splineOf(ring: OutlinePath, flip: (point: XY) => XY): Entity {
  const cubics = cubicsOf(ring);
  const points = [ring.start, ...cubics.flatMap(({ control, to }) => [...control, to])].map(flip);
  const n = cubics.length;
  const knots = [0, ...Array.from({ length: n + 1 }, (_, k) => [k, k, k]).flat(), n];
  return {
    type: 'SPLINE',
    groups: [
      [100, 'AcDbSpline'],
      [210, '0.0'],
      [220, '0.0'],
      [230, '1.0'],
      [70, 1 + 8],
      [71, 3],
      [72, knots.length],
      [73, points.length],
      [74, 0],
      [42, '0.0000001'],
      [43, '0.0000001'],
      ...knots.map((knot): DxfGroup => [40, `${knot}.0`]),
      ...points.flatMap(([x, y]): DxfGroup[] => [
        [10, lengthText(x)],
        [20, lengthText(y)],
        [30, '0.0'],
      ]),
    ],
  };
}
