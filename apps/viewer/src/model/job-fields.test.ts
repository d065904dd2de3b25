import { JOB_DEFAULTS, jobFileSchema, settleJob } from '@pourproof/job';
import { defaultMaterials } from '@pourproof/materials';
import { expect, test } from 'vitest';
import { FIRST_FIELDS, JOB_GROUPS, type JobField, usualValue } from './job-fields.ts';

const fields: readonly JobField[] = [
  ...Object.values(FIRST_FIELDS),
  ...JOB_GROUPS.flatMap((group) => group.fields),
];
/** What other parts of the page ask for: artwork, lettering, bits, fibres, units; coupons come from a file. */
const ELSEWHERE = [
  ...[
    'schema',
    'artwork',
    'text',
    'font',
    'capHeight',
    'singleLine',
    'align',
    'tracking',
    'lineSpacing',
    'arc',
  ],
  ...['axis', 'bit', 'grain', 'coupons', 'units'],
];

test('every key of a job file is asked for somewhere on the page, and none twice', () => {
  const asked = [...fields.map(({ key }) => key), ...ELSEWHERE];
  expect(asked.toSorted()).toEqual(Object.keys(jobFileSchema.shape).toSorted());
});

test('choices are those that the job takes', () => {
  for (const { key, options } of fields.filter(({ form }) => form === 'choice')) {
    const ids = options?.(defaultMaterials).map(([id]) => id) ?? [];
    expect(ids.length, key).toBeGreaterThan(1);
    for (const id of ids.filter((each) => each !== '')) {
      expect(() => settleJob({ [key]: id })).not.toThrow();
    }
    const usual = usualValue(key, {});
    expect(ids).toContain(usual);
  }
});

test('what an empty field stands for is the default of the job, and levelling takes what its method takes', () => {
  expect(usualValue('overpour', {})).toBe(JOB_DEFAULTS.overpour);
  expect(usualValue('width', {})).toBe('');
  for (const levelBy of ['planer', 'drum', 'hand', 'cutter'] as const) {
    const typed = settleJob({ level: usualValue('level', { levelBy }) });
    expect(typed.levelMm).toBe(settleJob({ levelBy }).levelMm);
  }
});
