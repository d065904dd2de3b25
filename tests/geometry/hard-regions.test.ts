import { resolveRegions } from '@pourproof/arrangement';
import { type CleanRegion, packRings, transformRings } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coastRing, gridCells, holedStars, one, scribbleRing, share, starRing } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import { expectSound } from '../support/oracles/expect-sound.ts';
import { cleanFrom, rectangle, regular } from '../support/shapes/clean-from.ts';

/** What any drawing comes to when its rings are resolved by a fill rule. */
function resolved(rings: readonly (readonly number[])[], fillRule: 'nonzero' | 'evenodd'): CleanRegion {
  return resolveRegions([{ ...packRings(rings), fillRule }]).region;
}

/** The snowflake of von Koch after so many steps: 3 · 4^steps edges, each a third as long as those of the step before. */
function snowflake(steps: number, radius: number): number[] {
  let ring = regular(3, radius, 0, 0, 0.1);
  for (let step = 0; step < steps; step++) {
    const next: number[] = [];
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [dx, dy] = [(ring[j] - ring[i]) / 3, (ring[j + 1] - ring[i + 1]) / 3];
      const [ax, ay] = [ring[i] + dx, ring[i + 1] + dy];
      // the tip lies on the right of the way, outside
      const tip = [ax + dx / 2 + (Math.sqrt(3) / 2) * dy, ay + dy / 2 - (Math.sqrt(3) / 2) * dx];
      next.push(ring[i], ring[i + 1], ax, ay, ...tip, ax + dx, ay + dy);
    }
    ring = next;
  }
  return ring;
}

describe('the medial axis meets its definition', () => {
  test('on regular polygons', () => {
    for (const corners of [3, 4, 5, 6, 8, 12, 60, 360, 1000]) {
      for (const turn of [0, 0.1, Math.PI / corners]) {
        expectSound(cleanFrom([regular(corners, 5, 1e3, -7, turn)]), `${corners} corners`);
      }
    }
  });

  test('on holes and points of one circle around its middle', () => {
    const holes = Array.from({ length: 24 }, (_, k) => {
      const t = (2 * Math.PI * k) / 24;
      return regular(8, 0.6, 6 * Math.cos(t), 6 * Math.sin(t), t);
    });
    expectSound(cleanFrom([regular(48, 9)], holes), 'holes around');
    expectSound(cleanFrom([regular(48, 9)], [...holes, regular(24, 3)]), 'holes around a hole');
  });

  test('on parallel walls: combs of slots, frames in frames, stairs', () => {
    const slots = Array.from({ length: 40 }, (_, k) => rectangle(1 + k, 1, 0.5, 8 + (k % 3)));
    expectSound(cleanFrom([rectangle(0, 0, 41, 12)], slots), 'slots');
    const frames = Array.from({ length: 12 }, (_, k) => rectangle(k, k, 40 - 2 * k, 40 - 2 * k));
    expectSound(
      cleanFrom(
        frames.filter((_, k) => k % 2 === 0),
        frames.filter((_, k) => k % 2 === 1),
      ),
      'frames',
    );
    const stairs = Array.from({ length: 60 }, (_, k) => [k, k, k + 1, k]).flat();
    expectSound(cleanFrom([[...stairs, 60, 60, 60, 63, -3, 63, -3, 0]]), 'stairs');
  });

  test('on runs that are straight but for rounding, and bent by less than can be seen', () => {
    for (const bend of [0, 1e-13, 1e-10, 1e-7]) {
      const wobbles = one(fc.array(share, { minLength: 200, maxLength: 200 }), 3);
      // y falls short of the line by a bend that changes sign, or by rounding alone on a line that is no multiple of anything
      const run = Array.from({ length: 200 }, (_, k) => [
        k * 0.1,
        (k * 0.1) / 3 + (k === 0 ? 0 : bend * (wobbles[k] - 0.5)),
      ]).flat();
      expectSound(cleanFrom([[...run, 20, 20 / 3, 20, 9, 0, 9]]), `bent by ${bend} mm`);
    }
  });

  test('on edges of 1e-6 mm: nicks, chamfers, steps', () => {
    const e = 1e-6;
    const chamfered = [e, 0, 10 - e, 0, 10, e, 10, 4 - e, 10 - e, 4, e, 4, 0, 4 - e, 0, e];
    expectSound(cleanFrom([chamfered]), 'chamfers');
    const stepped = [0, 0, 3, 0, 3, e, 5, e, 5, 2 * e, 10, 2 * e, 10, 4, 5, 4, 5, 4 - e, 0, 4 - e];
    expectSound(cleanFrom([stepped]), 'steps');
    const nicks = Array.from({ length: 20 }, (_, k) => [
      k,
      4,
      k - e,
      4,
      k - e,
      4 - e,
      k - 2 * e,
      4 - e,
      k - 2 * e,
      4,
    ]);
    expectSound(cleanFrom([[0, 0, 21, 0, 21, 4, ...nicks.toReversed().flat(), -1, 4, -1, 0]]), 'nicks');
  });

  test('on holes that touch each other and the outline in a point', () => {
    const diamonds = Array.from({ length: 6 }, (_, k) => [
      2 * k,
      0,
      2 * k + 1,
      -1,
      2 * k + 2,
      0,
      2 * k + 1,
      1,
    ]);
    expectSound(resolved([rectangle(-3, -4, 18, 8), ...diamonds], 'evenodd'), 'chain of diamonds');
    expectSound(resolved([rectangle(0, -4, 12, 8), ...diamonds], 'evenodd'), 'chain from wall to wall');
    fc.assert(
      fc.property(gridCells([2, 7], [0.5, 0.5]), (region) => expectSound(region, 'cells')),
      cases(40),
    );
  });

  test('on drawings that cross and cover themselves, once resolved', () => {
    fc.assert(
      fc.property(
        scribbleRing([3, 12], 10),
        starRing([3, 12], [3, 8], [5, 5]),
        starRing([3, 9], [2, 6], [4, 6]),
        (scribble, outline, other) => {
          for (const fillRule of ['nonzero', 'evenodd'] as const) {
            const region = resolved([scribble, outline, outline, other], fillRule);
            expect(region.ringEnds.length).toBeGreaterThan(0);
            expectSound(region, fillRule);
          }
        },
      ),
      cases(60),
    );
  });

  test('far from the origin as precisely as the coordinates there', () => {
    for (const far of [1e5, 1e7]) {
      // coordinates are multiples of 2^-20, which those places still hold exactly
      const near = one(holedStars, 7);
      const snapped = near.coords.map((v) => Math.round(v * 2 ** 20) / 2 ** 20);
      const region = { ...near, coords: snapped } as CleanRegion;
      expectSound(region, 'near');
      expectSound(transformRings([1, 0, 0, 1, far, -far], region) as CleanRegion, `${far} mm away`);
    }
  });

  test('on shores, one of 200,000 points', () => {
    expectSound(cleanFrom([snowflake(6, 100)]), 'snowflake', 400);
    expectSound(cleanFrom([one(coastRing(16, 0.55), 1)]), 'coast', 100);
  });
});
