/**
 * Every kind of random artwork, board and job that tests draw, as arbitraries that shrink: fewer corners, fewer holes, rounder numbers.
 * Lengths are millimetres; regions are some 20 mm across and clean.
 */
import { resolveRegions } from '@pourproof/arrangement';
import type { JobFile } from '@pourproof/job';
import { resinColours, scales } from '@pourproof/materials';
import { type CleanRegion, type FillRule, packRings, type Region } from '@pourproof/plane';
import fc from 'fast-check';
import { cleanRegionFaults } from './support/oracles/clean-region-faults.ts';
import { cellRings } from './support/shapes/cell-rings.ts';
import { cleanFrom } from './support/shapes/clean-from.ts';
import { untangle } from './support/shapes/untangle.ts';

type Range = readonly [low: number, high: number];

const STEPS = 2 ** 20;

/** 0 … 1 in steps of 2⁻²⁰, all alike likely: shapes of general position, which bias towards the ends would make degenerate. */
export const share: fc.Arbitrary<number> = fc
  .noBias(fc.integer({ min: 0, max: STEPS }))
  .map((n) => n / STEPS);

/** A number between two, towards the first of which it shrinks. */
export const between = (low: number, high: number): fc.Arbitrary<number> =>
  share.map((s) => low + (high - low) * s);

/** From 10^low to 10^high, all magnitudes alike likely. */
export const magnitude = (low: number, high: number): fc.Arbitrary<number> =>
  between(low, high).map((power) => 10 ** power);

const count = (low: number, high: number): fc.Arbitrary<number> =>
  fc.noBias(fc.integer({ min: low, max: high }));

/** Several of one kind, any number between the two alike likely. */
function many<T>(one: fc.Arbitrary<T>, [minLength, maxLength]: Range): fc.Arbitrary<T[]> {
  return fc.noBias(fc.array(one, { minLength, maxLength, size: 'max' }));
}

/** One case of an arbitrary, always the same for the same seed: where a test needs some shape and not any. */
export function one<T>(arbitrary: fc.Arbitrary<T>, seed: number): T {
  return fc.sample(arbitrary, { numRuns: 1, seed })[0]!;
}

// ── rings ──

/** Corners at even angles around a point, with radii between two: all of it is seen from that point; spiky when the radii differ much. */
export function starRing(corners: Range, radii: Range, at: Range = [0, 0]): fc.Arbitrary<number[]> {
  return fc.tuple(share, many(between(...radii), corners)).map(([start, lengths]) =>
    lengths.flatMap((radius, i) => {
      const t = (2 * Math.PI * (i + start)) / lengths.length;
      return [at[0] + radius * Math.cos(t), at[1] + radius * Math.sin(t)];
    }),
  );
}

/** A closed wave around a point, flattened to so many corners: cones of normals are thin, and walls run side by side. */
export function waveRing(corners: Range, middle: number, height: number): fc.Arbitrary<number[]> {
  return fc.tuple(count(...corners), count(2, 6), between(0, 2 * Math.PI)).map(([points, waves, shift]) =>
    Array.from({ length: points }, (_, i) => (2 * Math.PI * i) / points).flatMap((t) => {
      const radius = middle + height * Math.sin(waves * t + shift);
      return [radius * Math.cos(t), radius * Math.sin(t)];
    }),
  );
}

/** A rough shore around the origin: at every halving of its steps the middle is moved by a share of what it was moved before. */
export function coastRing(halvings: number, roughness: number): fc.Arbitrary<number[]> {
  const points = 3 * 2 ** halvings;
  return many(share, [points, points]).map((shares) => {
    let used = 0;
    let radii = [0, 1, 2].map(() => 10 + 4 * shares[used++]);
    for (let k = 0, move = 3; k < halvings; k++, move *= roughness) {
      radii = radii.flatMap((r, i) => [
        r,
        (r + radii[(i + 1) % radii.length]) / 2 + move * (shares[used++] - 0.5),
      ]);
    }
    return radii.flatMap((r, i) => {
      const t = (2 * Math.PI * i) / radii.length;
      return [r * Math.cos(t), r * Math.sin(t)];
    });
  });
}

