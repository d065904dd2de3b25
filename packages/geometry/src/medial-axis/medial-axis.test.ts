import fc from 'fast-check';
import { expect, test } from 'vitest';
import { starRing } from '../../../../tests/arbitraries.ts';
import { cases } from '../../../../tests/support/lane.ts';
import { cleanFrom } from '../../../../tests/support/shapes/clean-from.ts';
import { medialAxis } from './medial-axis.ts';

test('the axis of a sound region is that of the region as it is, not of one without its seams', () => {
  fc.assert(
    fc.property(starRing([20, 40], [4, 12]), (ring) => {
      const region = cleanFrom([ring]);
      expect(medialAxis(region).region).toBe(region);
    }),
    cases(60),
  );
});
