import type { TypedJob } from '@pourproof/job';
import type { Fix } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { changedJob } from './changed-job.ts';
import { jobChange } from './job-change.ts';

const change = (fix: Fix, job: TypedJob = {}, isLettering = false) => jobChange(fix, job, { isLettering });

test('a way out changes its own settings and nothing else, and its button says which', () => {
  const job = { bit: ['flat:1/8in'], depth: '2mm', wood: 'cherry' };
  expect(change({ do: 'deepen', byMm: 0.8, clears: true }, job)).toEqual({
    part: { depth: '2.8mm' },
    label: 'Cut deeper',
  });
  expect(
    change(
      { do: 'change-seal', seal: 'epoxy', coats: 1, hours: 24, bondsUnsanded: false, clears: true },
      job,
    ),
  ).toEqual({
    part: { seal: 'epoxy', coats: 1, sealHours: '24h' },
    label: 'Use this seal',
  });
});

test('what else a way out takes changes with it', () => {
  const seal = {
    do: 'change-seal',
    seal: 'epoxy',
    coats: 1,
    hours: 8,
    bondsUnsanded: true,
    clears: true,
  } as const;
  expect(
    change({ do: 'use-bit', kind: 'flat', diameterMm: 1, clears: true, also: [seal] }, { bit: ['flat:3mm'] })
      ?.part,
  ).toEqual({ bit: ['flat:3mm', 'flat:1mm'], seal: 'epoxy', coats: 1, sealHours: '8h' });
});

test('a larger size stands in the place of the one before', () => {
  const larger: Fix = { do: 'scale', factor: 1.2, clears: true };
  const part = change(larger, { width: '100mm' })?.part ?? {};
  expect(changedJob({ width: '100mm', depth: '3mm' }, part)).toEqual({ width: '120mm', depth: '3mm' });
  expect(change(larger, { capHeight: '20mm' }, true)?.part).toEqual({ capHeight: '24mm' });
});

test('work on the drawing itself, or a choice of the maker, has no button', () => {
  expect(change({ do: 'widen', what: 'stroke', byMm: 0.2, clears: true })).toBeNull();
  expect(change({ do: 'use-vee', angleDeg: 60, diameterMm: 14, clears: true })).toBeNull();
  expect(change({ do: 'use-tip', tipMm: 0.1, clears: true })).toBeNull();
});
