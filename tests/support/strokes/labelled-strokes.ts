import { rectangle, regular } from '../shapes/clean-from.ts';
import { arc, footed, roundWedge, stadium, swelling, vee, wedge } from '../shapes/stroke-shapes.ts';

/** A shape with what a person would say of it: where it is too thin for a bit as wide as the limit, and nothing else. */
export interface LabelledShape {
  readonly family: string;
  readonly name: string;
  /** Outer ring first, then holes, with arcs flattened to the tolerance. */
  readonly rings: (toleranceMm: number) => number[][];
  readonly limitMm: number;
  /** Points on the middle lines of strokes that are too thin, and of tapers: one for each. */
  readonly strokes?: readonly (readonly [number, number])[];
  readonly tapers?: readonly (readonly [number, number])[];
}

const plain = (
  family: string,
  name: string,
  ring: (toleranceMm: number) => number[],
  limitMm: number,
  thin: Pick<LabelledShape, 'strokes' | 'tapers'> = {},
): LabelledShape => ({ family, name, rings: (t) => [ring(t)], limitMm, ...thin });

const DEG = Math.PI / 180;

const ends: LabelledShape[] = [
  plain('plain ends', 'bar with square ends', () => rectangle(0, 0, 20, 3), 2.9),
  plain('plain ends', 'bar with round ends', (t) => stadium(20, 3, t), 2.9),
  plain('plain ends', 'dot', (t) => arc(0, 0, 2, 0, 2 * Math.PI, t).slice(2), 3.9),
  plain('plain ends', 'bar cut at 60°', () => [0, 0, 20, 0, 20 + 3 / Math.tan(60 * DEG), 3, 0, 3], 2.9),
  plain('plain ends', 'bar cut at 45°', () => [0, 0, 20, 0, 23, 3, 0, 3], 2.9),
  plain(
    'plain ends',
    'bar with a point of 50°',
    () => [0, 0, 20, 0, 20 + 1.5 / Math.tan(25 * DEG), 1.5, 20, 3, 0, 3],
    2.9,
  ),
  plain(
    'plain ends',
    'bar with a spur as long as it is wide',
    () => [0, 0, 9, 0, 9, -0.6, 9.6, -0.6, 9.6, 0, 20, 0, 20, 3, 0, 3],
    1,
  ),
  plain(
    'plain ends',
    'bar with a whisker',
    () => [0, 0, 9, 0, 9, -3, 9.6, -3, 9.6, 0, 20, 0, 20, 3, 0, 3],
    1,
    { strokes: [[9.3, -1.5]] },
  ),
  plain('plain ends', 'waist', () => [0, 0, 10, 1, 20, 0, 20, 4, 10, 3, 0, 4], 2.5, { strokes: [[10, 2]] }),
];

const serifs: LabelledShape[] = [
  plain('serif feet', 'slab 0.8 mm thick', () => footed([4, 0, 4, -0.8, 1, -0.8]), 1.5, {
    strokes: [
      [3, -0.4],
      [-3, -0.4],
    ],
  }),
  plain('serif feet', 'stubby slab as thick as the limit', () => footed([2.2, 0, 2.2, -1.6, 1, -1.6]), 1.5),
  plain('serif feet', 'wedge of 45°', () => footed([3, 0, 1, -2]), 1.5),
  plain('serif feet', 'wedge of 20°', () => footed([5, 0, 1, -4 * Math.tan(20 * DEG)]), 1, {
    tapers: [
      [4, -0.15],
      [-4, -0.15],
    ],
  }),
  plain('serif feet', 'hairline 0.3 mm thick', () => footed([4, 0, 4, -0.3, 1, -0.3]), 1, {
    strokes: [
      [3, -0.15],
      [-3, -0.15],
    ],
  }),
  plain(
    'brackets',
    'slab with round brackets',
    (t) => footed([4.5, 0, 4.5, -0.8, ...arc(2.5, -2.3, 1.5, 90 * DEG, 180 * DEG, t)]),
    1.2,
    {
      strokes: [
        [3.5, -0.4],
        [-3.5, -0.4],
      ],
    },
  ),
  plain(
    'brackets',
    'hairline with round brackets',
    (t) => footed([4, 0, 4, -0.25, ...arc(2, -1.25, 1, 90 * DEG, 180 * DEG, t)]),
    0.8,
    {
      strokes: [
        [3, -0.125],
        [-3, -0.125],
      ],
    },
  ),
  plain(
    'brackets',
    'one curve from the foot’s point to the stem',
    (t) => footed([4, 0, ...arc(4, -3, 3, 90 * DEG, 180 * DEG, t).slice(2)]),
    1,
    {
      tapers: [
        [3, -0.1],
        [-3, -0.1],
      ],
    },
  ),
  plain(
    'brackets',
    'curve to a blunt foot',
    (t) => footed([4, 0, ...arc(4, -3.4, 3, 90 * DEG, 180 * DEG, t)]),
    0.8,
    {
      tapers: [
        [3.6, -0.2],
        [-3.6, -0.2],
      ],
    },
  ),
];

