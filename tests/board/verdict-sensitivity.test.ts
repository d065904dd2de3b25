import { test } from 'vitest';
import { expectPage } from '../materials/golden-page.ts';
import { renderVerdictSensitivityPage } from './verdict-sensitivity-page.ts';

test('docs/method/verdict-sensitivity.md shows what the program says today', () => {
  expectPage('docs/method/verdict-sensitivity.md', renderVerdictSensitivityPage());
});