/** Points anywhere in a square, joined in the order drawn: a ring that crosses itself all over. */
export const scribbleRing = (points: Range, side: number): fc.Arbitrary<number[]> =>
  many(fc.tuple(between(0, side), between(0, side)), points).map((all) => all.flat());

// ── regions of one kind ──

/** A star without holes. */
export const stars = (corners: Range, radii: Range): fc.Arbitrary<CleanRegion> =>
  starRing(corners, radii).map((ring) => cleanFrom([ring]));

/** A nearly round star of many corners with up to four star-shaped holes. */
export const holedStars: fc.Arbitrary<CleanRegion> = fc
  .tuple(
    starRing([20, 200], [9, 10]),
    fc
      .subarray(
        [
          [3, 3],
          [-3, 3],
          [3, -3],
          [0, 0],
        ] as const,
        { minLength: 1 },
      )
      .chain((places) => fc.tuple(...places.map((at) => starRing([3, 20], [0.2, 1.4], at)))),
  )
  .map(([outer, holes]) => cleanFrom([outer], holes));

/** A simple polygon through random points of a square of 10 mm. */
export const untangled = (points: Range): fc.Arbitrary<CleanRegion> =>
  scribbleRing(points, 10)
    .map((ring) => cleanFrom([untangle(ring)]))
    // points that shrink onto one another or into one line make no simple ring
    .filter((region) => cleanRegionFaults(region).length === 0);

/** Unit cells of a grid with every cell corner kept: collinear points, level corridors, squares of touching discs everywhere. */
export const gridCells = (sides: Range, filled: Range): fc.Arbitrary<CleanRegion> =>
  fc
    .tuple(count(...sides), between(...filled))
    .chain(([side, density]) =>
      many(many(share, [side, side]), [side, side]).map((rows) =>
        rows.map((row) => row.map((s) => s > 1 - density)),
      ),
    )
    .filter((cells) => cells.some((row) => row.includes(true)))
    .map((cells) => {
      const [outers, holes] = cellRings(cells);
      return cleanFrom(outers, holes);
    });

/** A convex polygon: corners on an ellipse that is turned. */
export const convex: fc.Arbitrary<CleanRegion> = fc
  .tuple(many(between(0.1, 1), [3, 24]), between(1, 10), between(0, Math.PI))
  .map(([steps, breadth, turn]) => {
    const whole = steps.reduce((a, b) => a + b, 0);
    let t = 0;
    return cleanFrom([
      steps.flatMap((step) => {
        t += (2 * Math.PI * step) / whole;
        const [x, y] = [10 * Math.cos(t), breadth * Math.sin(t)];
        return [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)];
      }),
    ]);
  });

/** A spiky star, or a tangle undone. */
export const spiky: fc.Arbitrary<CleanRegion> = fc.oneof(stars([3, 18], [0.3, 10]), untangled([3, 12]));

/** A star with one to three holes of a few corners. */
export const holed: fc.Arbitrary<CleanRegion> = fc
  .tuple(
    starRing([6, 13], [7.5, 10]),
    share,
    count(1, 3).chain((holes) => many(starRing([3, 7], [0.3, 2]), [holes, holes])),
  )
  .map(([outer, turn, holes]) =>
    cleanFrom(
      [outer],
      holes.map((hole, k) => {
        const t = (2 * Math.PI * k) / 3 + turn;
        return hole.map((v, i) => v + 4 * (i % 2 === 0 ? Math.cos(t) : Math.sin(t)));
      }),
    ),
  );

