import { resolveRegions } from '@pourproof/arrangement';
import { packRings } from '@pourproof/plane';
import { dice } from './dice.mjs';
import { hardFamilies } from './hard-families.mjs';
import { plateWithPosts, postPlaces } from './posts.mjs';

function around(count, radius) {
  return Array.from({ length: count }, (_, i) => {
    const turn = (2 * Math.PI * i) / count;
    const r = radius(i, turn);
    return [r * Math.cos(turn), r * Math.sin(turn)];
  }).flat();
}

function backwards(ring) {
  const out = [];
  for (let i = ring.length - 2; i >= 0; i -= 2) {
    out.push(ring[i], ring[i + 1]);
  }
  return out;
}

function coast(count) {
  const random = dice();
  let points = [
    [10, 0],
    [0, 10],
    [-10, 0],
    [0, -10],
  ];
  while (points.length < count) {
    points = points.flatMap(([ax, ay], i) => {
      const [bx, by] = points[(i + 1) % points.length];
      const push = (random() - 0.5) * 0.35;
      return [
        [ax, ay],
        [(ax + bx) / 2 - (by - ay) * push, (ay + by) / 2 + (bx - ax) * push],
      ];
    });
  }
  return points.flat();
}

function comb(count) {
  const ring = [0, 20, 0, 0];
  for (let k = 0; k < count / 4; k++) {
    const depth = -10 - (k % 7);
    ring.push(k + 0.4, 0, k + 0.4, depth, k + 0.9, depth, k + 0.9, 0);
  }
  ring.push(Math.ceil(count / 4), 0, Math.ceil(count / 4), 20);
  return ring;
}

function squares(count) {
  const side = Math.round(Math.sqrt(count / 4));
  const rings = [[0, 0, side, 0, side, side, 0, side]];
  for (let i = 0; i < side; i++) {
    for (let j = 0; j < side; j++) {
      rings.push([i + 0.3, j + 0.3, i + 0.3, j + 0.7, i + 0.7, j + 0.7, i + 0.7, j + 0.3]);
    }
  }
  return rings;
}

/** Half a disc over a straight row of teeth; the outermost teeth may reach out of it. */
function teethUnderArc(count) {
  const half = Math.round(count / 2);
  const arc = Array.from({ length: half + 1 }, (_, i) => {
    const turn = (Math.PI * i) / half;
    return [50 * Math.cos(turn), 50 * Math.sin(turn)];
  });
  const teeth = Array.from({ length: half - 1 }, (_, i) => [
    -50 + (100 * (i + 1)) / half,
    i % 2 === 0 ? 1 : 0,
  ]);
  const rings = packRings([[...arc.flat(), ...teeth.flat()]]);
  return resolveRegions([{ ...rings, fillRule: 'nonzero' }]).region;
}

/** A channel wound up so often that its turns stay as wide as edges are long, with teeth on one wall. */
function manyTurns(count) {
  return hardFamilies.spiral.make(count, {
    turns: Math.sqrt(count / 40),
    width: 0.6,
    depth: 0.5,
    jitter: 0.5,
  });
}

/** A row of posts beside a wall: all gaps lead into one narrow stretch, and the discs that close them overlap each other by hundreds. */
const fence = (count) => plateWithPosts(postPlaces({ count: Math.round(count / 4), rows: 1 }), 0.1, 200);

/** A ring of posts: all discs around it are about as far from each place within. */
const yard = (count) =>
  plateWithPosts(postPlaces({ count: Math.round(count / 4), rows: 1, turn: 1 }), 0.1, count);

/** Two rows of posts in triangles: what a bit a little too wide leaves among them borders on a disc at every gap. */
const triangles = (count) => plateWithPosts(postPlaces({ count: Math.round(count / 4), rows: 2 }), 1e-6, 5);

/** Teeth on the inside of half an ellipse, upright, so that they slant against its wall. */
const bowl = {
  share: 0.98,
  gap: 2,
  low: { shape: 3, bend: -0.4, depth: 0.28, jitter: 0.2, crowd: 0.96, pattern: 0 },
  high: { shape: 0, bend: -0.26, depth: 0.023, jitter: 0.2, crowd: 2.2, pattern: 1.3 },
};
const roughSunburst = {
  inner: 0.01,
  tipJitter: 0.3,
  rootJitter: 0.5,
  lean: 0,
  crowd: 1,
  holeShare: 0,
  holeSize: 0.5,
  holeJitter: 0.1,
  off: 0,
};
/** Spikes that lean, around a small round hole off the middle: to the roots all of the hole is nearly in one line. */
const eclipse = {
  inner: 0.0031,
  tipJitter: 0.036,
  rootJitter: 4e-5,
  lean: -0.022,
  crowd: 1.00003,
  holeShare: 0.58,
  holeSize: 0.105,
  holeJitter: 6e-8,
  off: 0.49,
};
/** Spikes whose roots are jagged by as much as they lie apart: of some the window is open to the far side of the ring. */
const raggedRoots = {
  inner: 0.0029,
  tipJitter: 0.416,
  rootJitter: 2.06e-4,
  lean: 0.0071,
  crowd: 1.00004,
  holeShare: 0.0046,
  holeSize: 0.171,
  holeJitter: 9.2e-6,
  off: 0.0425,
};
const strewn = { corners: 5, aspect: 1, scatter: 1, turn: 1, size: 0.7, thin: 0.3 };
const leaningSlits = { length: 0.46, jitter: 0.02, width: 0.09, lean: 0.25 };

/** Families of regions by their number of edges, each of which makes some construction slow. */
export const awkward = {
  'one circle': (n) => packRings([around(n, () => 10)]),
  'circle, jitter': (n) => {
    const random = dice();
    return packRings([around(n, () => 10 * (1 + 1e-3 * random()))]);
  },
  'teeth on circle': (n) => packRings([around(n, (i) => (i % 2 === 0 ? 11 : 10))]),
  'even ring': (n) => packRings([around(n / 2, () => 10), backwards(around(n / 2, () => 8))]),
  spiky: (n) => {
    const random = dice();
    return packRings([around(n, () => 2 + 8 * random())]);
  },
  waves: (n) => packRings([around(n, (_, turn) => 10 + Math.sin(40 * turn))]),
  comb: (n) => packRings([comb(n)]),
  coast: (n) => packRings([coast(n)]),
  squares: (n) => packRings(squares(n)),
};

/** Families on which the search once went with the square: found by find-worst.mjs, or by others. */
export const found = {
  sunburst: (n) => packRings([around(n, (i) => (i % 2 === 0 ? 100 : 1))]),
  'rough sunburst': (n) => hardFamilies.star.make(n, roughSunburst),
  'leaning spikes around a hole': (n) => hardFamilies.star.make(n, eclipse),
  'spikes with ragged roots': (n) => hardFamilies.star.make(n, raggedRoots),
  'teeth under an arc': teethUnderArc,
  'teeth in a bowl': (n) => hardFamilies.band.make(n, bowl),
  'many turns': manyTurns,
  'strewn holes': (n) => hardFamilies.holes.make(n, strewn),
  'leaning slits': (n) => hardFamilies.slits.make(n, leaningSlits),
};

/** Families on which what a cutter leaves standing once took time by a power of their size, and the radius of that cutter, mm. */
export const standing = {
  'teeth, fine bit': { make: teethUnderArc, radius: () => 0.008 },
  fence: { make: fence, radius: () => 150 },
  yard: { make: yard, radius: (n) => n / 16 },
  'posts in triangles': { make: triangles, radius: () => 0.58 },
};
