import { settleJob } from '@pourproof/job';
import { levelMethods } from '@pourproof/materials';
import { expect, test } from 'vitest';

test('a way of levelling takes its usual amount unless the job says how much', () => {
  expect(settleJob({ levelBy: 'planer' }).levelMm).toBe(levelMethods.planer.removalMm.value);
  expect(settleJob({ levelBy: 'planer', level: '1.2mm' }).levelMm).toBe(1.2);
  expect(settleJob({}).levelMm).toBe(0.5);
});
