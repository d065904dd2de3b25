import { medialAxis } from '@pourproof/geometry';
import { type CleanRegion, ringArea, ringCoords } from '@pourproof/plane';
import { expect } from 'vitest';
import { axisFaults } from './medial-axis-faults.ts';

/** Expects the region's medial axis to meet the definition; of a large one at most `nodeLimit` nodes are looked at by brute force. */
export function expectSound(region: CleanRegion, name: string, nodeLimit = 2000): void {
  const faults = axisFaults(medialAxis(region), nodeLimit);
  let loops = 0;
  for (let k = 0; k < region.ringEnds.length; k++) {
    loops += Math.sign(ringArea(ringCoords(region, k)));
  }
  // nodes are solved from three sites at once: rounding of a few hundred units at most, where bisectors meet flatly
  expect(faults.emptiness, `${name}: discs are empty`).toBeLessThan(1e-9);
  expect(faults.touching, `${name}: discs touch their sites`).toBeLessThan(1e-9);
  expect(Math.abs(faults.tiling), `${name}: cells tile the region`).toBeLessThan(1e-9);
  expect(faults.fall, `${name}: clearance rises along edges`).toBeLessThan(1e-9);
  expect(faults.unlinked, `${name}: half-edges are linked`).toBe(0);
  expect(faults.euler, `${name}: one loop for each hole`).toBe(loops);
}
