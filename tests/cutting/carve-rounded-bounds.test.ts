import {
  ballCutter,
  type CarveStep,
  type Carving,
  carve,
  taperedBallCutter,
  veeCutter,
} from '@pourproof/cutting';
import { medialAxis, vVolume } from '@pourproof/geometry';
import { type CleanRegion, radians, ringStart, ringsBounds } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { holedStars } from '../arbitraries.ts';
import { cases, isLong } from '../support/lane.ts';
import { cleanFrom } from '../support/shapes/clean-from.ts';
import { lettered } from '../support/shapes/lettered.ts';

const ALL_FACES = ['bodoni-moda-400', 'dancing-script-400', 'josefin-sans-400', 'arvo-400', 'lora-400'];
/** A face of hairlines and a script take seconds each; the others have their turn in the long lane. */
const FACES = isLong ? ALL_FACES : ALL_FACES.slice(0, 2);
const follow = (cutter: CarveStep['cutter']): CarveStep => ({ cutter, way: 'follow' });
const vee = (angleDeg: number, tipRadiusMm: number): CarveStep =>
  follow(veeCutter({ includedRad: radians(angleDeg), diameterMm: 12, tipRadiusMm }));

/** Stretches `[from, to, y]` of horizontal lines inside the region. */
function* inside({ coords, ringEnds }: CleanRegion, step: number): Generator<[number, number, number]> {
  const [, minY, , maxY] = ringsBounds({ coords, ringEnds });
  for (let y = minY + 0.37 * step; y < maxY; y += step) {
    const xs: number[] = [];
    ringEnds.forEach((end, ring) => {
      const from = ringStart({ coords, ringEnds }, ring);
      for (let i = from; i < end; i++) {
        const j = i + 1 === end ? from : i + 1;
        const [ax, ay, bx, by] = [coords[2 * i]!, coords[2 * i + 1]!, coords[2 * j]!, coords[2 * j + 1]!];
        if (ay > y !== by > y) {
          xs.push(ax + ((y - ay) / (by - ay)) * (bx - ax));
        }
      }
    });
    xs.sort((a, b) => a - b);
    for (let k = 0; k < xs.length; k += 2) {
      yield [xs[k]!, xs[k + 1]!, y];
    }
  }
}

/** The volume as a sum of depths at the points of a grid. */
function summed(cut: Carving, step: number): number {
  let sum = 0;
  for (const [from, to, y] of inside(cut.axis.region, step)) {
    const count = Math.max(3, Math.ceil((to - from) / step));
    const width = (to - from) / count;
    for (let k = 0; k < count; k++) {
      sum += width * step * cut.depthAt(from + (k + 0.5) * width, y);
    }
  }
  return sum;
}

describe('volumes of rounded tips in lettering of 8 mm capitals: bounds that hold and are tight', () => {
  const tips: readonly (readonly [name: string, step: CarveStep, mostShare: number])[] = [
    ['V 30°, tip 0.1', vee(30, 0.1), 1e-4],
    ['V 60°, tip 0.25', vee(60, 0.25), 1e-3],
    ['V 90°, tip 0.5', vee(90, 0.5), 1e-3],
    ['ball 2', follow(ballCutter(2)), 1e-3],
    [
      'tapered ball 0.5',
      follow(taperedBallCutter({ tipDiameterMm: 0.5, sideRad: radians(10), diameterMm: 6 })),
      3e-3,
    ],
    // tips about as wide as the strokes sink a lot where strokes widen a little
    ['V 30°, tip 0.5', vee(30, 0.5), 6e-3],
    ['ball 1', follow(ballCutter(1)), 1e-2],
  ];

  test.each(FACES)('%s', async (face) => {
    const axis = medialAxis(await lettered('Ro&g', `${face}.ttf`, 8, 0.01));
    for (const [name, step, mostShare] of tips) {
      const cut = carve(axis, [step], { depthMm: 3 });
      expect(cut.volumeErrorMm3, name).toBeLessThan(mostShare * cut.volumeMm3);
    }
  });

  test.each(FACES)('%s: sums over a grid lie between', async (face) => {
    const axis = medialAxis(await lettered('R', `${face}.ttf`, 8, 0.01));
    for (const [name, step] of tips.filter((_, k) => k === 1 || k === 6)) {
      const cut = carve(axis, [step], { depthMm: 3 });
      // a grid of 0.04 mm is off by about a thousandth
      const apart = Math.abs(summed(cut, 0.04) - cut.volumeMm3);
      expect(apart, name).toBeLessThan(cut.volumeErrorMm3 + 2e-3 * cut.volumeMm3);
    }
  });
});

describe('where the truth is known otherwise', () => {
  test('a negligible tip radius: the kernel’s V volume, between the bounds', () => {
    fc.assert(
      fc.property(holedStars, (region) => {
        const axis = medialAxis(region);
        for (const depthMm of [0.3, 9]) {
          const cut = carve(axis, [vee(60, 1e-6)], { depthMm });
          const want = vVolume(axis, { includedRad: radians(60), depthMm });
          expect(Math.abs(cut.volumeMm3 - want)).toBeLessThan(cut.volumeErrorMm3 + 1e-5 * want);
          expect(cut.volumeErrorMm3).toBeLessThan(1e-5 * want);
        }
      }),
      cases(6),
    );
  });

  test('two wide parts and a short bottleneck: the tip reaches it from both sides, and the bounds include that', () => {
    const axis = medialAxis(
      cleanFrom([[0, 0, 1.9, 0, 2, 0.45, 2.1, 0, 4, 0, 4, 1.2, 2.1, 1.2, 2, 0.75, 1.9, 1.2, 0, 1.2]]),
    );
    for (const step of [vee(60, 0.3), vee(30, 0.5), follow(ballCutter(1)), follow(ballCutter(1.5))]) {
      const cut = carve(axis, [step], { depthMm: 2 });
      const apart = Math.abs(summed(cut, 0.02) - cut.volumeMm3);
      expect(apart).toBeLessThan(cut.volumeErrorMm3 + 1e-3 * cut.volumeMm3);
      expect(cut.volumeErrorMm3).toBeLessThan(0.05 * cut.volumeMm3);
    }
  });
});

describe('walls of rounded tips', () => {
  const shape = cleanFrom([[0, 0, 5, 0.3, 4.8, 1, 1.2, 0.9, 1, 4, 0, 4.2]]);
  test.each([
    ['V 60°, tip 0.25', vee(60, 0.25)],
    ['V 30°, tip 0.5', vee(30, 0.5)],
    ['ball 2', follow(ballCutter(2))],
  ] as const)('%s: the slope of the depth, summed over a grid', (_, step) => {
    const cut = carve(medialAxis(shape), [step], { depthMm: 3 });
    const [size, near] = [0.02, 1e-5];
    let [sum, count] = [0, 0];
    for (const [from, to, y] of inside(shape, size)) {
      for (let x = from + size / 2; x < to; x += size) {
        const across = cut.depthAt(x + near, y) - cut.depthAt(x - near, y);
        const along = cut.depthAt(x, y + near) - cut.depthAt(x, y - near);
        sum += Math.hypot(1, across / (2 * near), along / (2 * near));
        count++;
      }
    }
    const apart = Math.abs((sum / count) * cut.areaMm2 - cut.wallAreaMm2);
    expect(apart).toBeLessThan(cut.wallAreaErrorMm2 + 2e-3 * cut.wallAreaMm2);
    expect(cut.wallAreaErrorMm2).toBeLessThan(0.02 * cut.wallAreaMm2);
  });
});
