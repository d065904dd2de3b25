import { type Drawing, type Rings, ringCoords } from '@pourproof/plane';
import type { Finding, Fix } from '@pourproof/proof';
import ClipperLib from 'clipper-lib';

const { Clipper, ClipperOffset, ClipType, EndType, JoinType, PolyFillType, PolyType } = ClipperLib;

/** Steps of the grid of the other engine, a mm. */
const GRID = 1e6;
/** As a drawing program cuts mitres that are usual: at four times the width. */
const MITRE = 4;
/** Chords of rounded corners leave them by at most this, in steps of the grid: 1 µm. */
const ARC = 1e3;

type Path = { X: number; Y: number }[];
type Box = readonly [left: number, top: number, right: number, bottom: number];

/**
 * The file of a maker who makes a way out that is work on the drawing: with the engine of another, from the words of the way out and the
 * places of the finding alone. `null` for a way out that tells no one change.
 */
export function redrawn(drawing: Drawing, fix: Fix, finding: Finding): Uint8Array | null {
  const paths = drawing.shapes.map(({ region }) =>
    combined(pathsOf(region), [], ClipType.ctUnion, region.fillRule),
  );
  switch (fix.do) {
    case 'widen': {
      const boxes = boxesOf(finding, fix.byMm);
      const how = fix.what === 'wood' ? ClipType.ctDifference : ClipType.ctUnion;
      return written(
        drawing,
        paths.map((path) => combined(path, along(path, boxes, fix.byMm / 2), how)),
      );
    }
    case 'part-by-wall': {
      const boxes = boxesOf(finding, fix.widthMm);
      return written(
        drawing,
        drawing.shapes.map(({ colour }, k) => {
          const earlier = drawing.shapes.flatMap((shape, j) =>
            shape.colour < colour ? [paths[j] as Path[]] : [],
          );
          const off = earlier.flatMap((path) => [...path, ...along(path, boxes, fix.widthMm)]);
          return combined(paths[k] as Path[], off, ClipType.ctDifference);
        }),
      );
    }
    case 'move-apart':
      return written(drawing, movedApart(paths, fix.byMm, finding));
    default:
      return null;
  }
}

/** A band along every run of edges that comes into a box, with flush ends and pointed corners. */
function along(paths: readonly Path[], boxes: readonly Box[], radiusMm: number): Path[] {
  const engine = new ClipperOffset(MITRE, ARC);
  for (const path of paths) {
    const isNear = path.map((a, i) => meetsAny(boxes, a, path[(i + 1) % path.length] ?? a));
    if (isNear.every(Boolean)) {
      engine.AddPath(path, JoinType.jtMiter, EndType.etClosedLine);
      continue;
    }
    for (let i = 0; i < path.length; i++) {
      if (isNear[i] === true && isNear[(i + path.length - 1) % path.length] !== true) {
        const run = [path[i] as Path[number]];
        for (let j = i; isNear[j % path.length] === true; j++) {
          run.push(path[(j + 1) % path.length] as Path[number]);
        }
        engine.AddPath(run, JoinType.jtMiter, EndType.etOpenButt);
      }
    }
  }
  const band: Path[] = [];
  engine.Execute(band, radiusMm * GRID);
  return band;
}

function meetsAny(boxes: readonly Box[], a: Path[number], b: Path[number]): boolean {
  return boxes.some(
    ([left, top, right, bottom]) =>
      Math.max(a.X, b.X) >= left * GRID &&
      Math.min(a.X, b.X) <= right * GRID &&
      Math.max(a.Y, b.Y) >= top * GRID &&
      Math.min(a.Y, b.Y) <= bottom * GRID,
  );
}

/** Where the finding points, with the walls beside: as far as it asks for, and what is added. */
function boxesOf({ where, limit }: Finding, byMm: number): readonly Box[] {
  return where.map(({ atMm, outline, widthMm = byMm }) => {
    const points = [atMm, ...outline.flat()];
    const by = byMm + (limit.unit === 'mm' ? limit.value : widthMm);
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    return [Math.min(...xs) - by, Math.min(...ys) - by, Math.max(...xs) + by, Math.max(...ys) + by];
  });
}

