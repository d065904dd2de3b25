import { beforeAll, describe, expect, test } from 'vitest';
import { fieldName } from '../../apps/viewer/src/model/field-name.ts';
import { REFUSED_JOBS } from '../support/front-door/refused-jobs.ts';
import type { Trial } from '../support/front-door/trial.ts';
import {
  asBuilt,
  byCommandLine,
  byLibrary,
  openWorker,
  type Refused,
} from '../support/front-door/ways-in.ts';

const ALL = REFUSED_JOBS.map(([trial, says]) => [trial.name, trial, says] as const);

let byWorker: (trial: Trial) => Promise<Refused>;
beforeAll(async () => {
  byWorker = await openWorker();
});

test('there are jobs of many kinds, each under a name of its own', () => {
  expect(ALL.length).toBeGreaterThanOrEqual(30);
  expect(new Set(ALL.map(([name]) => name)).size).toBe(ALL.length);
});

describe('command line, library and worker refuse in the same words, byte for byte, but for the names of fields', () => {
  test.each(ALL)('%s', async (_, trial, says) => {
    const { outcome } = await byLibrary(trial);
    expect(outcome.kind, outcome.text.slice(0, 300)).toBe('refusal');
    expect(outcome.text).toContain(says);
    expect(outcome.text).not.toMatch(/undefined|\[object|NaN/u);
    expect(await byCommandLine(trial)).toEqual(outcome);
    // the page has fields for settings
    expect(await byWorker(trial)).toEqual(await byLibrary(trial, fieldName));
  });

  test.each(ALL)('%s: the refusal has a code, and says what to do', async (_, trial) => {
    const { refusal } = await byLibrary(trial);
    expect(refusal?.code).toMatch(/^[a-z][a-z-]+$/u);
    expect(refusal?.what).toMatch(/\S/u);
    expect(`${refusal?.what} ${refusal?.remedy}`).toMatch(/[.?]$/u);
  });
});

describe('the command line as it was built refuses in the same words', () => {
  const few = ['an unknown key', 'two sizes', 'lettering without a size', 'an SVG that breaks off'];
  test.each(ALL.filter(([name]) => few.includes(name)))('%s', async (_, trial) => {
    const { outcome } = await byLibrary(trial);
    expect(await byCommandLine(trial, asBuilt)).toEqual(outcome);
  });
});