const joins: LabelledShape[] = [
  plain('acute joins', 'apex of 60°', () => vee(60, 14, 2), 1.9),
  plain('acute joins', 'apex of 45°', () => vee(45, 14, 2), 1.9),
  plain('acute joins', 'apex of 40°', () => vee(40, 16, 2), 1.9),
  plain('acute joins', 'apex of 20°', () => vee(20, 24, 2), 1.5, { tapers: [[2, 0]] }),
  plain(
    'acute joins',
    'apex of 40°, cut off',
    () =>
      vee(40, 16, 2)
        .map((v, i) => (i === 0 ? 0.6 : v))
        .toSpliced(1, 1, -0.6 * Math.tan(20 * DEG))
        .concat([0.6, 0.6 * Math.tan(20 * DEG)]),
    1.9,
  ),
  plain(
    'junction blobs',
    'two bars that cross upright',
    () => [4, 0, 6, 0, 6, 4, 10, 4, 10, 6, 6, 6, 6, 10, 4, 10, 4, 6, 0, 6, 0, 4, 4, 4],
    1.9,
  ),
  plain('junction blobs', 'two bars that cross at 40°', () => crossing(40, 12, 1.6), 1.5),
  plain(
    'junction blobs',
    'hairline into a stem',
    () => [0, 0, 3, 0, 3, 4, 9, 4, 9, 0, 12, 0, 12, 9, 9, 9, 9, 4.4, 3, 4.4, 3, 9, 0, 9],
    1,
    { strokes: [[6, 4.2]] },
  ),
  plain('ink traps', 'elbow with a trap as narrow as to leave 1.3 mm', () => trapped(1.3), 1.5, {
    strokes: [[0.65, 1.3]],
  }),
  plain('ink traps', 'elbow with a trap that leaves 1.7 mm', () => trapped(1.7), 1.5),
  plain('ink traps', 'apex of 40° with a trap that leaves 1 mm', () => veeTrapped(40, 16, 2, 1), 1.2, {
    strokes: [
      [2.75, 0.47],
      [2.75, -0.47],
    ],
  }),
];

const script: LabelledShape[] = [
  plain(
    'script hairlines',
    'stroke that swells from 0.4 to 2 mm and back, twice',
    (t) => swelling(24, (x) => 0.6 - 0.4 * Math.cos((Math.PI * x) / 6), t),
    0.8,
    {
      strokes: [[12, 0]],
      tapers: [
        [0.8, 0],
        [23.2, 0],
      ],
    },
  ),
  plain(
    'script hairlines',
    'the same, bent',
    (t) =>
      swelling(
        24,
        (x) => 0.6 - 0.4 * Math.cos((Math.PI * x) / 6),
        t,
        (x) => 2 * Math.sin(x / 5),
      ),
    0.8,
    {
      strokes: [[12, 1.35]],
      tapers: [
        [0.8, 0.32],
        [23.2, -1.99],
      ],
    },
  ),
  plain(
    'script hairlines',
    'hairline with torn edges',
    (t) => swelling(16, (x) => 0.2 + 0.2 * Math.abs(((2.2 * x) % 2) - 1), t),
    1,
    { strokes: [[8, 0]] },
  ),
  plain(
    'script hairlines',
    'strand off a wide block',
    () => [0, 0, 40, 0, 40, 18, 45, 18.2, 45, 18.8, 40, 19, 40, 40, 0, 40],
    1.5,
    { strokes: [[42.5, 18.5]] },
  ),
  plain(
    'script hairlines',
    'pen stroke that runs out to a point',
    (t) => swelling(20, (x) => 0.9 * Math.sin((Math.PI * x) / 40), t),
    0.8,
    { tapers: [[2, 0]] },
  ),
  plain(
    'ball terminals',
    'ball on a hairline',
    (t) => [
      ...arc(0, 0, 1.2, Math.asin(0.2 / 1.2), 2 * Math.PI - Math.asin(0.2 / 1.2), t),
      10,
      -0.2,
      10,
      0.2,
    ],
    1,
    { strokes: [[6, 0]] },
  ),
  plain(
    'ball terminals',
    'ball on a stem',
    (t) => [...arc(0, 0, 3, Math.asin(1 / 3), 2 * Math.PI - Math.asin(1 / 3), t), 15, -1, 15, 1],
    1.9,
  ),
  plain(
    'ball terminals',
    'drop with a tail of 8°',
    (t) => [...arc(0, 0, 1.5, 94 * DEG, 266 * DEG, t), 1.5 / Math.sin(4 * DEG), 0],
    1,
    { tapers: [[18, 0]] },
  ),
  {
    family: 'thin rings',
    name: 'ring 0.5 mm wide',
    rings: (t) => [arc(0, 0, 6, 0, 2 * Math.PI, t).slice(2), arc(0, 0, 5.5, 0, 2 * Math.PI, t).slice(2)],
    limitMm: 0.8,
    strokes: [[5.75, 0]],
  },
  {
    family: 'thin rings',
    name: 'ring 0.8 mm wide, many corners',
    rings: () => [regular(60, 6), regular(60, 5.2)],
    limitMm: 0.75,
  },
];

