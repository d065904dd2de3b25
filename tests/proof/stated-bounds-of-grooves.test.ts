import fc from 'fast-check';
import { test } from 'vitest';
import { between } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import {
  circle,
  DEPTH_MM,
  expectWithin,
  reportOn,
  sized,
  type Truth,
  tolerance,
} from '../support/within-bounds.ts';

/** A groove along a circle, as wide as its ring: by Pappus its figures are those of its section times the way of the section's middle. */
interface Groove {
  readonly bit: string;
  readonly widthMm: number;
  /** Area of the section, and width of its floor at the depth of the job. */
  readonly sectionMm2: number;
  readonly floorMm: number;
  readonly deepMm: number;
  /** Length of both walls in the section; undefined where what the tip leaves on the ground counts with them. */
  readonly wallsMm?: number;
}

const width = sized(0.6, 4);

/** Down to the depth of the job, or to where both flanks meet over a tip of some width. */
const vees = fc
  .tuple(width, fc.integer({ min: 20, max: 120 }), fc.oneof(fc.constant(0), between(0.05, 0.9)))
  .map(([widthMm, deg, share]): Groove => {
    const tip = Math.floor(share * widthMm * 100) / 100;
    const half = (deg * Math.PI) / 360;
    const slope = Math.tan(half);
    const deepMm = Math.min(DEPTH_MM, (widthMm - tip) / 2 / slope);
    return {
      bit: `vee:${deg}deg:40mm${tip > 0 ? `:tip ${tip}mm` : ''}`,
      widthMm,
      sectionMm2: (widthMm - deepMm * slope) * deepMm,
      floorMm: deepMm < DEPTH_MM ? 0 : widthMm - 2 * DEPTH_MM * slope,
      deepMm,
      ...(tip === 0 ? { wallsMm: (2 * deepMm) / Math.cos(half) } : {}),
    };
  });

/** Balls that go in to more than their radius, and so leave a quarter of a circle on either side. */
const balls = fc.tuple(width, between(0.2, 0.9)).map(([widthMm, share]): Groove => {
  const r = Math.min((share * widthMm) / 2, 0.95 * DEPTH_MM);
  return {
    bit: `ball:${2 * r}mm`,
    widthMm,
    sectionMm2: widthMm * DEPTH_MM - 2 * r * r * (1 - Math.PI / 4),
    floorMm: widthMm - 2 * r,
    deepMm: DEPTH_MM,
    wallsMm: 2 * ((Math.PI / 2) * r + DEPTH_MM - r),
  };
});

test('grooves of a V, of a blunt V and of a ball along a circle are within the bounds', () => {
  fc.assert(
    fc.property(
      fc.oneof(vees, balls),
      sized(5, 60),
      tolerance,
      between(0, 360),
      (groove, middle, toleranceMm, turnDeg) => {
        const { bit, widthMm, sectionMm2, floorMm, deepMm, wallsMm } = groove;
        const way = 2 * Math.PI * middle;
        const truth: Partial<Truth> = {
          areaMm2: way * widthMm,
          leftStandingMm2: 0,
          volumeMm3: way * sectionMm2,
          floorAreaMm2: way * floorMm,
          wallLengthMm: 2 * way,
          maxDepthMm: deepMm,
          lengthNarrowerThanBitMm: 0,
          ...(wallsMm === undefined ? {} : { wallAreaMm2: way * wallsMm }),
        };
        const path = circle(middle + widthMm / 2) + circle(middle - widthMm / 2);
        const drawn = { path, bit, toleranceMm, turnDeg };
        expectWithin(reportOn(drawn), truth, drawn);
      },
    ),
    cases(3),
  );
});
