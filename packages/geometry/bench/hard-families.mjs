import { resolveRegions } from '@pourproof/arrangement';
import { packRings } from '@pourproof/plane';
import { dice } from './dice.mjs';
import { plateWithPosts, postPlaces } from './posts.mjs';

function backwards(ring) {
  const out = [];
  for (let i = ring.length - 2; i >= 0; i -= 2) {
    out.push(ring[i], ring[i + 1]);
  }
  return out;
}

/** A share from 0 to 1 crowded towards the middle (crowd > 1) or the ends (crowd < 1). */
function crowded(t, crowd) {
  const u = 2 * t - 1;
  return (1 + Math.sign(u) * Math.abs(u) ** crowd) / 2;
}

/** Height of a side of a band at x in -1 … 1: a line, a parabola or an arc of half a circle, `bend` high at its middle. */
function bent(shape, bend, x) {
  const s = 1 - x * x;
  return bend * (shape < 1 ? 0 : shape < 2 ? s : Math.sqrt(Math.max(0, s)));
}

/** Points of one side of a band from x = -50 to 50; every other one is the tip of a tooth, `depth` towards the other side. */
function side({ count, shape, bend, depth, jitter, crowd, pattern }, random) {
  const points = [];
  for (let i = 0; i <= count; i++) {
    const x = 2 * crowded(i / count, crowd) - 1;
    const isTip = pattern < 1 ? i % 2 === 1 : i % 4 === 1 || i % 4 === 2;
    const up = isTip ? depth * (1 + jitter * (random() - 0.5)) : 0;
    points.push([50 * x, 50 * (bent(shape, bend, x) + up)]);
  }
  return points;
}

/** A band between two sides with teeth, `gap` apart where they come nearest. */
function band(count, p) {
  const random = dice();
  const low = side({ ...p.low, count: Math.max(2, Math.round(count * p.share)) }, random);
  const high = side({ ...p.high, count: Math.max(2, Math.round(count * (1 - p.share))) }, random);
  const heightAt = (points, bins, pick) => {
    for (const [x, y] of points) {
      const k = Math.min(255, Math.max(0, Math.floor(((x + 50) / 100) * 256)));
      for (const j of [k - 1, k, k + 1]) {
        bins[j] = bins[j] === undefined ? y : pick(bins[j], y);
      }
    }
  };
  const tops = [];
  const bottoms = [];
  heightAt(low, tops, Math.max);
  heightAt(
    high.map(([x, y]) => [x, -y]),
    bottoms,
    Math.min,
  );
  let lift = -Infinity;
  let lastTop = low[0][1];
  let lastBottom = -high[0][1];
  for (let k = 0; k < 256; k++) {
    lastTop = tops[k] ?? lastTop;
    lastBottom = bottoms[k] ?? lastBottom;
    lift = Math.max(lift, lastTop - lastBottom);
  }
  lift += 50 * p.gap;
  return resolved([[...low.flat(), ...high.reverse().flatMap(([x, y]) => [x, lift - y])]]);
}

/** A ring of spikes between two radii, the inner ones spread by jitter; with a hole of points in its middle. */
function star(count, p) {
  const random = dice();
  const holeCount = Math.round(count * p.holeShare);
  const main = count - holeCount;
  const ring = [];
  for (let i = 0; i < main; i++) {
    const turn = 2 * Math.PI * (p.crowd === 1 ? i / main : crowded(i / main, p.crowd));
    const isTip = i % 2 === 0;
    const r = (isTip ? 100 : 100 * p.inner) * (1 - (isTip ? p.tipJitter : p.rootJitter) * random());
    const lean = turn + (isTip ? p.lean * 2 * Math.PI : 0);
    ring.push(r * Math.cos(lean), r * Math.sin(lean));
  }
  const rings = [ring];
  if (holeCount >= 3) {
    const inner = 100 * p.inner * (1 - p.rootJitter) * p.holeSize;
    const hole = [];
    for (let i = 0; i < holeCount; i++) {
      const turn = (2 * Math.PI * i) / holeCount;
      const r = inner * (1 - p.holeJitter * random());
      hole.push(r * Math.cos(turn) + p.off * (1 - p.holeSize) * inner, r * Math.sin(turn));
    }
    rings.push(backwards(hole));
  }
  return resolved(rings);
}

/** A channel wound up, its walls with teeth. */
function spiral(count, p) {
  const random = dice();
  const half = Math.round(count / 2);
  const outer = [];
  const inner = [];
  for (let i = 0; i < half; i++) {
    const t = i / half;
    const turn = 2 * Math.PI * p.turns * t;
    const pitch = 40 / p.turns;
    const r = 5 + pitch * p.turns * t;
    const w = pitch * p.width;
    const tooth = (i % 2) * w * p.depth * (1 - p.jitter * random());
    outer.push((r + w - tooth) * Math.cos(turn), (r + w - tooth) * Math.sin(turn));
    inner.push(r * Math.cos(turn), r * Math.sin(turn));
  }
  return resolved([[...outer, ...backwards(inner)]]);
}

