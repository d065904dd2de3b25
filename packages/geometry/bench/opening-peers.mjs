import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import ClipperLib from 'clipper-lib';

/**
 * Whole numbers a mm for clipper-lib: 0.1 µm is enough for arcs within 2 µm, and with coordinates below 2^26 it needs no long integers, in which
 * it takes several times as long.
 */
const SCALE = 1e4;
/** Decimal places that clipper2-wasm keeps of a mm, for the same 0.1 µm. */
const PLACES = 4;
/** Largest distance between a true arc and the chords that the peers put in its place, mm. */
const ARC_TOLERANCE_MM = 0.002;

/** Ring k of a region as [[x, y], …]. */
function points(region, k) {
  const from = k === 0 ? 0 : region.ringEnds[k - 1];
  return Array.from({ length: region.ringEnds[k] - from }, (_, i) => [
    region.coords[2 * (from + i)],
    region.coords[2 * (from + i) + 1],
  ]);
}

/** One opening by clipper-lib: `{ run(region, radius), area(result) }`. */
export function clipperLib() {
  const offset = (paths, delta) => {
    const engine = new ClipperLib.ClipperOffset(2, ARC_TOLERANCE_MM * SCALE);
    engine.AddPaths(paths, ClipperLib.JoinType.jtRound, ClipperLib.EndType.etClosedPolygon);
    const out = new ClipperLib.Paths();
    engine.Execute(out, delta * SCALE);
    return out;
  };
  return {
    name: 'clipper-lib',
    prepare: (region) =>
      Array.from(region.ringEnds, (_, k) =>
        points(region, k).map(([x, y]) => ({ X: Math.round(x * SCALE), Y: Math.round(y * SCALE) })),
      ),
    run: (paths, radius) => offset(offset(paths, -radius), radius),
    area: (paths) => paths.reduce((sum, path) => sum + ClipperLib.Clipper.Area(path), 0) / SCALE ** 2,
  };
}

/** One opening by clipper2-wasm, in one of its two builds: `umd` or `es`. */
export async function clipper2Wasm(build) {
  const c2 = await (build === 'umd' ? clipper2Umd() : clipper2Es());
  const offset = (paths, delta) =>
    c2.InflatePathsD(paths, delta, c2.JoinType.Round, c2.EndType.Polygon, 2, PLACES, ARC_TOLERANCE_MM);
  return {
    name: `clipper2-wasm, ${build}`,
    prepare: (region) => {
      const paths = new c2.PathsD();
      region.ringEnds.forEach((_, k) => {
        const path = new c2.PathD();
        for (const [x, y] of points(region, k)) {
          path.push_back(new c2.PointD(x, y, 0));
        }
        paths.push_back(path);
      });
      return paths;
    },
    run: (paths, radius) => offset(offset(paths, -radius), radius),
    area: (paths) => c2.AreaPathsD(paths),
  };
}

async function clipper2Umd() {
  const factory = createRequire(import.meta.url)('clipper2-wasm/dist/umd/clipper2z.js');
  return (factory.default ?? factory)();
}

/** Its package does not say that this build is a module, so Node takes it only from a copy whose name says so. */
async function clipper2Es() {
  const umd = createRequire(import.meta.url).resolve('clipper2-wasm/dist/umd/clipper2z.js');
  const from = join(dirname(umd), '../es');
  const to = mkdtempSync(join(tmpdir(), 'clipper2-'));
  copyFileSync(join(from, 'clipper2z.js'), join(to, 'clipper2z.mjs'));
  copyFileSync(join(from, 'clipper2z.wasm'), join(to, 'clipper2z.wasm'));
  const { default: factory } = await import(pathToFileURL(join(to, 'clipper2z.mjs')).href);
  const c2 = await factory();
  rmSync(to, { recursive: true });
  return c2;
}

/**
 * One opening by jsts buffers; their arcs are set by the number of chords in a quarter. As they come, buffers simplify what they are
 * given by up to a hundredth of the distance, 8 µm here.
 */
export function jsts() {
  return jstsPeer('jsts', () => undefined);
}

/** The same where the simplification is held to the tolerance that the other peers keep. */
export function jstsAtTolerance() {
  return jstsPeer('jsts at equal tolerance', (radius) => ARC_TOLERANCE_MM / radius);
}

async function jstsPeer(name, simplifyFactor) {
  const [
    { default: GeometryFactory },
    { default: BufferOp },
    { default: BufferParameters },
    { default: Coordinate },
  ] = await Promise.all([
    import('jsts/org/locationtech/jts/geom/GeometryFactory.js'),
    import('jsts/org/locationtech/jts/operation/buffer/BufferOp.js'),
    import('jsts/org/locationtech/jts/operation/buffer/BufferParameters.js'),
    import('jsts/org/locationtech/jts/geom/Coordinate.js'),
  ]);
  await import('jsts/org/locationtech/jts/monkey.js');
  const factory = new GeometryFactory();
  const ring = (list) => factory.createLinearRing([...list, list[0]].map(([x, y]) => new Coordinate(x, y)));
  const quarter = (radius) => Math.ceil(Math.PI / 4 / Math.acos(1 - ARC_TOLERANCE_MM / radius));
  const parameters = (radius) => {
    const made = new BufferParameters(quarter(radius));
    const factor = simplifyFactor(radius);
    if (factor !== undefined) {
      made.setSimplifyFactor(factor);
    }
    return made;
  };
  return {
    name,
    prepare: (region) => {
      const outers = [];
      region.ringEnds.forEach((_, k) => {
        const list = points(region, k);
        const area = list.reduce((s, [x, y], i) => {
          const [u, v] = list[(i + 1) % list.length];
          return s + x * v - u * y;
        }, 0);
        const polygon = factory.createPolygon(ring(list));
        if (area > 0) {
          outers.push({ polygon, list, holes: [] });
        } else {
          outers.holes = [...(outers.holes ?? []), { polygon, list }];
        }
      });
      for (const hole of outers.holes ?? []) {
        const owner = outers
          .filter((o) => o.polygon.contains(hole.polygon))
          .sort((a, b) => a.polygon.getArea() - b.polygon.getArea())[0];
        owner.holes.push(ring(hole.list));
      }
      return factory.createMultiPolygon(outers.map((o) => factory.createPolygon(ring(o.list), o.holes)));
    },
    run: (geometry, radius) => {
      const eroded = BufferOp.bufferOp(geometry, -radius, parameters(radius));
      return BufferOp.bufferOp(eroded, radius, parameters(radius));
    },
    area: (geometry) => geometry.getArea(),
  };
}
