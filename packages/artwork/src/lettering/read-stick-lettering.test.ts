import {
  boundsOf,
  type Drawing,
  EMPTY_BOUNDS,
  joinBounds,
  type Region,
  ringArea,
  ringsBounds,
} from '@pourproof/plane';
import { expect, test } from 'vitest';
import { readStickLettering, type StickLetteringOptions } from './read-stick-lettering.ts';
import { type StickStroke, stickLetter } from './stick-alphabet.ts';
import { sweptStroke } from './swept-stroke.ts';

const ALPHABET = [
  ...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789ßØøıȷ',
  ...'. , : ; ! ? - ‐ – — & \' ’ ‘ " “ ” ( ) / + = × · ° _ *'.split(' '),
  ...['é', 'À', 'ñ', 'ü', 'Å', 'ç', 'ő', 'ǎ', 'ṇ', 'î', 'ă', 'ė', 'ā', 'ḏ'],
];

/** Points all along a stroke, by turning each chord's arc about its centre in 300 steps. */
function centreLine(stroke: StickStroke): [number, number][] {
  const points: [number, number][] = [[stroke.x, stroke.y]];
  let [px, py] = [stroke.x, stroke.y];
  for (const { x, y, turn } of stroke.steps) {
    for (let i = 1; i <= 300; i++) {
      const t = i / 300;
      if (turn === 0) {
        points.push([px + t * (x - px), py + t * (y - py)]);
      } else {
        // a chord of the arc that has turned by t·turn: length and direction by the tangent–chord angle
        const length = (Math.hypot(x - px, y - py) * Math.sin((t * turn) / 2)) / Math.sin(turn / 2);
        const angle = Math.atan2(y - py, x - px) - turn / 2 + (t * turn) / 2;
        points.push([px + length * Math.cos(angle), py + length * Math.sin(angle)]);
      }
    }
    [px, py] = [x, y];
  }
  return points;
}

/** Winding number of the rings about a point. */
function winding(rings: readonly number[][], x: number, y: number): number {
  let sum = 0;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [ax, ay, bx, by] = [ring[i]! - x, ring[i + 1]! - y, ring[j]! - x, ring[j + 1]! - y];
      if (ay <= 0 !== by <= 0 && ax * by - ay * bx > 0 === by > 0) {
        sum += by > 0 ? 1 : -1;
      }
    }
  }
  return sum;
}

const WIDTH = 1.1;

test.each(ALPHABET)(
  'the letter %s is all that lies within half a stroke of its centre lines, and no more',
  (char) => {
    const strokes = stickLetter(char)!;
    const rings = strokes.flatMap((stroke) => sweptStroke(stroke, [1, 0, 0, 1, 0, 0], WIDTH, 0.002));
    for (const ring of rings) {
      expect(ringArea(ring)).toBeGreaterThan(0);
    }
    const line = strokes.flatMap(centreLine);
    const [minX, minY, maxX, maxY] = rings.map((ring) => boundsOf(ring)).reduce(joinBounds, EMPTY_BOUNDS);
    for (let i = 0; i < 150; i++) {
      // a spread of points by the golden ratio and its square, the same on every run
      const x = minX - 0.5 + (maxX - minX + 1) * ((i * 0.6180339887) % 1);
      const y = minY - 0.5 + (maxY - minY + 1) * ((i * 0.7548776662) % 1);
      const distance = Math.min(...line.map(([px, py]) => Math.hypot(px - x, py - y)));
      // points on the very edge are left out: the steps and the tolerance move it by less than 0.01
      if (Math.abs(distance - WIDTH / 2) > 0.01) {
        expect(winding(rings, x, y) !== 0, `${x} ${y}`).toBe(distance < WIDTH / 2);
      }
    }
  },
);

test('a bit that covers the middle of an arc sweeps it too', () => {
  const ring = { x: 1, y: 0, steps: [{ x: -1, y: 0, turn: Math.PI }] };
  const rings = sweptStroke(ring, [1, 0, 0, 1, 0, 0], 3, 0.001);
  const line = centreLine(ring);
  for (let i = 0; i < 150; i++) {
    const [x, y] = [-3 + 6 * ((i * 0.6180339887) % 1), -3 + 6 * ((i * 0.7548776662) % 1)];
    const distance = Math.min(...line.map(([px, py]) => Math.hypot(px - x, py - y)));
    if (Math.abs(distance - 1.5) > 0.01) {
      expect(winding(rings, x, y) !== 0).toBe(distance < 1.5);
    }
  }
});

test('straight strokes have the area of a slot: length × width and a disc', () => {
  const { shapes } = readStickLettering('I', { capHeightMm: 20, strokeMm: 2 });
  expect(ringArea(shapes[0]!.region.coords)).toBeCloseTo(18 * 2 + Math.PI, 9);
  const dot = readStickLettering('I.', { capHeightMm: 20, strokeMm: 2 }).shapes[1]!;
  expect(ringArea(dot.region.coords)).toBeCloseTo(Math.PI, 9);
});

const box = (drawing: Drawing) =>
  drawing.shapes.map((s) => ringsBounds(s.region)).reduce(joinBounds, EMPTY_BOUNDS);

