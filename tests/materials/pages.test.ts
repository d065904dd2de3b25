import { test } from 'vitest';
import { renderSensitivityPage } from '../pages/sensitivity-page.ts';
import { renderSourcesPage } from '../pages/sources-page.ts';
import { renderTablesPage } from '../pages/tables-page.ts';
import { expectPage } from '../support/expect-page.ts';

test('docs/sources.md lists every source as the table has it', () => {
  expectPage('docs/sources.md', renderSourcesPage());
});

test('docs/method/materials-tables.md shows every row as it ships', () => {
  expectPage('docs/method/materials-tables.md', renderTablesPage());
});

test('docs/method/travel-sensitivity.md shows what the formulas give today', () => {
  expectPage('docs/method/travel-sensitivity.md', renderSensitivityPage());
});
