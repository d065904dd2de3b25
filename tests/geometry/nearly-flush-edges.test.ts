import { resolveRegions } from '@pourproof/arrangement';
import { erodedArea, medialAxis } from '@pourproof/geometry';
import { packRings, type Region, signedArea } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flushRectangles } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';

/** Share of the area by which cells may fail to tile a region, as promised for every measure. */
const TILING = 1e-9;

/** Rings that once had no sound axis, each with why. */
const ONCE_WRONG: readonly (readonly [string, readonly (readonly number[])[]])[] = [
  [
    'a bottleneck over three edges that are straight but for rounding',
    [
      [
        -2, 6.311372383686741e-16, -1.0000013314637364, 4.4790195257140956e-7, -1, -1, 2, -1,
        1.9999999999998979, 1.0000000024263982, -1, 1, -1.00000266292628, 1, -2.0000000000002545, 1,
      ],
    ],
  ],
  [
    'walls parallel to 1e-8, on which the clearance rises by less than rounding',
    [
      [
        -2, 0, -1, 0, 1, 0, 1.0000000235360669, 1.0000007250222582, 1.0000000239626337, 2, 1, 4,
        2.7754030791737107e-14, 4, 9.250693981859812e-15, 2.000000004438079, -1, 2.0000000088761576, -1, 1,
        -1.9999999999999893, 1,
      ],
    ],
  ],
  [
    'a wall and a seam beside it, both in sight of one corner',
    [
      [
        -1.999999999440298, -2, 0, -2, -3.6172337723512995e-7, 0.9999999999959099, 0.9999999367860455,
        1.0000000000031415, 1.0000006361214544, 2.9999999999999774, -2.0000001988990457, 3, -2,
        0.9999993387239775, -2, 1,
      ],
    ],
  ],
  [
    'two pieces that touch in a point, with no room between their walls',
    [
      [
        -2.000000000001121, -1.0000000900554618, -3.0952688717993984e-20, -1, 1.0008986163635757e-14,
        -9.035014128344595e-18, -2, 0,
      ],
      [
        1.1291904171621576e-14, -1.000007264332101, 2, -1.0000024638391265, 2.000000000409466, 2,
        -0.0000013908428197378837, 2, 1.0008986163635757e-14, -9.035014128344595e-18,
      ],
    ],
  ],
  [
    'a short edge whose direction says more than its points do once they are moved to the middle',
    [
      [-0.9999999953579121, 1, 1, 1, 1, 4, -1, 4],
      [
        3, -0.9999999999999997, 3.000000000000002, 0, 2.000000018732093, 4.10161856658384e-10, 1, 0,
        2.678436575046203e-7, -7.752653694338323e-9, 0, -1, -2.617196812834714e-9, -2, 1.0000000000004456, -2,
        1.000000000000223, -0.9999999999999999, 1.000006223168224, -1, 2.000000004583554, -1,
      ],
    ],
  ],
  [
    'a disc that would stand in a corner straight but for 1e-6, where no disc fits',
    [[-2, 0, 0, 0, 5.000096936735505e-7, 5.120332147427565e-13, 1, 0, 1, 1, 0, 1, -2, 1]],
  ],
  [
    'the same with a bump of 3e-11 mm, which was off by 1.5e-7',
    [[-2, 0, 0, 0, 3.2e-6, 3.2e-11, 1, 0, 1, 1, 0, 1, -2, 1]],
  ],
];

function misfit(regions: readonly Region[]): number {
  const { region } = resolveRegions(regions);
  const area = signedArea(region);
  return Math.abs(erodedArea(medialAxis(region), 0) - area) / area;
}

describe('edges that are flush but for rounding', () => {
  test.each(ONCE_WRONG)('%s', (_, rings) => {
    expect(misfit([{ ...packRings(rings), fillRule: 'nonzero' }])).toBeLessThan(TILING);
  });

  test('rectangles with corners off by 1e-20 to 1e-5 mm', () => {
    fc.assert(
      fc.property(flushRectangles, (drawing) => {
        expect(misfit(drawing)).toBeLessThan(TILING);
      }),
      cases(1500),
    );
  });
});
