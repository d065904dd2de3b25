import type { XY } from '../fit/outline-path.ts';
import { type DxfGroup, dxfText, fileSections } from './dxf-sections.ts';
import { layerColours } from './layer-colours.ts';
import { lengthText, type OutlineFile } from './outline-file.ts';
import { type OutlinePart, outlineParts } from './outline-parts.ts';

/**
 * A DXF file of release 2000 (AC1015) in millimetres, by the published DXF reference. One layer for each colour and round. Straight sides and arcs are
 * LWPOLYLINEs with bulges, curves SPLINEs of degree 3 whose knots of multiplicity 3 keep every tangent. An outline of one kind is one closed
 * entity; one of several kinds is a chain of open ones, each beginning where the one before ends, to the last digit. The lower left
 * corner of the artwork lies at 0, 0, y points up.
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
        shapes
          .flat()
          .flatMap((ring) => outlineParts(ring).map((part) => ({ layer: id, ...entityOf(part, flip) }))),
      ),
    }),
  );
}

interface Entity {
  readonly type: 'LWPOLYLINE' | 'SPLINE';
  readonly groups: readonly DxfGroup[];
}

function entityOf(part: OutlinePart, flip: (point: XY) => XY): Entity {
  return part.pieces[0]?.kind === 'cubic' ? splineOf(part, flip) : polylineOf(part, flip);
}

/** Group codes of LWPOLYLINE: 90 number of points, 70 flag (1 closed), 43 width, 10 and 20 point, 42 bulge. */
function polylineOf({ start, pieces, isClosed }: OutlinePart, flip: (point: XY) => XY): Entity {
  const points = [start, ...pieces.map(({ to }) => to)].slice(0, isClosed ? -1 : undefined).map(flip);
  return {
    type: 'LWPOLYLINE',
    groups: [
      [100, 'AcDbPolyline'],
      [90, points.length],
      [70, isClosed ? 1 : 0],
      [43, '0.0'],
      ...points.flatMap(([x, y], k): DxfGroup[] => {
        const piece = pieces[k];
        // mirrored, an arc turns the other way
        const bulge = piece?.kind === 'arc' ? -piece.bulge : 0;
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
function splineOf({ start, pieces, isClosed }: OutlinePart, flip: (point: XY) => XY): Entity {
  const cubics = pieces.filter((piece) => piece.kind === 'cubic');
  const points = [start, ...cubics.flatMap(({ control, to }) => [...control, to])].map(flip);
  const n = cubics.length;
  const knots = [0, ...Array.from({ length: n + 1 }, (_, k) => [k, k, k]).flat(), n];
  return {
    type: 'SPLINE',
    groups: [
      [100, 'AcDbSpline'],
      [210, '0.0'],
      [220, '0.0'],
      [230, '1.0'],
      [70, (isClosed ? 1 : 0) + 8],
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
