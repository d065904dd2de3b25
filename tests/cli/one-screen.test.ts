import { describe, expect, test } from 'vitest';
import { captured, fixture } from '../support/cli/captured-run.ts';
import { readCases } from '../verdicts/read-cases.ts';
import { runCase } from '../verdicts/run-case.ts';

/** Rows and columns of a plain terminal. */
const [ROWS, COLUMNS] = [24, 80];

const CASES = [...readCases().values()].flat().filter(({ verdict }) => verdict !== 'refused');

function rowsOf(out: string): readonly string[] {
  return out.trimEnd().split('\n');
}

describe('the answer fits one screen of 24 rows and 80 columns', () => {
  test('for the demo', async () => {
    const { out } = await captured(['vet', '--job', fixture('demo/job.json')]);
    expect(rowsOf(out).length).toBeLessThan(ROWS);
  });

  test('for every job of the table of verdicts', async () => {
    const wrong: string[] = [];
    for (const each of CASES) {
      const rows = rowsOf((await runCase(each)).out);
      if (rows.length >= ROWS || rows.some((row) => [...row].length > COLUMNS)) {
        wrong.push(`${each.name}: ${rows.length}`);
      }
    }
    expect(wrong).toEqual([]);
  });
});