/** A star hollowed to a wall from 1 mm down to 0.1 µm all round, and its mirror image as close beside it. */
export const nearTouching: fc.Arbitrary<CleanRegion> = fc
  .tuple(starRing([4, 9], [4, 10]), magnitude(-1, -5))
  .map(([outer, gap]) => {
    const right = Math.max(...outer.filter((_, i) => i % 2 === 0));
    const beside = (ring: readonly number[]): number[] =>
      ring.map((v, i) => (i % 2 === 0 ? 2 * right + 10 * gap - v : v));
    const thick = outer.map((v) => 0.6 * v);
    const thin = outer.map((v) => (1 - gap) * v);
    return cleanFrom([outer, beside(outer)], [thick, beside(thin)]);
  });

/** A comb: teeth of any width, gap and length on a back of 2 mm. */
export const teeth: fc.Arbitrary<CleanRegion> = many(
  fc.tuple(between(0.2, 2), between(0.2, 2), between(0.1, 8)),
  [1, 10],
).map((all) => {
  let x = 0;
  const edge = all.flatMap(([width, gap, length]) => {
    const from = x;
    x += width + gap;
    return [from, length, from + width, length, from + width, 0, x, 0];
  });
  return cleanFrom([[...edge, x, -2, 0, -2]]);
});

/** A ring between two flattened waves. */
export const curved: fc.Arbitrary<CleanRegion> = fc
  .tuple(waveRing([12, 90], 8.5, 1.2), waveRing([12, 60], 4.5, 1))
  .map(([outer, inner]) => cleanFrom([outer], [inner]));

/** Strokes from 1 mm down to 1 µm thin across each other, resolved. */
export const hairlines: fc.Arbitrary<CleanRegion> = many(
  fc.tuple(between(0, Math.PI), between(-4, 4), between(4, 10), magnitude(0, -3)),
  [1, 5],
).map((strokes) => {
  const rings = strokes.map(([turn, shift, half, width]) => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    return [
      [-half, shift],
      [half, shift],
      [half, shift + width],
      [-half, shift + width],
    ].flatMap(([x, y]) => [x * c - y * s, x * s + y * c]);
  });
  return resolveRegions([{ ...packRings(rings), fillRule: 'nonzero' }]).region;
});

/** Families of small polygons, each with its name. */
export const polygonFamilies: Readonly<Record<string, fc.Arbitrary<CleanRegion>>> = {
  spiky,
  holed,
  'near-touching': nearTouching,
  'grid-aligned': gridCells([1, 4], [0.45, 0.85]),
  convex,
  teeth,
  curved,
  hairlines,
};

/** Any polygon of the families. */
export const anyPolygon: fc.Arbitrary<CleanRegion> = fc.oneof(...Object.values(polygonFamilies));

/** Letters of the faces in fixtures/fonts, to be set by `lettered`. */
export const letters: fc.Arbitrary<{ text: string; face: string; capHeightMm: number }> = fc.record({
  text: fc.constantFrom(...'ARSag&8%?'),
  face: fc.constantFrom('lora-400.ttf', 'arvo-400.ttf', 'bodoni-moda-400.ttf', 'dancing-script-400.ttf'),
  capHeightMm: between(5, 30),
});

// ── drawings as they come, not yet clean ──

/** A kind of coordinate: how a whole number 0…4095 becomes mm. */
const LATTICES: Readonly<Record<string, (n: number) => number>> = {
  'free places': (n) => n * 0.002443,
  'whole numbers, so that edges overlap and vertices meet': (n) => n % 7,
  'whole numbers off by less than the grid': (n) => (n % 5) + ((n >> 4) - 128) * 4e-9,
  'thirds, far from the origin': (n) => 1e5 + (n % 8) / 3,
  'a few lines, so that many cross in one node': (n) => ((n % 3) - 1) * ((n >> 4) + 1),
};

/** Names of the kinds of random drawing. */
export const latticeNames: readonly string[] = Object.keys(LATTICES);

/** Random shapes of one to three rings with either fill rule: anything that can be drawn with lines. */
export function drawnShapes(lattice: string): fc.Arbitrary<Region[]> {
  const coordinate = fc.integer({ min: 0, max: 4095 }).map(LATTICES[lattice]!);
  const ring = fc
    .array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 12 })
    .map((points) => points.flat());
  const shape = fc
    .tuple(fc.array(ring, { minLength: 1, maxLength: 3 }), fc.constantFrom<FillRule>('nonzero', 'evenodd'))
    .map(([rings, fillRule]): Region => ({ ...packRings(rings), fillRule }));
  return fc.array(shape, { minLength: 1, maxLength: 4 });
}