/** Parts on one side of each thin piece of wood, those that are fewer, moved straight away from it. */
function movedApart(shapes: readonly Path[][], byMm: number, { where }: Finding): Path[][] {
  const parts = combined(shapes.flat(), [], ClipType.ctUnion).filter((path) => Clipper.Area(path) > 0);
  const offsets = parts.map((): [number, number] => [0, 0]);
  const done = new Set<string>();
  for (const { atMm } of where) {
    const at = { X: atMm[0] * GRID, Y: atMm[1] * GRID };
    const [one, other] = parts
      .map((part, k) => ({ k, near: nearestOn(part, at) }))
      .toSorted((a, b) => far(a.near, at) - far(b.near, at));
    if (one === undefined || other === undefined || done.has([one.k, other.k].sort().join())) {
      continue;
    }
    done.add([one.k, other.k].sort().join());
    const length = far(one.near, other.near) || 1;
    const [ux, uy] = [(other.near.X - one.near.X) / length, (other.near.Y - one.near.Y) / length];
    const along = parts.map((part) => {
      const [xs, ys] = [part.map(({ X }) => X), part.map(({ Y }) => Y)];
      return ((Math.min(...xs) + Math.max(...xs)) / 2) * ux + ((Math.min(...ys) + Math.max(...ys)) / 2) * uy;
    });
    const all = [...parts.keys()];
    const after = all.filter((k) => k !== one.k && (along[k] ?? 0) >= (along[other.k] ?? 0));
    const before = all.filter((k) => k !== other.k && (along[k] ?? 0) <= (along[one.k] ?? 0));
    const [moving, sense] = after.length <= before.length ? [after, 1] : [before, -1];
    for (const k of moving) {
      const offset = offsets[k] as [number, number];
      offset[0] += sense * byMm * GRID * ux;
      offset[1] += sense * byMm * GRID * uy;
    }
  }
  return shapes.map((paths) =>
    paths.map((path) => {
      const [first = { X: 0, Y: 0 }] = path;
      const [own] = parts
        .map((part, k) => ({ k, near: isWithin(part, first) ? 0 : far(nearestOn(part, first), first) }))
        .toSorted((a, b) => a.near - b.near);
      const [dx, dy] = offsets[own?.k ?? 0] ?? [0, 0];
      return path.map(({ X, Y }) => ({ X: Math.round(X + dx), Y: Math.round(Y + dy) }));
    }),
  );
}

function nearestOn(path: Path, { X, Y }: Path[number]): Path[number] {
  return path
    .map((a, i) => {
      const b = path[(i + 1) % path.length] ?? a;
      const [dx, dy] = [b.X - a.X, b.Y - a.Y];
      const squared = dx * dx + dy * dy || 1;
      const t = Math.min(1, Math.max(0, ((X - a.X) * dx + (Y - a.Y) * dy) / squared));
      return { X: a.X + t * dx, Y: a.Y + t * dy };
    })
    .reduce((best, each) => (far(each, { X, Y }) < far(best, { X, Y }) ? each : best));
}

function far(a: Path[number], b: Path[number]): number {
  return Math.hypot(a.X - b.X, a.Y - b.Y);
}

function isWithin(path: Path, { X, Y }: Path[number]): boolean {
  const crossed = path.filter((a, i) => {
    const b = path[(i + 1) % path.length] ?? a;
    return a.Y > Y !== b.Y > Y && X < a.X + ((Y - a.Y) / (b.Y - a.Y)) * (b.X - a.X);
  });
  return crossed.length % 2 === 1;
}

function combined(
  subject: readonly Path[],
  clip: readonly Path[],
  how: number,
  fillRule: 'nonzero' | 'evenodd' = 'nonzero',
): Path[] {
  const engine = new Clipper();
  engine.AddPaths([...subject], PolyType.ptSubject, true);
  engine.AddPaths([...clip], PolyType.ptClip, true);
  const out: Path[] = [];
  const fill = fillRule === 'evenodd' ? PolyFillType.pftEvenOdd : PolyFillType.pftNonZero;
  engine.Execute(how, out, fill, PolyFillType.pftNonZero);
  return out;
}

function pathsOf(rings: Rings): Path[] {
  return Array.from(rings.ringEnds, (_, k) => {
    const ring = ringCoords(rings, k);
    return Array.from({ length: ring.length / 2 }, (_, i) => ({
      X: Math.round((ring[2 * i] as number) * GRID),
      Y: Math.round((ring[2 * i + 1] as number) * GRID),
    }));
  });
}

/** Room for every drawing of the tests around the origin, mm. */
const PAGE_MM = 20_000;

/** A file in mm whose page begins where the drawing's does, or with its origin in the middle where that has none. */
function written({ shapes, pageMm }: Drawing, paths: readonly (readonly Path[])[]): Uint8Array {
  const from = pageMm === undefined ? -PAGE_MM / 2 : 0;
  const body = shapes.map(({ layer, colour }, k) => {
    const d = (paths[k] ?? []).map((path) => `M${path.map(told).join(' ')}Z`).join('');
    return `<g m:label="${escaped(layer)}"><path fill="${colour}" d="${d}"/></g>`;
  });
  return new TextEncoder().encode(
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:m="urn:maker" width="${PAGE_MM}mm" height="${PAGE_MM}mm" viewBox="${from} ${from} ${PAGE_MM} ${PAGE_MM}">${body.join('')}</svg>`,
  );
}

function told({ X, Y }: Path[number]): string {
  return `${X / GRID},${Y / GRID}`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
}
