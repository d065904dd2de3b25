import { boundsOf, type Drawing, packRings, signedArea, textInUnits } from '@pourproof/plane';
import { expect, test } from 'vitest';
import type { Finding, FindingPlace } from '../report/finding-schema.ts';
import { changedDrawing } from './changed-drawing.ts';

const rectangle = (x: number, y: number, width: number, height: number): number[] => [
  ...[x, y, x + width, y, x + width, y + height, x, y + height],
];

function drawn(shapes: readonly (readonly [colour: string, ring: readonly number[]])[]): Drawing {
  return {
    format: 'svg',
    scaleSource: textInUnits('made by a test'),
    toleranceMm: 0.005,
    notices: [],
    shapes: shapes.map(([colour, ring], k) => ({
      region: { ...packRings([ring]), fillRule: 'nonzero' },
      layer: '',
      colour,
      source: `shape ${k}`,
    })),
  };
}

const found = (limit: Finding['limit'], ...where: FindingPlace[]): Finding => ({
  code: 'colours-touch',
  severity: 'stop',
  where,
  measured: { ...limit, value: 0 },
  limit,
  because: ['own-inference'],
  fix: { options: [] },
});
const MM: Finding['limit'] = { value: 1, quantity: 'width', unit: 'mm' };
const boundsIn = (drawing: Drawing | null): readonly (readonly number[])[] =>
  (drawing?.shapes ?? []).map(({ region }) => [...boundsOf(region.coords)].map((v) => Number(v.toFixed(6))));

test('of two colours side by side the later of the alphabet gives way by the wall, the first stays whole', () => {
  const contact: FindingPlace = {
    atMm: [20, 10],
    outline: [
      [
        [20, 0],
        [20, 20],
      ],
    ],
    what: 'contact',
  };
  const sides = [
    ['#000000', rectangle(0, 0, 20, 20)],
    ['#ff0000', rectangle(20, 0, 20, 20)],
  ] as const;
  for (const shapes of [sides, sides.toReversed()]) {
    const before = drawn(shapes);
    const parted = changedDrawing(
      before,
      { do: 'part-by-wall', widthMm: 2, clears: true },
      found(MM, contact),
    );
    const [black, red] = (parted?.shapes ?? []).toSorted((a, b) => (a.colour < b.colour ? -1 : 1));
    expect(boundsOf(black?.region.coords ?? [])).toEqual([0, 0, 20, 20]);
    expect(signedArea(black?.region ?? packRings([]))).toBeCloseTo(400, 9);
    expect(boundsOf(red?.region.coords ?? [])).toEqual([22, 0, 40, 20]);
    expect(signedArea(red?.region ?? packRings([]))).toBeCloseTo(18 * 20, 9);
  }
});

test('what is widened is widened at the place alone, as far as the limit reaches around it', () => {
  const slot = drawn([['#000000', rectangle(0, 0, 40, 1)]]);
  const end: FindingPlace = { atMm: [40, 0.5], outline: [], what: 'tip' };
  const wider = changedDrawing(
    slot,
    { do: 'widen', what: 'stroke', byMm: 0.4, clears: true },
    found(MM, end),
  );
  // half of it on each side: of the edges within 1.4 mm of the end, which are all but the far end
  expect(boundsIn(wider)).toEqual([[0, -0.2, 40.2, 1.2]]);
  const narrower = changedDrawing(
    slot,
    { do: 'widen', what: 'wood', byMm: 0.4, clears: true },
    found(MM, end),
  );
  expect(boundsIn(narrower)).toEqual([[0, 0.2, 39.8, 0.8]]);
});

test('where the limit is no length, the place says how far its walls are, or else the change itself', () => {
  const slot = drawn([['#000000', rectangle(0, 0, 40, 6)]]);
  const share: Finding['limit'] = { value: 50, quantity: 'share', unit: '%' };
  const middle: FindingPlace = { atMm: [20, 3], outline: [], what: 'stroke' };
  const widened = (place: FindingPlace) =>
    boundsIn(
      changedDrawing(slot, { do: 'widen', what: 'stroke', byMm: 0.4, clears: true }, found(share, place)),
    );
  expect(widened(middle)).toEqual([[0, 0, 40, 6]]);
  expect(widened({ ...middle, widthMm: 6 })).toEqual([[0, -0.2, 40, 6.2]]);
  // twice the change around a place near a wall that tells no width
  expect(widened({ ...middle, atMm: [20, 5.3] })).toEqual([[0, 0, 40, 6.2]]);
});

test('a change that takes a maker’s eye is none here', () => {
  const square = drawn([['#000000', rectangle(0, 0, 20, 20)]]);
  expect(changedDrawing(square, { do: 'redraw-ends', clears: true }, found(MM))).toBeNull();
});
