import { booleans, resolveRegions } from '@pourproof/arrangement';
import { readArtwork } from '@pourproof/artwork';
import { type CleanRegion, packRings, perimeter, type Rings, ringCoords, signedArea } from '@pourproof/plane';
import ClipperLib from 'clipper-lib';
import { artworkFile, type JobInput, type Source } from 'pourproof';
import { expect, test } from 'vitest';

/** Whole numbers of the other engine to a millimetre. */
const PER_MM = 1e5;
const FINE_MM = 0.00025;
/** What is written lies within 5 µm of what is cut, and so does the other engine, for the chords of its arcs. */
const APART_MM = 0.005;

type Paths = { X: number; Y: number }[][];

const drawn = (body: string): Source => ({
  kind: 'file',
  name: 'drawn.svg',
  bytes: Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">${body}</svg>`,
  ),
});
const CASES: readonly (readonly [name: string, body: string, bitMm: number])[] = [
  ['a star', '<path d="M30 3L36 15L50 14L40 23L46 37L30 29L14 37L20 23L10 14L24 15Z"/>', 3],
  [
    'curves with a slot and an island',
    '<path fill-rule="evenodd" d="M5 20C5 -5 55 -5 55 20S30 45 5 20ZM20 14H40V26H20ZM24 18H30V22H24Z"/><path d="M5 36H55V38.4H5Z"/>',
    2.5,
  ],
];

test.each(CASES)(
  'of %s, cut and left-over are what another engine makes of the drawing',
  async (_name, body, bitMm) => {
    const job: JobInput = { bit: [`flat:${bitMm}mm`] };
    const [whole, cut, left] = await Promise.all(
      (['drawn', 'cut', 'left'] as const).map(async (part) => {
        const { text } = await artworkFile(drawn(body), job, { format: 'svg', part });
        return readBack(text);
      }),
    );
    const opened = fromPaths(offset(offset(toPaths(whole!), -bitMm / 2), bitMm / 2));
    const standing = booleans(whole!, opened, 'subtract');
    for (const [ours, theirs] of [
      [cut!, opened],
      [left!, standing],
    ] as const) {
      const outlineMm = perimeter(theirs);
      expect(signedArea(theirs)).toBeGreaterThan(1);
      // nowhere thicker than both may be off
      expect(signedArea(booleans(ours, theirs, 'xor'))).toBeLessThan(APART_MM * outlineMm);
      expect(Math.abs(signedArea(ours) - signedArea(theirs))).toBeLessThan((APART_MM / 4) * outlineMm);
    }
    // together they are the drawing, and share nothing
    expect(Math.abs(signedArea(cut!) + signedArea(left!) - signedArea(whole!))).toBeLessThan(
      1e-4 * signedArea(whole!),
    );
  },
);

function readBack(text: string): CleanRegion {
  const { shapes } = readArtwork(Buffer.from(text), 'out.svg', { toleranceMm: FINE_MM });
  return resolveRegions(shapes.map(({ region }) => region)).region;
}

function toPaths(rings: Rings): Paths {
  return Array.from(rings.ringEnds, (_, k) => {
    const ring = ringCoords(rings, k);
    return Array.from({ length: ring.length / 2 }, (_, i) => ({
      X: Math.round(ring[2 * i]! * PER_MM),
      Y: Math.round(ring[2 * i + 1]! * PER_MM),
    }));
  });
}

function offset(paths: Paths, byMm: number): Paths {
  const engine = new ClipperLib.ClipperOffset(2, FINE_MM * PER_MM);
  engine.AddPaths(paths, ClipperLib.JoinType.jtRound, ClipperLib.EndType.etClosedPolygon);
  const moved: Paths = [];
  engine.Execute(moved, byMm * PER_MM);
  return moved;
}

function fromPaths(paths: Paths): CleanRegion {
  const rings = paths.map((path) => path.flatMap(({ X, Y }) => [X / PER_MM, Y / PER_MM]));
  return resolveRegions([{ ...packRings(rings), fillRule: 'evenodd' }]).region;
}
