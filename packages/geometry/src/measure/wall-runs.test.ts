import { packRings, radians } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { wallRuns } from './wall-runs.ts';

const bar = packRings([[0, 0, 30, 0, 30, 4, 0, 4]]);
const plain = { minExposure: 0.9, joinGapMm: 0, minLengthMm: 0 };

describe('wallRuns', () => {
  test('the ends of a bar along the fibre are its two runs', () => {
    const runs = wallRuns(bar, 0, plain);
    expect(runs.map((run) => [run.lengthMm, run.exposedMm, run.meanExposure])).toEqual([
      [4, 4, 1],
      [4, 4, 1],
    ]);
    expect(runs.map((run) => run.atMm)).toEqual([
      [30, 2],
      [0, 2],
    ]);
    expect([...runs[0]!.path]).toEqual([30, 0, 30, 4]);
  });

  test('a ring that is exposed all round is one closed run', () => {
    const [run, ...others] = wallRuns(bar, radians(45), { ...plain, minExposure: Math.SQRT1_2 });
    expect(others).toEqual([]);
    expect(run!.lengthMm).toBe(68);
    expect(run!.exposedMm).toBeCloseTo(68 * Math.SQRT1_2, 12);
    expect([...run!.path.slice(0, 2)]).toEqual([...run!.path.slice(-2)]);
  });

  test('a run over the start of its ring is in one piece', () => {
    const started = packRings([[30, 2, 30, 4, 0, 4, 0, 0, 30, 0]]);
    const runs = wallRuns(started, 0, plain);
    expect(runs.map((run) => run.lengthMm).sort()).toEqual([4, 4]);
    expect(runs.some((run) => run.path.length === 6)).toBe(true);
  });

  test('a short quiet stretch joins two runs when the gap allows it', () => {
    const step = packRings([[0, 0, 20, 0, 20, 5, 19.8, 5, 19.8, 10, 0, 10]]);
    expect(wallRuns(step, 0, plain)).toHaveLength(3);
    const joined = wallRuns(step, 0, { ...plain, joinGapMm: 0.25 });
    expect(joined).toHaveLength(2);
    expect(joined[0]!.lengthMm).toBeCloseTo(10.2, 12);
    expect(joined[0]!.exposedMm).toBeCloseTo(10, 12);
    // the gap, not the sum of gaps, is what counts
    expect(wallRuns(step, 0, { ...plain, joinGapMm: 0.19 })).toHaveLength(3);
  });

  test('runs below the least length are left out', () => {
    expect(wallRuns(bar, 0, { ...plain, minLengthMm: 4.1 })).toEqual([]);
    expect(wallRuns(bar, 0, { ...plain, minLengthMm: 4 })).toHaveLength(2);
  });

  test('the exposure decides by the fibre as seen: a rise to the right with the fibre along it is quiet', () => {
    // with y down a line that rises to the right by 30° runs along (cos 30°, −sin 30°)
    const [c, s] = [Math.cos(radians(30)), -Math.sin(radians(30))];
    const rising = packRings([[0, 0, 30 * c, 30 * s, 30 * c - 4 * s, 30 * s + 4 * c, -4 * s, 4 * c]]);
    const runs = wallRuns(rising, radians(30), plain);
    expect(runs.map((run) => run.lengthMm)).toEqual([expect.closeTo(4, 9), expect.closeTo(4, 9)]);
    expect(wallRuns(rising, radians(-30), plain)).toEqual([]);
  });

  test('nonsense limits are refused', () => {
    expect(() => wallRuns(bar, 0, { ...plain, minExposure: 2 })).toThrow(RangeError);
    expect(() => wallRuns(bar, 0, { ...plain, joinGapMm: -1 })).toThrow(RangeError);
  });
});