const tapers: LabelledShape[] = [
  ...[5, 10, 28].map((deg) =>
    plain('tapers', `point of ${deg}°`, () => wedge(deg, 40), 0.8, {
      tapers: [[0.2 / Math.sin((deg / 2) * DEG), 0]],
    }),
  ),
  ...[1.5, 3, 6, 20].map((deg) =>
    plain(
      'tapers',
      `needle of ${deg}° with a round tip`,
      (t) => roundWedge(deg, 0.15, deg < 5 ? 80 : 30, t),
      0.8,
      { tapers: [[1, 0]] },
    ),
  ),
  plain(
    'tapers',
    'needle of 8° with waves of 3 %',
    (t) => swelling(30, (x) => (0.1 + x * Math.tan(4 * DEG)) * (1 + 0.03 * Math.sin(4 * x)), t),
    0.8,
    { tapers: [[1.5, 0]] },
  ),
  plain(
    'tapers',
    'stem that narrows from 3 to 1.4 mm and ends blunt',
    () => [0, -1.5, 30, -0.7, 30, 0.7, 0, 1.5],
    2,
    { strokes: [[27, 0]] },
  ),
  plain(
    'tapers',
    'six points of 60°',
    () =>
      Array.from({ length: 12 }, (_, k) => [
        (k % 2 === 0 ? 6 : 6 / Math.sqrt(3)) * Math.cos(k * 30 * DEG),
        (k % 2 === 0 ? 6 : 6 / Math.sqrt(3)) * Math.sin(k * 30 * DEG),
      ]).flat(),
    3,
  ),
  plain('tapers', 'eight points of 15°', () => star(8, 15, 8), 1, {
    tapers: Array.from(
      { length: 8 },
      (_, k) => [6.5 * Math.cos(k * 45 * DEG), 6.5 * Math.sin(k * 45 * DEG)] as const,
    ),
  }),
];

export const labelledShapes: readonly LabelledShape[] = [...ends, ...serifs, ...joins, ...script, ...tapers];

/** Two bars that cross in the origin at the given angle. */
function crossing(deg: number, length: number, width: number): number[] {
  const half = (deg / 2) * DEG;
  const w = width / 2;
  const right = w / Math.sin(half);
  const up = w / Math.cos(half);
  const end = (turn: number): number[] => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    return [length * c + w * s, length * s - w * c, length * c - w * s, length * s + w * c];
  };
  return [
    right,
    0,
    ...end(half),
    0,
    up,
    ...end(Math.PI - half),
    -right,
    0,
    ...end(Math.PI + half),
    0,
    -up,
    ...end(2 * Math.PI - half),
  ];
}

/** An elbow of bars 3 mm wide whose inner corner is cut in by a slot towards the outer corner, up to (left, left). */
function trapped(left: number): number[] {
  return [0, 0, 14, 0, 14, 3, 3.2, 3, left, left, 3, 3.2, 3, 14, 0, 14];
}

/** The apex of two bars whose crotch is cut in so far that `left` mm remain to either outer edge. */
function veeTrapped(deg: number, length: number, width: number, left: number): number[] {
  const ring = vee(deg, length, width);
  const half = (deg / 2) * DEG;
  const [cx] = ring.slice(6, 8);
  const slot = left / Math.sin(half);
  return [
    ...ring.slice(0, 6),
    cx + 0.3,
    -0.3 * Math.tan(half),
    slot,
    0,
    cx + 0.3,
    0.3 * Math.tan(half),
    ...ring.slice(8),
  ];
}

/** Points of the given angle around a core, their tips on a circle. */
function star(points: number, deg: number, radius: number): number[] {
  const half = (deg / 2) * DEG;
  const step = Math.PI / points;
  // where the flank of a point meets that of the next: on the ray half way between
  const inner = (radius * Math.sin(half)) / Math.sin(half + step);
  return Array.from({ length: 2 * points }, (_, k) => [
    (k % 2 === 0 ? radius : inner) * Math.cos(k * step),
    (k % 2 === 0 ? radius : inner) * Math.sin(k * step),
  ]).flat();
}
