import { test } from 'vitest';
import { renderVerdictSensitivityPage } from '../pages/verdict-sensitivity-page.ts';
import { expectPage } from '../support/expect-page.ts';

test('docs/method/verdict-sensitivity.md shows what the program says today', () => {
  expectPage('docs/method/verdict-sensitivity.md', renderVerdictSensitivityPage());
});
