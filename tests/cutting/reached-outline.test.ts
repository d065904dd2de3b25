import {
  ballCutter,
  type CarveStep,
  carve,
  flatCutter,
  profileCutter,
  reachedOutline,
} from '@pourproof/cutting';
import { type ArcRings, arcRingsArea, medialAxis } from '@pourproof/geometry';
import { describe, expect, test } from 'vitest';
import { clear, veeOf } from '../support/carve-steps.ts';
import { cleanFrom, rectangle } from '../support/shapes/clean-from.ts';

const vee = veeOf(20);
const square = medialAxis(cleanFrom([rectangle(0, 0, 20, 20)]));
const angle = medialAxis(cleanFrom([[0, 0, 20, 0, 20, 8, 8, 8, 8, 20, 0, 20]]));

/** A cutter that follows, 0.1 mm in radius at its flat tip, with flanks in two pieces. */
const points: CarveStep = {
  cutter: profileCutter([
    [0, 0.1],
    [0.2, 0.4],
    [1.2, 0.9],
  ]),
  way: 'follow',
};

/** Shortest side of the rings. */
function shortest({ coords, ringEnds }: ArcRings): number {
  let least = Infinity;
  let from = 0;
  for (const to of ringEnds) {
    for (let i = from; i < to; i++) {
      const j = i + 1 === to ? from : i + 1;
      least = Math.min(
        least,
        Math.hypot(coords[2 * j]! - coords[2 * i]!, coords[2 * j + 1]! - coords[2 * i + 1]!),
      );
    }
    from = to;
  }
  return least;
}

describe('the length of the outline that a step reaches', () => {
  const lengths = (...steps: CarveStep[]): (number | undefined)[] =>
    carve(square, steps, { depthMm: 1 }).perCutter.map(({ lengthMm }) => lengthMm);

  test('is that of the sides, less the radius at each end of them', () => {
    expect(lengths(clear(flatCutter(4)))[0]).toBeCloseTo(80 - 8 * 2, 9);
    // a ball at half its radius is as wide at the face as its chord
    expect(lengths(clear(ballCutter(4)))[0]).toBeCloseTo(80 - 8 * Math.sqrt(3), 9);
    expect(lengths(points)[0]).toBeCloseTo(80 - 8 * 0.1, 9);
    expect(lengths(vee(60, { tipRadiusMm: 0.3 }))[0]).toBeCloseTo(80, 9);
  });

  test('of a step after another is what it adds, 0 after a finer one', () => {
    const [wide, fine, wideAgain] = lengths(clear(flatCutter(4)), clear(flatCutter(1)), clear(flatCutter(4)));
    expect(wide).toBeCloseTo(64, 9);
    expect(fine).toBeCloseTo(12, 9);
    expect(wideAgain).toBe(0);
  });
});

describe('outlines', () => {
  test('have true arcs where one step cuts all: as many as the corners, with the area of the cut', () => {
    for (const steps of [
      [clear(flatCutter(4)), clear(flatCutter(6))],
      [points],
      [vee(60, { tipFlatMm: 0.3 })],
    ]) {
      const { outline, areaMm2 } = carve(square, steps, { depthMm: 1 });
      expect([...outline.bulges].filter((bulge) => bulge !== 0).length).toBe(4);
      expect(outline.bulges.length).toBe(8);
      expect(arcRingsArea(outline)).toBeCloseTo(areaMm2, 9);
    }
  });

  test('repeat no point, not at a reflex corner that the cutter turns around either', () => {
    for (const centre of [0.5, 1, 3]) {
      for (const share of [0, 0.4, 1]) {
        const outline = reachedOutline(angle, centre, share * centre);
        expect(shortest(outline)).toBeGreaterThan(1e-3);
        // five corners, rounded where the disc has a size, and one that is passed on a point or around an arc
        const [corners, passed] = [share === 0 ? 5 : 10, share === 1 ? 1 : 2];
        expect(outline.bulges.length).toBe(corners + passed);
      }
    }
  });
});
