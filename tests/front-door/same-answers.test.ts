import { beforeAll, describe, expect, test } from 'vitest';
import { ANSWERED_JOBS, FIXTURE_JOBS } from '../support/front-door/answered-jobs.ts';
import type { Trial } from '../support/front-door/trial.ts';
import {
  asBuilt,
  byCommandLine,
  byLibrary,
  openWorker,
  type Refused,
} from '../support/front-door/ways-in.ts';

const ALL = [...FIXTURE_JOBS, ...ANSWERED_JOBS].map((trial) => [trial.name, trial] as const);

let byWorker: (trial: Trial) => Promise<Refused>;
beforeAll(async () => {
  byWorker = await openWorker();
});

test('there are jobs of many kinds, each under a name of its own', () => {
  expect(FIXTURE_JOBS.length).toBeGreaterThanOrEqual(3);
  expect(ANSWERED_JOBS.length).toBeGreaterThanOrEqual(40);
  expect(new Set(ALL.map(([name]) => name)).size).toBe(ALL.length);
});

describe('command line, library and worker give the same report, byte for byte', () => {
  test.each(ALL)('%s', async (_, trial) => {
    const { outcome } = await byLibrary(trial);
    expect(outcome.kind, outcome.text.slice(0, 300)).toBe('report');
    expect(await byCommandLine(trial)).toEqual(outcome);
    expect((await byWorker(trial)).outcome).toEqual(outcome);
  });
});

describe('the command line as it was built gives the same report', () => {
  const few = [
    'jobs/sign.json',
    'polygons',
    'a DXF of arcs',
    'two lines, typed as on a command line',
    'both',
  ];
  test.each(ALL.filter(([name]) => few.includes(name)))('%s', async (_, trial) => {
    const { outcome } = await byLibrary(trial);
    expect(await byCommandLine(trial, asBuilt)).toEqual(outcome);
  });
});
