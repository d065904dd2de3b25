import { resolveRegions } from '@pourproof/arrangement';
import { medialAxis } from '@pourproof/geometry';
import { type CleanRegion, signedArea } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nearlyEqualDrawings } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { axisFaults } from '../support/oracles/medial-axis-faults.ts';
import { cleanFrom } from '../support/shapes/clean-from.ts';

/** Where walls meet at an angle as small as 1e-7 rad, rounding of coordinates of some 10 mm moves their bisector's ends by 1e-15 / 1e-7. */
const END_MM = 1e-7;

function expectSoundSliver(region: CleanRegion, name: string): void {
  const faults = axisFaults(medialAxis(region));
  const size = Math.sqrt(signedArea(region));
  expect(faults.emptiness * size, `${name}: discs are empty`).toBeLessThan(END_MM);
  expect(faults.touching * size, `${name}: discs touch their sites`).toBeLessThan(END_MM);
  expect(faults.fall * size, `${name}: clearance rises along edges`).toBeLessThan(END_MM);
  expect(Math.abs(faults.tiling), `${name}: cells tile the region`).toBeLessThan(1e-8);
  expect(faults.unlinked, `${name}: half-edges are linked`).toBe(0);
}

test('a sliver 0.6 nm thin at its waist and 20 mm long has its bottleneck', () => {
  const sliver = [
    [9.0478026056496, 4.801917231175925],
    [15.831504234677077, 4.846862730081017],
    [21.15169581287896, 6.845858814758976],
    [21.151580282560538, 6.846604362561354],
    [15.830289103953309, 4.846862730081017],
    [9.047715026247852, 4.801917231175925],
    [8.520897516081458, -2.1243828255740786],
  ];
  expectSoundSliver(cleanFrom([sliver.flat()]), 'sliver');
});

test('slivers that two nearly equal drawings leave have sound axes', () => {
  fc.assert(
    fc.property(nearlyEqualDrawings, (drawing) => {
      expectSoundSliver(resolveRegions([drawing]).region, 'slivers');
    }),
    cases(1000),
  );
});