/** Two to four rectangles on a grid, each corner off by nothing or by 1e-20 … 1e-5 mm: as drawings come that are flush but for rounding. */
export const flushRectangles: fc.Arbitrary<Region[]> = (() => {
  const off = fc.oneof(
    { weight: 3, arbitrary: fc.constant(0) },
    {
      weight: 7,
      arbitrary: fc.tuple(fc.constantFrom(1, -1), magnitude(-20, -5)).map(([sign, by]) => sign * by),
    },
  );
  const offs = fc.tuple(off, off, off, off, off, off, off, off);
  return fc
    .array(fc.tuple(count(-2, 1), count(-2, 1), count(1, 3), count(1, 3), offs), {
      minLength: 2,
      maxLength: 4,
    })
    .map((all) =>
      all.map(([x, y, width, height, by]): Region => {
        const [u, v] = [x + width, y + height];
        const ring = [x, y, u, y, u, v, x, v].map((c, i) => c + by[i]!);
        return { ...packRings([ring]), fillRule: 'nonzero' };
      }),
    );
})();

/** A star and itself squeezed towards a line beside it, by 1 mm to 1 nm: even-odd they leave slivers. */
export const nearlyEqualDrawings: fc.Arbitrary<Region> = fc
  .tuple(starRing([4, 9], [4, 10], [15, 0]), magnitude(-1, -7))
  .map(([drawn, by]) => {
    const squeezed = drawn.map((v, i) => (i % 2 === 0 ? v * (1 - by) : v));
    return { ...packRings([drawn, squeezed]), fillRule: 'evenodd' };
  });

// ── boards and jobs ──

/** Glue-ups of 320 × 320 mm, as a maker writes them. */
export const glueUps: fc.Arbitrary<string> = fc.oneof(
  count(9, 60).map((side) => `checkerboard 320x320x20mm maple walnut square:${side}mm`),
  fc
    .tuple(count(3, 30), count(3, 30), count(3, 30))
    .map(([a, b, c]) => `stripes 320x320x20mm maple:${a}mm walnut:${b}mm cherry:${c}mm`),
  fc
    .tuple(count(15, 60), count(7, 30))
    .map(([length, row]) => `brick 320x320x20mm maple walnut length:${length}mm row:${row}mm`),
);

/** Where an artwork of some 70 mm lies on such a board: middle and turn. */
export const places: fc.Arbitrary<Pick<JobFile, 'place' | 'turn'>> = fc
  .tuple(count(120, 200), count(120, 200), count(0, 359))
  .map(([x, y, turn]) => ({ place: `${x}mm,${y}mm`, turn: `${turn}deg` }));

/** Jobs that can be vetted: bits, depth, wood, seal, scale and number of boards. */
export const jobs: fc.Arbitrary<Partial<JobFile>> = fc.record(
  {
    bit: fc.subarray(['flat:1mm', 'flat:2mm', 'flat:1/8in', 'vee:60deg:1/2in', 'ball:2mm'], { minLength: 1 }),
    depth: fc.constantFrom('1mm', '2mm', '3mm', '1/8in'),
    grain: count(0, 359).map((deg) => `${deg}deg`),
    dive: count(0, 90).map((deg) => `${deg}deg`),
    wood: fc.constantFrom('cherry', 'maple', 'poplar', 'walnut'),
    seal: fc.constantFrom('none', 'shellac'),
    weigh: fc.constantFrom(...Object.keys(scales)),
    boards: count(1, 40),
    pigmentPct: between(0, 6),
    colour: fc.constantFrom(...(Object.keys(resinColours) as (keyof typeof resinColours)[])),
  },
  { requiredKeys: ['bit', 'weigh', 'boards', 'pigmentPct'] },
);
