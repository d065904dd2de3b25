// Growth of resolveRegions with the number of points and of crossings, and CPU time against two general polygon libraries.
// node packages/geometry/bench/resolve.mjs  (after a build; CPU seconds of this process, so other work on the machine counts little)
import { resolveRegions } from '@pourproof/arrangement';
import { packRings, signedArea } from '@pourproof/plane';
import ClipperLib from 'clipper-lib';
import polygonClipping from 'polygon-clipping';

function disc(cx, cy, radius, sides) {
  const ring = [];
  for (let i = 0; i < sides; i++) {
    const t = (2 * Math.PI * i) / sides;
    ring.push(cx + radius * Math.cos(t), cy + radius * Math.sin(t));
  }
  return ring;
}

function discs(perSide, radius, sides) {
  const rings = [];
  for (let i = 0; i < perSide; i++) {
    for (let j = 0; j < perSide; j++) {
      rings.push(disc(10 * i, 10 * j, radius, sides));
    }
  }
  return rings;
}

function bars(count) {
  const rings = [];
  for (let i = 0; i < count; i++) {
    rings.push(
      [i, -1, i + 0.3, -1, i + 0.3, count, i, count],
      [-1, i, count, i, count, i + 0.3, -1, i + 0.3],
    );
  }
  return rings;
}

function fan(count) {
  return Array.from({ length: count }, (_, i) => {
    const t = (2 * Math.PI * i) / count;
    const u = (2 * Math.PI * (i + 0.5)) / count;
    return [0, 0, 50 * Math.cos(t), 50 * Math.sin(t), 50 * Math.cos(u), 50 * Math.sin(u)];
  });
}

function hatch(count) {
  const [c, s] = [Math.cos(0.6), Math.sin(0.6)];
  return Array.from({ length: count }, (_, i) => {
    const y = i * 0.01;
    const box = [0, y, 100, y, 100, y + 0.004, 0, y + 0.004];
    return box.map((_, k) => (k % 2 === 0 ? box[k] * c - box[k + 1] * s : box[k - 1] * s + box[k] * c));
  });
}

const CASES = [
  ['one disc', (n) => [disc(0, 0, 50, n)], [25000, 100000, 400000]],
  ['discs apart', (n) => discs(Math.round(Math.sqrt(n / 100)), 4, 100), [25600, 102400, 409600]],
  ['discs that overlap', (n) => discs(Math.round(Math.sqrt(n / 100)), 6, 100), [25600, 102400, 409600]],
  ['grid of bars', (n) => bars(n / 8), [400, 800, 1600]],
  ['fan around one point', (n) => fan(n / 3), [1500, 60000, 240000]],
  ['slanting hatch', (n) => hatch(n / 4), [4000, 100000, 400000]],
];

function ours(rings) {
  const shapes = rings.map((ring) => ({ ...packRings([ring]), fillRule: 'nonzero' }));
  const { region, crossingCount } = resolveRegions(shapes);
  return { area: signedArea(region), crossingCount };
}

function byClipper(rings) {
  // 10 nm: the finest grid on which this library needs no long integers for these extents
  const scale = 1e5;
  const clipper = new ClipperLib.Clipper();
  for (const ring of rings) {
    const path = [];
    for (let i = 0; i < ring.length; i += 2) {
      path.push({ X: Math.round(ring[i] * scale), Y: Math.round(ring[i + 1] * scale) });
    }
    clipper.AddPath(path, ClipperLib.PolyType.ptSubject, true);
  }
  const out = new ClipperLib.Paths();
  const nonzero = ClipperLib.PolyFillType.pftNonZero;
  clipper.Execute(ClipperLib.ClipType.ctUnion, out, nonzero, nonzero);
  return { area: out.reduce((sum, path) => sum + ClipperLib.Clipper.Area(path), 0) / scale ** 2 };
}

function byPolygonClipping(rings) {
  const polygons = rings.map((ring) => {
    const points = [];
    for (let i = 0; i < ring.length; i += 2) {
      points.push([ring[i], ring[i + 1]]);
    }
    return [[...points, points[0]]];
  });
  let area = 0;
  for (const polygon of polygonClipping.union(polygons[0], ...polygons.slice(1))) {
    polygon.forEach((ring, k) => {
      let twice = 0;
      for (let i = 0; i + 1 < ring.length; i++) {
        twice += ring[i][0] * ring[i + 1][1] - ring[i + 1][0] * ring[i][1];
      }
      area += (k === 0 ? 1 : -1) * Math.abs(twice / 2);
    });
  }
  return { area };
}

function cpuMs(work) {
  const start = process.cpuUsage();
  let result;
  try {
    result = work();
  } catch (error) {
    return { ms: Number.NaN, failed: String(error.message).slice(0, 40) };
  }
  const used = process.cpuUsage(start);
  return { ms: (used.user + used.system) / 1000, ...result };
}

const columns = (cells) => cells.map((cell, i) => String(cell).padStart(i === 0 ? 22 : 14)).join('');
console.log(
  columns([
    'case',
    'points',
    'crossings',
    'ours ms',
    'µs/(n+k)',
    'clipper-lib',
    'polygon-clip',
    'area apart',
  ]),
);
const quick = process.argv.includes('--quick');
for (const [name, make, sizes] of CASES) {
  for (const size of quick ? sizes.slice(0, 1) : sizes) {
    const rings = make(size);
    const points = rings.reduce((n, ring) => n + ring.length / 2, 0);
    cpuMs(() => ours(rings.slice(0, Math.min(rings.length, 200))));
    const mine = cpuMs(() => ours(rings));
    // the others are asked about small sizes only: 6,000 points of the fan take one of them minutes
    const isAsked = size === sizes[0] || (size === sizes[1] && !/fan|hatch/.test(name));
    const others = isAsked ? [cpuMs(() => byClipper(rings)), cpuMs(() => byPolygonClipping(rings))] : [];
    const shown = others.map((other) => (other.failed ? 'fails' : `${other.ms.toFixed(0)} ms`));
    const apart = others
      .filter((other) => !other.failed)
      .map((other) => Math.abs(other.area - mine.area) / mine.area);
    console.log(
      columns([
        name,
        points,
        mine.crossingCount ?? mine.failed,
        mine.ms.toFixed(0),
        ((1000 * mine.ms) / (points + (mine.crossingCount ?? 0))).toFixed(2),
        shown[0] ?? '-',
        shown[1] ?? '-',
        apart.length === 0 ? '-' : Math.max(...apart).toExponential(0),
      ]),
    );
  }
}