/** Rings in rings, each shifted and turned by chance. */
function nested(count, p) {
  const random = dice();
  const rings = Math.max(2, 2 * Math.round(p.rings / 2));
  const corners = Math.max(3, Math.round(count / rings));
  return resolved(
    Array.from({ length: rings }, (_, k) => {
      const phase = random() * p.phase;
      const radius = 100 * p.ratio ** k;
      const room = (radius * (1 - p.ratio)) / 2;
      const ring = [];
      for (let i = 0; i < corners; i++) {
        const turn = (2 * Math.PI * (i + phase)) / corners;
        const r = radius - room * p.jitter * random();
        ring.push(r * Math.cos(turn), r * Math.sin(turn));
      }
      return k % 2 === 0 ? ring : backwards(ring);
    }),
  );
}

/** Many small holes in a plate: polygons of some corners, drawn out and turned, set by chance or in rows. */
function holes(count, p) {
  const random = dice();
  const corners = Math.max(3, Math.round(p.corners));
  const number = Math.max(1, Math.round((count - 4) / corners));
  const columns = Math.max(1, Math.round(Math.sqrt(number * p.aspect)));
  const rows = Math.ceil(number / columns);
  const rings = [[-1, -1, columns + 1, -1, columns + 1, rows + 1, -1, rows + 1]];
  for (let k = 0; k < number; k++) {
    const cx = (k % columns) + 0.5 + p.scatter * 0.3 * (random() - 0.5);
    const cy = Math.floor(k / columns) + 0.5 + p.scatter * 0.3 * (random() - 0.5);
    const turn = p.turn * random() * Math.PI;
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const ring = [];
    for (let i = 0; i < corners; i++) {
      const a = (2 * Math.PI * i) / corners;
      const u = 0.4 * p.size * Math.cos(a);
      const v = 0.4 * p.size * p.thin * Math.sin(a);
      ring.push(cx + c * u - s * v, cy + s * u + c * v);
    }
    rings.push(backwards(ring));
  }
  return resolved(rings);
}

/** Long slits side by side, their ends spread by chance. */
function slits(count, p) {
  const random = dice();
  const number = Math.max(1, Math.round((count - 4) / 4));
  const length = number ** p.length;
  const rings = [[-1, -2 * length, number + 1, -2 * length, number + 1, 2 * length, -1, 2 * length]];
  for (let k = 0; k < number; k++) {
    const from = -length * (1 - p.jitter * random());
    const to = length * (1 - p.jitter * random());
    const lean = p.lean * (to - from);
    rings.push(backwards([k, from, k + p.width, from, k + p.width + lean, to, k + lean, to]));
  }
  return resolved(rings);
}

/** Posts in rows on a plate. */
function posts(count, p) {
  const places = postPlaces({ ...p, count: count / 4, rows: Math.round(p.rows), turn: Math.max(0, p.turn) });
  const { coords, ringEnds } = plateWithPosts(places, p.size, p.room);
  return resolveRegions([{ coords, ringEnds, fillRule: 'evenodd' }]).region;
}

function resolved(rings) {
  return resolveRegions([{ ...packRings(rings), fillRule: 'evenodd' }]).region;
}

const log = (from, to) => ({ from, to, isLog: true });
const flat = (from, to) => ({ from, to, isLog: false });
const sideRanges = {
  shape: flat(0, 3),
  bend: flat(-1, 1),
  depth: log(1e-4, 2),
  jitter: flat(0, 1),
  crowd: log(0.3, 4),
  pattern: flat(0, 2),
};

/** Families of regions with the ranges of what may be chosen of them. */
export const hardFamilies = {
  band: {
    make: band,
    ranges: { share: flat(0.02, 0.98), gap: log(1e-4, 2), low: sideRanges, high: sideRanges },
  },
  star: {
    make: star,
    ranges: {
      inner: log(1e-3, 0.99),
      tipJitter: flat(0, 0.9),
      rootJitter: log(1e-9, 0.9),
      lean: flat(-0.05, 0.05),
      crowd: flat(1, 1.0001),
      holeShare: flat(-0.3, 0.9),
      holeSize: log(0.01, 0.99),
      holeJitter: log(1e-9, 0.5),
      off: flat(0, 0.9),
    },
  },
  spiral: {
    make: spiral,
    ranges: { turns: log(1, 300), width: flat(0.05, 0.95), depth: flat(0, 0.95), jitter: flat(0, 1) },
  },
  nested: {
    make: nested,
    ranges: { rings: log(2, 400), ratio: flat(0.5, 0.999), phase: flat(0, 1), jitter: log(1e-9, 1) },
  },
  holes: {
    make: holes,
    ranges: {
      corners: flat(3, 12),
      aspect: log(1e-3, 1e3),
      scatter: flat(0, 1),
      turn: flat(0, 1),
      size: log(0.01, 1),
      thin: log(1e-3, 1),
    },
  },
  posts: {
    make: posts,
    ranges: {
      rows: log(1, 300),
      turn: flat(-0.5, 1),
      jitter: log(1e-9, 0.5),
      size: log(1e-6, 0.4),
      room: log(1, 1e5),
    },
  },
  slits: {
    make: slits,
    ranges: { length: flat(0, 1), jitter: flat(0, 1), width: log(1e-3, 0.9), lean: log(1e-6, 0.3) },
  },
};
