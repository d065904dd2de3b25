import { resolveRegions } from '@pourproof/arrangement';
import { readSvg } from '@pourproof/artwork';
import { endGrainLength, erodedArea, medialAxis, openedArea, strokeWidths } from '@pourproof/geometry';
import { type CleanRegion, perimeter, radians, signedArea } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';

/** Same shapes, placed otherwise: what is measured must not care. Scale is the factor on lengths. */
const PLACEMENTS: readonly { readonly name: string; readonly transform: string; readonly scale: number }[] = [
  { name: 'as drawn', transform: '', scale: 1 },
  { name: 'turned by 17°', transform: 'rotate(17)', scale: 1 },
  { name: 'turned by 90°', transform: 'rotate(90)', scale: 1 },
  { name: 'mirrored', transform: 'scale(-1 1)', scale: 1 },
  { name: 'mirrored and turned by 201.3°', transform: 'rotate(201.3) scale(1 -1)', scale: 1 },
  { name: 'three times as large', transform: 'scale(3)', scale: 3 },
  { name: 'far from the origin', transform: 'translate(5000 -3000)', scale: 1 },
];

function region(shape: string, transform: string): CleanRegion {
  const { shapes } = readSvg(
    `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100"><g transform="${transform}">${shape}</g></svg>`,
  );
  return resolveRegions(shapes.map((each) => each.region)).region;
}

const BAR = '<path d="M0 0H30V4H0Z"/>';
const TRIANGLE_AREA = (Math.sqrt(3) / 4) * 400;

/** 80 − (4 − π) r²: every corner keeps a square less a quarter disc. */
const SLOT_AREA = 80 - (4 - Math.PI) * 1.5875 ** 2;

/** Shape, radius of the bit, closed form of the opened area; r stands for the radius. */
const OPENED: readonly (readonly [name: string, shape: string, radius: number, area: number])[] = [
  ['slot 20 × 4 by 3.175 mm', '<rect width="20" height="4"/>', 1.5875, SLOT_AREA],
  ['the same slot from its other corner, other way round', '<path d="M20 4V0H0V4Z"/>', 1.5875, SLOT_AREA],
  ['slot with points along its edges', '<path d="M0 0H3 7 20V1 4H11 0V2Z"/>', 1.5875, SLOT_AREA],
  ['disc of radius 5, itself', '<circle r="5"/>', 2, 25 * Math.PI],
  ['disc smaller than the bit, nothing', '<circle r="5"/>', 5.02, 0],
  [
    'ring of width 4, itself',
    '<path fill-rule="evenodd" d="M8 0A8 8 0 1 1-8 0 8 8 0 1 1 8 0ZM4 0A4 4 0 1 1-4 0 4 4 0 1 1 4 0Z"/>',
    1.9,
    48 * Math.PI,
  ],
  [
    'ring of width 4, too narrow',
    '<path fill-rule="evenodd" d="M8 0A8 8 0 1 1-8 0 8 8 0 1 1 8 0ZM4 0A4 4 0 1 1-4 0 4 4 0 1 1 4 0Z"/>',
    2.02,
    0,
  ],
  [
    'rounded rectangle 20 × 10 with corners of 2, itself',
    '<rect width="20" height="10" rx="2"/>',
    1.5,
    200 - (4 - Math.PI) * 4,
  ],
  // a corner of 60° keeps r² (cot 30° − π/3)
  [
    'triangle of side 20',
    `<path d="M0 0H20L10 ${10 * Math.sqrt(3)}Z"/>`,
    1.5,
    TRIANGLE_AREA - 3 * 2.25 * (Math.sqrt(3) - Math.PI / 3),
  ],
];

describe.each(PLACEMENTS)('$name', ({ transform, scale }) => {
  test.each(OPENED)('%s', (_name, shape, radius, area) => {
    const opened = openedArea(medialAxis(region(shape, transform)), radius * scale);
    // rounding for straight edges, and 0.02 % where a curve is flattened
    const bound = shape.includes('A') || /circle|rx/u.test(shape) ? 2e-4 * area : 1e-9 * Math.max(1, area);
    expect(Math.abs(opened / scale ** 2 - area)).toBeLessThanOrEqual(bound);
  });

  test('a bar of 30 × 4 shows the end grain that its directions say', () => {
    const bar = region(BAR, transform);
    // the direction of the bar's long side under this placement, from the bar itself
    const along = Math.atan2(-(bar.coords[3]! - bar.coords[1]!), bar.coords[2]! - bar.coords[0]!);
    const long = Math.hypot(bar.coords[2]! - bar.coords[0]!, bar.coords[3]! - bar.coords[1]!) > 5 * scale;
    const zero = long ? along : along + Math.PI / 2;
    for (const [deg, length] of [
      [0, 8],
      [90, 60],
      [30, 36.9282],
      [-30, 36.9282],
      [45, 48.08326],
      [180, 8],
    ] as const) {
      expect(endGrainLength(bar, zero + radians(deg)) / scale).toBeCloseTo(length, 5);
    }
  });

  test('a disc of radius 5 shows 4R = 20 at every angle', () => {
    const disc = region('<circle r="5"/>', transform);
    for (let deg = 0; deg < 360; deg += 7) {
      // the width of a polyline is off by at most the tolerance (scaled with the shape) at either end, and counts twice
      expect(Math.abs(endGrainLength(disc, radians(deg)) / scale - 20)).toBeLessThan(4 * 0.005);
    }
  });

  test('the mean over all directions is 2P/π (Cauchy), also with holes and notches', () => {
    const shape = '<path fill-rule="evenodd" d="M0 0H30V4H12V18H4V30H0ZM1 1H3V3H1Z"/>';
    const drawn = region(shape, transform);
    const steps = 3600;
    let sum = 0;
    for (let k = 0; k < steps; k++) {
      sum += endGrainLength(drawn, (Math.PI * k) / steps);
    }
    expect(sum / steps / ((2 * perimeter(drawn)) / Math.PI)).toBeCloseTo(1, 5);
  });

  test('Steiner: a 30 × 4 bar grown by 1 has A + Pr + πr², and shrinks back to the bar; the bar itself to 28 × 2', () => {
    const grown = region('<rect x="-1" y="-1" width="32" height="6" rx="1"/>', transform);
    expect(Math.abs(signedArea(grown) / scale ** 2 - 191.14159)).toBeLessThan(1e-5);
    // the same excess of length, 0.2 % of a full turn of radius 1
    expect(Math.abs(perimeter(grown) / scale - 74.28319)).toBeLessThan(0.0126);
    expect(Math.abs(erodedArea(medialAxis(grown), scale) / scale ** 2 - 120)).toBeLessThan(0.05);
    expect(erodedArea(medialAxis(region(BAR, transform)), scale) / scale ** 2).toBeCloseTo(56, 9);
  });

  test('the narrowest stroke of a bar is its width, of a ring its breadth', () => {
    expect(strokeWidths(medialAxis(region(BAR, transform))).narrowestMm! / scale).toBeCloseTo(4, 9);
    const ring = region(OPENED[5]![1], transform);
    expect(Math.abs(strokeWidths(medialAxis(ring)).narrowestMm! / scale - 4)).toBeLessThan(0.011);
  });
});

test('the order of shapes does not matter', () => {
  const shapes = ['<circle cx="9" cy="9" r="5"/>', '<rect x="7" y="2" width="20" height="5"/>', BAR];
  const areas = [shapes, shapes.toReversed()].map((list) =>
    openedArea(medialAxis(region(list.join(''), '')), 1),
  );
  expect(areas[0]).toBeCloseTo(areas[1]!, 9);
});
