import { readFileSync } from 'node:fs';
import process from 'node:process';
import { type Remedies, remedy } from 'pourproof';
import { expect, test } from 'vitest';
import { ROOT } from '../support/cli/captured-run.ts';
import { expectPage } from '../support/expect-page.ts';
import { caseJob } from '../verdicts/case-job.ts';
import { readCases, type VerdictCase } from '../verdicts/read-cases.ts';

/** `npm run remedies` goes through all rows and holds the page; the suite takes a few of them. */
const isWhole = process.env.POURPROOF_REMEDIES === 'whole';
/** Of so many rows the suite takes one. */
const ONE_OF = 15;
const PAGE = 'docs/method/not-saved.md';

/** Why no setting of a job saves it, by what binds. */
const WHY: Readonly<Record<string, string>> = {
  'oil-in-wood': 'oil or wax is cleaned off at the bench, and no setting tells of that but `--seen-to`',
  'ratio-mistaken': 'the numbers of the resin have to be read from its label again',
  'outline-open': 'a side is missing in the drawing, and only whoever drew it knows which way it goes',
};

const stopped = [...readCases().values()]
  .flat()
  .filter(({ verdict, isKnownWrong }) => verdict === 'stop' && !isKnownWrong);
const rows = isWhole ? stopped : stopped.filter((_, k) => k % ONE_OF === 1);
const found = new Map<string, Remedies>();

test.each(rows.map((each) => [each.name, each] as const))(
  '%s: the best way has no stop, and needs no remedy of its own',
  { timeout: 300_000 },
  async (_, each) => {
    const { source, job, ...own } = await caseJob(each);
    const all = await remedy(source, job, own);
    found.set(each.name, all);
    expect(all.ended).toBe('all-tried');
    expect(all.remedies.filter(({ verdict }) => verdict === 'stop')).toEqual([]);
    const [best] = all.remedies;
    if (best === undefined) {
      expect(page(), each.name).toContain(`| ${each.name} |`);
      expect(all.nearest?.binds.every((code) => code in WHY)).toBe(true);
    } else {
      expect(page(), each.name).not.toContain(`| ${each.name} |`);
      const { remedies, nearest } = await remedy(source, best.job, own);
      expect([remedies, nearest]).toEqual([[], null]);
    }
  },
);

function page(): string {
  return isWhole && process.env.UPDATE_GOLDEN === '1' ? '' : readFileSync(`${ROOT}/${PAGE}`, 'utf8');
}

test.runIf(isWhole)(`${PAGE} lists the rows that are not saved`, () => {
  expect(found.size).toBe(stopped.length);
  const lost = stopped.filter(({ name }) => found.get(name)?.remedies.length === 0);
  expectPage(PAGE, rendered(lost));
});

function rendered(lost: readonly VerdictCase[]): string {
  const reasonOf = ({ name }: VerdictCase): string =>
    (found.get(name)?.nearest?.binds ?? [])
      .map((code) => `\`${code}\`: ${WHY[code] ?? 'unknown'}`)
      .join('; ');
  return `# Jobs that no remedy saves

Written by \`npm run remedies\` (\`tests/remedies/every-row.test.ts\`), which asks for [remedies](remedy.md) of every job of the table of verdicts (\`tests/verdicts/cases.txt\`) that is stopped, with everything allowed
to change and no shop. Change the table or the search, not this page.

Of ${stopped.length} such jobs ${stopped.length - lost.length} are saved. Of each the best way was proved from scratch, and a remedy of the remedied job is "nothing". These are not:

| job | what binds, and why |
| --- | --- |
${lost.map((each) => `| ${each.name} | ${reasonOf(each)} |`).join('\n')}
`;
}
