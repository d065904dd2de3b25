import { readFileSync } from 'node:fs';
import { outerRingCount, resolveRegions } from '@pourproof/arrangement';
import { readLettering } from '@pourproof/artwork';
import {
  carve,
  clearingPath,
  cutterEfforts,
  cuttingTime,
  flatCutter,
  followingPath,
  reachedOutline,
} from '@pourproof/cutting';
import { medialAxis, openedArea, polygonFromArcs } from '@pourproof/geometry';
import { type CleanRegion, packRings, perimeter } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { floatSweptArea } from '../support/oracles/float-offsets.ts';
import { veeDepth } from '../support/oracles/vee-depth.ts';
import { runsOf } from '../support/runs-of.ts';
import { boundaryDistance } from '../support/shapes/path-shapes.ts';

const FACES = ['lora-400', 'bodoni-moda-400', 'dancing-script-400', 'josefin-sans-400', 'arvo-400'] as const;

async function lettered(face: string, toleranceMm: number): Promise<CleanRegion> {
  const font = readFileSync(`fixtures/fonts/${face}.ttf`);
  const drawing = await readLettering('Rag 8', { font, capHeightMm: 20, toleranceMm });
  return resolveRegions(drawing.shapes.map((shape) => shape.region)).region;
}

describe.each(FACES)('lettering in %s', (face) => {
  test('is cleared by one bit, and what it leaves by a narrower one, just as far as they reach', async () => {
    const region = await lettered(face, 0.01);
    const axis = medialAxis(region);
    const arcMm = 2e-3;
    // another engine's arcs are chords: it loses part of their tolerance along the edge of what is swept
    const bound = arcMm * 3 * perimeter(region);
    const first = clearingPath(axis, { diameterMm: 1.6, stepoverMm: 0.7, depthMm: 3 });
    const swept = floatSweptArea(runsOf(first, arcMm / 10), 0.8, arcMm, packRings([]));
    expect(Math.abs(swept - openedArea(axis, 0.8))).toBeLessThan(bound);
    const rest = clearingPath(axis, {
      diameterMm: 0.6,
      stepoverMm: 0.25,
      depthMm: 3,
      earlierDiameterMm: 1.6,
      ignoreMm: 0,
    });
    const done = polygonFromArcs(reachedOutline(axis, 0.8, 0.8), arcMm / 10);
    const both = floatSweptArea(runsOf(rest, arcMm / 10), 0.3, arcMm, done);
    expect(Math.abs(both - openedArea(axis, 0.3))).toBeLessThan(bound);
  });

  test('takes as many runs to clear as there are separate places for the bit', async () => {
    const axis = medialAxis(await lettered(face, 0.01));
    const path = clearingPath(axis, { diameterMm: 1, stepoverMm: 0.4, depthMm: 3 });
    const centres = resolveRegions([
      { ...polygonFromArcs(reachedOutline(axis, 0.5, 0), 1e-4), fillRule: 'nonzero' },
    ]).region;
    // places of a few µm² are specks to the resolver, but no fewer places than it sees
    expect(path.runEnds.length).toBeGreaterThanOrEqual(outerRingCount(centres));
    expect(path.runEnds.length).toBeLessThanOrEqual(outerRingCount(centres) + 2);
  });

  test('is followed by a V as deep as its walls allow', async () => {
    const region = await lettered(face, 0.01);
    const cut = { includedRad: Math.PI / 3, depthMm: 2 };
    const { path } = followingPath(medialAxis(region), cut);
    const count = path.bulges.length;
    for (let i = 0; i < count; i += Math.ceil(count / 200)) {
      const d = boundaryDistance(region, path.points[3 * i]!, path.points[3 * i + 1]!);
      expect(Math.abs(path.points[3 * i + 2]! - veeDepth(d, cut))).toBeLessThan(1e-8);
    }
  });

  test('takes about the same length and time however finely it is flattened', async () => {
    const [coarse, fine] = await Promise.all(
      [0.01, 0.001].map(async (toleranceMm) => {
        const axis = medialAxis(await lettered(face, toleranceMm));
        const clear = clearingPath(axis, { diameterMm: 1, stepoverMm: 0.4, depthMm: 3 });
        const follow = followingPath(axis, { includedRad: Math.PI / 3, depthMm: 2 });
        return [cuttingTime(clear).cutMinutes, cuttingTime(follow.path).minutes] as const;
      }),
    );
    // retracts of the clearing are left out: a place exactly as wide as the bit may or may not be entered
    expect(Math.abs(fine![0] / coarse![0] - 1)).toBeLessThan(0.01);
    // one branch more or less if it reaches just 20 µm
    expect(Math.abs(fine![1] / coarse![1] - 1)).toBeLessThan(0.02);
  });
});

test('what each bit adds in lettering sums to the reach of the narrowest, and whatever adds takes length and time', async () => {
  const axis = medialAxis(await lettered('lora-400', 0.01));
  const bits = [3.175, 1.5875, 3, 0.8];
  const steps = bits.map((diameterMm) => ({ cutter: flatCutter(diameterMm), way: 'clear' }) as const);
  const { perCutter } = carve(axis, steps, { depthMm: 3 });
  const sum = perCutter.reduce((total, { areaMm2 }) => total + areaMm2, 0);
  expect(sum).toBeCloseTo(openedArea(axis, 0.4), 8);
  const tasks = bits.map((widthMm) => ({ way: 'clear', widthMm, depthMm: 3 }) as const);
  const efforts = cutterEfforts({ clear: axis, follow: axis }, tasks);
  expect(perCutter.map(({ areaMm2 }) => areaMm2 > 0)).toEqual([false, true, false, true]);
  for (const [k, { pathMm, minutes }] of efforts.entries()) {
    const isAdding = perCutter[k]!.areaMm2 > 0;
    expect(perCutter[k]!.places.length > 0).toBe(isAdding);
    expect(pathMm > 0).toBe(isAdding);
    expect(minutes > 0).toBe(isAdding);
  }
});
