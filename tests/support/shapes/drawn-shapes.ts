import { type FillRule, packRings, type Region } from '@pourproof/plane';
import fc from 'fast-check';

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
  const place = LATTICES[lattice]!;
  const coordinate = fc.integer({ min: 0, max: 4095 }).map(place);
  const ring = fc
    .array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 12 })
    .map((points) => points.flat());
  const shape = fc
    .tuple(fc.array(ring, { minLength: 1, maxLength: 3 }), fc.constantFrom<FillRule>('nonzero', 'evenodd'))
    .map(([rings, fillRule]): Region => ({ ...packRings(rings), fillRule }));
  return fc.array(shape, { minLength: 1, maxLength: 4 });
}