test.each(['H', 'O', 'SURF', 'C'])(
  'capitals of %s are as tall as asked for over all, at the origin',
  (text) => {
    const [minX, minY, , maxY] = box(
      readStickLettering(text, { capHeightMm: 20, strokeMm: 1.5, toleranceMm: 0.001 }),
    );
    expect(Math.abs(minX)).toBeLessThan(0.001);
    expect(Math.abs(minY)).toBeLessThan(0.001);
    expect(Math.abs(maxY - 20)).toBeLessThan(0.001);
  },
);

test('the widest line is as wide as asked for, over all', () => {
  const options = { widthMm: 90, strokeMm: 2, trackingMm: 0.7, toleranceMm: 0.001 };
  const [minX, , maxX] = box(readStickLettering('Oak\nboards', options));
  expect(Math.abs(minX)).toBeLessThan(0.001);
  expect(Math.abs(maxX - 90)).toBeLessThan(0.001);
});

test('letters keep apart by the same room whatever the stroke', () => {
  const gap = (strokeMm: number): number => {
    const { shapes } = readStickLettering('HH', { capHeightMm: 12 + strokeMm, strokeMm, toleranceMm: 1e-5 });
    const [a, b] = shapes.map((s) => ringsBounds(s.region));
    return b![0] - a![2];
  };
  // round ends are flattened within 0.01 µm
  expect(gap(0.5)).toBeCloseTo(2.5, 4);
  expect(gap(1.5)).toBeCloseTo(2.5, 4);
});

test('letters on an arc are the same letters', () => {
  const areaOf = (region: Region): number => ringArea(region.coords, 0, region.ringEnds[0]);
  const options: StickLetteringOptions = { capHeightMm: 10, strokeMm: 1 };
  const straight = readStickLettering('round', options).shapes;
  const bent = readStickLettering('round', { ...options, arc: { radiusMm: 50 } }).shapes;
  bent.forEach((shape, i) => {
    expect(areaOf(shape.region)).toBeCloseTo(areaOf(straight[i]!.region), 9);
  });
});

test('small i and j lose their dot under an accent, capitals take it higher', () => {
  expect(stickLetter('í')).toHaveLength(2);
  expect(stickLetter('i')).toHaveLength(2);
  const top = (char: string): number => Math.max(...stickLetter(char)!.map((s) => s.y));
  expect(top('É') - top('é')).toBe(4);
});

test.each(['ê', 'Ê', 'ü', 'ẑ', 'ṇ', 'Ā'])(
  'the accent of %s stands over or under the middle of its letter',
  (char) => {
    const middleOf = (strokes: readonly StickStroke[]): number => {
      const xs = strokes.flatMap((s) => [s.x, ...s.steps.map((step) => step.x)]);
      return (Math.min(...xs) + Math.max(...xs)) / 2;
    };
    const plain = stickLetter(char.normalize('NFD')[0]!)!;
    const accent = stickLetter(char)!.slice(plain.length);
    expect(accent.length).toBeGreaterThan(0);
    expect(middleOf(accent)).toBeCloseTo(middleOf(plain), 12);
  },
);

test.each([
  ['木', 'missing-glyph', '"木" (U+6728) in line 1'],
  ['a\n@', 'missing-glyph', '"@" (U+0040) in line 2'],
  ['constructor\u0000', 'missing-glyph', '(U+0000)'],
  ['  ', 'lettering-blank', 'no visible character'],
])('%j is refused with a remedy', (text, code, message) => {
  expect(() => readStickLettering(text, { capHeightMm: 20, strokeMm: 1 })).toThrow(
    expect.objectContaining({
      code,
      message: expect.stringContaining(message),
      remedy: expect.stringMatching(/./),
    }),
  );
});

test.each([
  [{ capHeightMm: 10, strokeMm: 1.5 }, 'lettering-stroke'],
  [{ capHeightMm: 2, strokeMm: 3 }, 'lettering-stroke'],
  [{ widthMm: 5, strokeMm: 1 }, 'lettering-stroke'],
] as const)('strokes too wide for the letters are refused: %j', (options, code) => {
  expect(() => readStickLettering('mind', options)).toThrow(expect.objectContaining({ code }));
});

test.each([
  { capHeightMm: 20, strokeMm: 0 },
  { capHeightMm: 20, strokeMm: Number.NaN },
  { capHeightMm: 20, strokeMm: 1, toleranceMm: 0 },
  { strokeMm: 1 },
  { capHeightMm: 20, widthMm: 30, strokeMm: 1 },
])('%j is a misuse', (options) => {
  expect(() => readStickLettering('a', options)).toThrow(RangeError);
});

test.each(['I', ' I', 'I ', '. \n!', '\tI'])('%j has no width to be sized by', (text) => {
  expect(() => readStickLettering(text, { widthMm: 20, strokeMm: 1 })).toThrow(
    expect.objectContaining({ code: 'lettering-size', remedy: expect.stringContaining('cap height') }),
  );
});

test('two upright strokes have the width between them', () => {
  const [minX, , maxX] = box(readStickLettering('II', { widthMm: 8, strokeMm: 1, toleranceMm: 1e-4 }));
  expect(maxX - minX).toBeCloseTo(8, 3);
});
