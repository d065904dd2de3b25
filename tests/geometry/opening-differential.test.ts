import { erodedArea, medialAxis, openedArea, reachedArea } from '@pourproof/geometry';
import { perimeter } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { polygonFamilies, share } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { offsetPeers, PEER_GRID_MM } from '../support/oracles/offset-peers.ts';

const CASES = cases(150);
/** Largest distance between an arc and the chords that the engines put in its place, mm; artworks are about 20 mm across. */
const ARC_MM = 2e-3;
/** Their points are rounded to the grid once in the artwork, once in each offset and where edges cross. */
const SLACK_MM = 4 * PEER_GRID_MM;

const peers = await offsetPeers();

describe.each(Object.entries(polygonFamilies))('polygons, %s', (_, polygons) => {
  // E(r) are the points where a disc of radius r fits, and engines that use discs short by up to t = shortMm find an area between E(r) and E(r − t).
  // Their opening lies between E(r) grown by r − t and E(r − t) grown by r, which is the opening by r − t and at most a strip of t along an
  // outline no longer than the artwork's. Where a place is just as wide as the bit the two differ by a whole disc; elsewhere
  // by t times the perimeter.
  test.each(peers)('$name finds what ours allows it', (peer) => {
    const shortMm = peer.arcExcess * ARC_MM + SLACK_MM;
    let apart = 0;
    fc.assert(
      fc.property(polygons, share, (region, size) => {
        const axis = medialAxis(region);
        const largest = axis.nodeR.reduce((a, b) => Math.max(a, b), 0);
        const radius = Math.max(2 * shortMm, largest * size);
        const strip = shortMm * perimeter(region);
        const [eroded, opened] = peer.areas(region, radius, [0, radius], ARC_MM);
        const bounds = [
          [erodedArea(axis, radius + SLACK_MM), eroded, erodedArea(axis, radius - shortMm)],
          [
            reachedArea(axis, radius + SLACK_MM, radius - shortMm),
            opened,
            openedArea(axis, radius - shortMm) + strip,
          ],
        ] as const;
        for (const [low, found, high] of bounds) {
          expect(found, `radius ${radius}`).toBeGreaterThanOrEqual(low);
          expect(found, `radius ${radius}`).toBeLessThanOrEqual(high);
        }
        apart += Math.abs(opened - openedArea(axis, radius)) > strip ? 1 : 0;
      }),
      CASES,
    );
    // so few have a place just as wide as the bit that the brackets are narrow
    expect(apart).toBeLessThan(0.01 * CASES.numRuns);
  });
});
