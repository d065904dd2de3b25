import { readFileSync } from 'node:fs';
import { limits } from '@pourproof/materials';
import { expect, test } from 'vitest';
import { sourceFiles } from '../support/source-files.ts';

test('every limit of practice is read: by a finding, a formula, or as the default of a setting', () => {
  const text = sourceFiles()
    .filter((file) => !file.endsWith('.test.ts') && !file.endsWith('materials/src/limits.ts'))
    .map((file) => readFileSync(file, 'utf8'))
    .join('\n');
  const unread = Object.keys(limits).filter(
    (id) => !new RegExp(`limits\\.${id}\\b|'${id}'|\\b${id}: \\w+[^\\n]*= limits;`, 'u').test(text),
  );
  expect(unread).toEqual([]);
});
