import { resins, type ShopWaitId, sealers, shopHours } from '@pourproof/materials';
import fc from 'fast-check';
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
/** The step whose window a wait is, and the steps that it counts from. */
const STEP_OF_WAIT: Readonly<Partial<Record<ShopWaitId, StepId>>> = {
  'between-seal-coats': 'seal-coat',
  'seal-bonds-unsanded': 'bond-window',
  'next-layer': 'next-layer',
  'top-up': 'top-up',
};
const BEFORE: Readonly<Partial<Record<StepId, readonly StepId[]>>> = {
  'seal-coat': ['seal-coat'],
  'bond-window': ['seal-coat'],
  pour: ['seal-coat'],
  'next-layer': ['pour', 'next-layer'],
  'top-up': ['pour', 'next-layer'],
};

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
    expect(step('pour', { sealHours: 1 })).toMatchObject({ earliestHours: coat + 1, latestHours: coat + 24 });
  });

  test('pours within the bond window until it ends, and waits for no cure', () => {
    const tacky = { sealHours: 3 };
    const coat = step('seal-coat', tacky)?.earliestHours ?? 0;
    expect(step('pour', tacky)).toMatchObject({
      earliestHours: coat + 3,
      latestHours: coat + 8,
      isWindow: true,
    });
    expect(step('bond-window', tacky)).toBeUndefined();
    expect(step('level', tacky)).toMatchObject({ earliestHours: coat + 15, latestHours: coat + 32 });
  });

  test('ends every window by the rule after the earliest step before it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.values(sealers)),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 0, max: 48 }),
        fc.integer({ min: 10, max: 30 }),
        (seal, coats, layers, sealHours, temperatureC) => {
          const job = { ...JOB, seal, coats, layers, sealHours, temperatureC };
          const steps = planSchedule(job);
          const longest = new Map<StepId, number>(
            shopHours(job).flatMap(({ wait, latestHours }) => {
              const id = STEP_OF_WAIT[wait];
              return id === undefined ? [] : [[id, latestHours]];
            }),
          );
          longest.set('pour', longest.get('bond-window') ?? 0);
          for (const each of steps.filter(({ isWindow }) => isWindow)) {
            const before = steps
              .filter(({ step: id }) => BEFORE[each.step]?.includes(id))
              .filter(({ earliestHours }) => earliestHours < each.earliestHours || each.step === 'pour')
              .at(-1);
            expect(each.latestHours).toBeCloseTo(
              (before?.earliestHours ?? Number.NaN) + (longest.get(each.step) ?? Number.NaN),
              9,
            );
            expect(each.latestHours).toBeGreaterThanOrEqual(each.earliestHours);
          }
        },
      ),
    );
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
