import { expect, test } from 'vitest';
import { settleJob } from './job/job.ts';
import { prove } from './proof.ts';

test('a drawing without any area is a stop, and its bounds of error are nothing', () => {
  const empty = {
    format: 'svg' as const,
    scaleSource: 'made by a test in mm',
    toleranceMm: 0.005,
    notices: [],
    shapes: [],
  };
  const { report } = prove(empty, 'empty', settleJob({ bit: ['flat:3mm'], depth: '2mm' }));
  expect(report.findings).toEqual([]);
  expect(report.verdict).toBe('stop');
  expect(report.cut.errorBound).toEqual({ areaMm2: 0, volumeMm3: 0 });
});
