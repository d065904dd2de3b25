import { packRings } from '@pourproof/plane';

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

/** Numbers in 0 … 1 that repeat from run to run (a linear congruence, constants from memory). */
function dice() {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
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
