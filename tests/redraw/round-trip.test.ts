import { resolveRegions } from '@pourproof/arrangement';
import { readDxf, readSvg } from '@pourproof/artwork';
import {
  type CleanRegion,
  type Drawing,
  packRings,
  perimeter,
  type Rings,
  ringCoords,
  ringsBounds,
  scaling,
  signedArea,
  type Transform,
  transformRings,
  translation,
} from '@pourproof/plane';
import {
  dxfFile,
  fittedShapes,
  type Joins,
  offsetRegion,
  roundedCorners,
  roundedTips,
  svgFile,
} from '@pourproof/redraw';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyPolygon, between, magnitude } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { offOutline } from '../support/oracles/off-outline.ts';

const CHORD_MM = 0.0005;
const FIT_MM = 0.004;
const PROMISED_MM = 0.005;
/** Files are read so finely here that their own deviation shows. */
const READ_MM = CHORD_MM / 2;

const JOINS: readonly Joins[] = ['round', 'mitre', 'bevel'];
const change = fc.record({
  by: between(-1.5, 1.5),
  keepMm: between(0, 0.8),
  joins: fc.constantFrom(...JOINS),
  radius: between(0, 1),
});

function changed(
  region: CleanRegion,
  { by, keepMm, joins, radius }: { by: number; keepMm: number; joins: Joins; radius: number },
): CleanRegion {
  const moved = offsetRegion(region, by, { keepMm, joins, toleranceMm: CHORD_MM }).region;
  return roundedTips(roundedCorners(moved, radius / 2, CHORD_MM).region, radius, CHORD_MM).region;
}

const wholeOf = ({ shapes }: Drawing): CleanRegion =>
  resolveRegions(shapes.map(({ region }) => region)).region;
/** All outlines as they are in a file: where two lie nearer than the tolerance, fitted ones may cross. */
const ringsOf = ({ shapes }: Drawing): Rings =>
  packRings(shapes.flatMap(({ region }) => Array.from(region.ringEnds, (_, k) => ringCoords(region, k))));

function expectSame(back: Drawing, moved: Transform, written: CleanRegion): void {
  const share = Math.max(1e-4 * Math.abs(signedArea(written)), 1e-5 * perimeter(written));
  expect(Math.abs(signedArea(wholeOf(back)) - signedArea(written))).toBeLessThan(share);
  const outlines = transformRings(moved, ringsOf(back));
  expect(offOutline(outlines.coords, written)).toBeLessThan(PROMISED_MM);
  expect(offOutline(written.coords, outlines)).toBeLessThan(PROMISED_MM);
}

test('out and in again, whatever is drawn and changed is what it was, tiny or huge', () => {
  fc.assert(
    fc.property(anyPolygon, change, magnitude(-0.7, 1.5), (drawn, how, scale) => {
      const region = resolveRegions([
        { ...transformRings(scaling(scale), drawn), fillRule: 'nonzero' },
      ]).region;
      const written = changed(region, how);
      fc.pre(written.ringEnds.length > 0);
      const [minX, minY, , maxY] = ringsBounds(written);
      const { shapes, offMm } = fittedShapes(written, { chordMm: CHORD_MM, fitMm: FIT_MM });
      expect(offMm).toBeLessThanOrEqual(FIT_MM);
      const group = { id: 'blue', title: 'blue', colour: '#1f4e79', shapes };
      const file = { title: 'random', mark: 'test', boundsMm: ringsBounds(written), groups: [group] };
      const svg = readSvg(Buffer.from(svgFile(file)), { toleranceMm: READ_MM });
      expectSame(svg, translation(minX, minY), written);
      const dxf = readDxf(Buffer.from(dxfFile(file)), { toleranceMm: READ_MM });
      // outlines within a micrometre of each other count as one there, and that is told
      fc.pre(!dxf.notices.some(({ code }) => code.includes('doubled')));
      // zero is the lower left corner there
      expectSame(dxf, translation(minX, maxY), written);
    }),
    { ...cases(6), endOnFailure: true },
  );
});
