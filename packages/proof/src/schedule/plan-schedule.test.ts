import { resins, sealers } from '@pourproof/materials';
import { describe, expect, test } from 'vitest';
import { planSchedule, type ScheduleJob, type StepId } from './plan-schedule.ts';

const JOB: ScheduleJob = {
  cuttingMinutes: 12,
  seal: sealers.epoxy,
  coats: 1,
  sealHours: 24,
  resin: resins.coating,
  layers: 1,
  temperatureC: 25,
};
const step = (id: StepId, job: Partial<ScheduleJob> = {}) =>
  planSchedule({ ...JOB, ...job }).find((each) => each.step === id);
const gap = (from: StepId, to: StepId, job: Partial<ScheduleJob> = {}): number =>
  (step(to, job)?.earliestHours ?? Number.NaN) - (step(from, job)?.earliestHours ?? Number.NaN);

describe('a schedule', () => {
  test('waits as the tables say at 25 °C: seal 24 h, hard from 12 h, full cure from 5 days', () => {
    expect(gap('seal-coat', 'pour')).toBe(24);
    expect(gap('pour', 'level')).toBe(12);
    expect(gap('pour', 'full-cure')).toBe(5 * 24);
  });

  test('takes twice as long for everything that reacts when it is 10 °C cooler, the planned wait aside', () => {
    const cool = { temperatureC: 15 };
    expect(gap('pour', 'level', cool)).toBeCloseTo(24, 9);
    expect(gap('pour', 'full-cure', cool)).toBeCloseTo(240, 9);
    expect(gap('seal-coat', 'bond-window', cool)).toBeCloseTo(4, 9);
    // the cautious end of the pour follows the seal, the early end is what the maker plans
    expect(gap('seal-coat', 'pour', cool)).toBe(24);
    expect((step('pour', cool)?.latestHours ?? 0) - (step('seal-coat', cool)?.latestHours ?? 0)).toBeCloseTo(
      48,
      9,
    );
  });

  test('shows conflicting rules as a range: unsanded while tacky from 2 to 8 h, cured at 24 h', () => {
    const coat = step('seal-coat')?.earliestHours ?? 0;
    expect(step('bond-window')).toMatchObject({
      earliestHours: coat + 2,
      latestHours: coat + 8,
      isWindow: true,
    });
    expect(step('pour', { sealHours: 3 })).toMatchObject({ earliestHours: coat + 3, latestHours: coat + 24 });
  });

  test('begins after the cut: an hour for short ones, set-up and cutting for long ones', () => {
    const after = (cuttingMinutes: number): number => gap('carve', 'clean', { cuttingMinutes });
    expect([0, 30, 31, 90, 6433].map(after)).toEqual([1, 1, 1.25, 2, 107.75]);
    expect(gap('clean', 'seal-coat', { cuttingMinutes: 300 })).toBe(0.5);
  });

  test('does not slow what dries: shellac waits the same in a cool shop', () => {
    const job = { seal: sealers.shellac, coats: 2, sealHours: 2 };
    expect(gap('seal-coat', 'pour', { ...job, temperatureC: 15 })).toBe(gap('seal-coat', 'pour', job));
  });

  test('has one entry per coat and per layer, in order', () => {
    const steps = planSchedule({ ...JOB, coats: 3, layers: 3 });
    expect(steps.filter((each) => each.step === 'seal-coat').map((each) => each.turn)).toEqual([1, 2, 3]);
    expect(steps.filter((each) => each.step === 'next-layer').map((each) => each.turn)).toEqual([2, 3]);
    for (let i = 1; i < steps.length; i++) {
      expect(steps[i]?.earliestHours).toBeGreaterThanOrEqual(steps[i - 1]?.earliestHours ?? 0);
    }
  });

  test('leaves seal and bond out on bare wood', () => {
    const steps = planSchedule({ ...JOB, seal: sealers.none }).map((each) => each.step);
    expect(steps).toEqual(['carve', 'clean', 'pour', 'top-up', 'level', 'finish', 'full-cure']);
  });
});
