import { readdirSync, readFileSync } from 'node:fs';
import { SETTING_KEYS } from '@pourproof/job';

import { expect, test } from 'vitest';
import { fieldName } from './field-name.ts';
import { jobProblem } from './job-problem.ts';
import { USUAL_TABLES } from './shelf.ts';

const ELEMENTS = new URL('../elements/', import.meta.url);

test('every setting is called by its field, none by its key', () => {
  const names = SETTING_KEYS.map((key) => [key, fieldName(key)] as const);
  expect(names.filter(([key, name]) => name === key)).toEqual([]);
  expect(new Set(names.map(([, name]) => name)).size).toBe(names.length);
});

test('names of fields that elements label themselves are what these write', () => {
  const written = readdirSync(ELEMENTS)
    .map((name) => readFileSync(new URL(name, ELEMENTS), 'utf8'))
    .join('\n');
  for (const key of [
    'text',
    'font',
    'capHeight',
    'align',
    'tracking',
    'lineSpacing',
    'arc',
    'axis',
    'bit',
    'grain',
    'units',
  ]) {
    expect(written).toContain(/“(.*)”/u.exec(fieldName(key))?.[1]);
  }
});

test('what is no setting keeps its name', () => {
  expect(fieldName('row')).toBe('row');
});

test('what is wrong with a field is said with its label', () => {
  const problem = (job: Parameters<typeof jobProblem>[0]): string => jobProblem(job, USUAL_TABLES);
  expect(problem({ depth: '3' })).toMatch(/^“Depth of the pocket”: /u);
  expect(problem({ sealHours: '-1h' })).toMatch(/^“Left before the pour” is -1 h/u);
  expect(problem({ bit: ['flat:0mm'] })).toMatch(/^“Bits, in the order of use” "flat:0mm" has/u);
  expect(problem({ width: '10mm', scale: 2 })).toContain(
    'give one of “Width of the artwork”, “Height of the artwork” and “Factor”',
  );
  expect(problem({ depth: '3mm' })).toBe('');
});
