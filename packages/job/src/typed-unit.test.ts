import { expect, test } from 'vitest';
import { readJobFile } from './job-file.ts';
import { mergeJobs } from './merge-jobs.ts';
import type { JobInput } from './settings/table.ts';
import { typedUnit } from './typed-unit.ts';

test.each([
  [{ bit: ['flat:1/8in'], depth: '3mm' }, 'mm'],
  [{ depth: '3mm', bit: ['flat:1/8in'] }, 'mm'],
  [{ bit: ['taper:0.5mm:5deg:1/4in'], depth: '1/8in' }, 'in'],
  [{ level: '0.5mm', depth: '1/8in' }, 'in'],
  [{ depth: '1/8in', board: 'plain 300x180x20mm maple' }, 'mm'],
  [{ bit: ['flat:1/8in'], capHeight: '15mm' }, 'mm'],
  [{ bit: ['vee:60deg:1/2in:tip 0.1mm'] }, 'in'],
  [{ bit: ['flat:3/16"'] }, 'in'],
  [{ level: '20 thou' }, 'in'],
  [{ board: 'plain 12x7x0.75in maple' }, 'in'],
  [{ board: 'plain 300x180x20mm maple', depth: '1/8in' }, 'mm'],
  [{ arc: '80mm under' }, 'mm'],
  [{ reading: ['1in,2in 0.75in'] }, 'in'],
] satisfies [JobInput, string][])('%j is answered in %s', (job, unit) => {
  expect(typedUnit(job)).toBe(unit);
});

test.each([
  [{}],
  [{ grain: '30deg', sealHours: '90min', shopTemp: '21C' }],
  // a speed, words to carve, and how finely a file is read are no lengths of the work
  [{ feed: '40in/min', text: '3 in a row', tolerance: '0.005mm', join: '0.1mm' }],
  [{ scale: 2, boards: 4 }],
])('%j says no unit', (job) => {
  expect(typedUnit(job)).toBeUndefined();
});

test('a job file keeps the order in which its lengths stand', () => {
  const schema = 'pourproof/job@1';
  const [level, width] = [{ level: '0.5mm' }, { width: '5in' }];
  expect(typedUnit(readJobFile({ schema, ...level, ...width }, 'job.json'))).toBe('mm');
  expect(typedUnit(readJobFile({ schema, ...width, ...level }, 'job.json'))).toBe('in');
});

test.each([
  [{ depth: '3mm' }, { level: '20thou' }, 'mm'],
  [{ depth: '3mm' }, { depth: '1/8in' }, 'mm'],
  [{ level: '0.5mm' }, { board: 'plain 12x7x0.75in maple' }, 'mm'],
  // a file that says nothing but its bits says less than a depth
  [{ bit: ['flat:1/8in'] }, { depth: '3mm' }, 'mm'],
  [{ wood: 'maple' }, { depth: '1/8in' }, 'in'],
  [{ units: 'in', depth: '3mm' }, { depth: '4mm' }, 'in'],
  [{ depth: '3mm' }, { units: 'in' }, 'in'],
] satisfies [JobInput, JobInput, string][])(
  '%j with %j typed beside it is answered in %s',
  (file, typed, unit) => {
    expect(mergeJobs(file, typed).units).toBe(unit);
  },
);
