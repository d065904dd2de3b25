import { SETTING_KEYS, settleJob } from '@pourproof/job';
import { defaultMaterials, limits } from '@pourproof/materials';
import { expect, test } from 'vitest';
import { isAsked, JOB_GROUPS, optionsOf, usualValue } from './job-fields.ts';
import { USUAL_TABLES } from './shelf.ts';

const fields = JOB_GROUPS.flatMap((group) => group.fields);
/** What other parts of the page ask for: artwork, lettering, bits, fibres, units; coupons come from a file. */
const ELSEWHERE = [
  ...['artwork', 'text', 'font', 'capHeight', 'singleLine', 'align', 'tracking', 'lineSpacing', 'arc'],
  ...['axis', 'bit', 'grain', 'coupons', 'units'],
];

test('every setting of a job is asked for somewhere on the page, and none twice', () => {
  const asked = [...fields.map(({ key }) => key), ...ELSEWHERE];
  expect(asked.toSorted()).toEqual(SETTING_KEYS.toSorted());
});

test('choices are those that the job takes', () => {
  for (const field of fields.filter(({ form }) => form === 'choice')) {
    const ids = optionsOf(field, defaultMaterials).map(([id]) => id);
    expect(ids.length, field.key).toBeGreaterThan(1);
    for (const id of ids.filter((each) => each !== '')) {
      expect(() => settleJob({ [field.key]: id })).not.toThrow();
    }
    expect(ids).toContain(usualValue(field.key, {}, USUAL_TABLES));
  }
});

test('what an empty field stands for is the default of the job, and levelling takes what its method takes', () => {
  expect(usualValue('overpour', {}, USUAL_TABLES)).toBe(`${limits.overpour.value}mm`);
  expect(usualValue('depth', {}, USUAL_TABLES)).toBe('1/8in');
  expect(usualValue('width', {}, USUAL_TABLES)).toBe('');
  for (const levelBy of ['planer', 'drum', 'hand', 'cutter'] as const) {
    const typed = settleJob({ level: usualValue('level', { levelBy }, USUAL_TABLES) });
    expect(typed.levelMm).toBe(settleJob({ levelBy }).levelMm);
  }
});

test('a field is shown where it means something, and where it has a value', () => {
  const field = (key: string) => fields.find((each) => each.key === key)!;
  expect(isAsked(field('coats'), {}, 'file', USUAL_TABLES)).toBe(false);
  expect(isAsked(field('coats'), { seal: 'epoxy' }, 'file', USUAL_TABLES)).toBe(true);
  expect(isAsked(field('coats'), { coats: 2 }, 'file', USUAL_TABLES)).toBe(true);
  expect(isAsked(field('turn'), {}, 'file', USUAL_TABLES)).toBe(false);
  expect(isAsked(field('turn'), { board: 'plain 300x180x20mm maple' }, 'file', USUAL_TABLES)).toBe(true);
  expect(isAsked(field('wood'), { board: 'plain 300x180x20mm maple' }, 'file', USUAL_TABLES)).toBe(false);
  expect(isAsked(field('block'), { board: 'plain 300x180x20mm maple' }, 'file', USUAL_TABLES)).toBe(false);
  expect(isAsked(field('block'), { board: 'polygons 300x180x20mm' }, 'file', USUAL_TABLES)).toBe(true);
  expect(isAsked(field('height'), {}, 'lettering', USUAL_TABLES)).toBe(false);
  expect(isAsked(field('height'), {}, null, USUAL_TABLES)).toBe(true);
});
