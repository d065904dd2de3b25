import type { Report } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { brokenWays } from '../support/broken-ways.ts';
import { caseJob } from './case-job.ts';
import { readCases, type VerdictCase } from './read-cases.ts';
import { runCase } from './run-case.ts';

/** What pourproof answered: its verdict, or that it refused the job, the codes of its findings, and the whole report. */
interface Answer {
  readonly verdict: VerdictCase['verdict'];
  readonly codes: readonly string[];
  readonly report: Report | null;
}

async function answerTo(each: VerdictCase): Promise<Answer> {
  const { code, out, err } = await runCase(each, ['--json']);
  if (code === 2) {
    return { verdict: 'refused', codes: [], report: null };
  }
  expect(code, err).toBeLessThan(2);
  const report = JSON.parse(out) as Report;
  return { verdict: report.verdict, codes: report.findings.map((finding) => finding.code), report };
}

const answers = new Map<VerdictCase, Promise<Answer>>();

/** The answer to a case, which is vetted once. */
function answerOnce(each: VerdictCase): Promise<Answer> {
  const answer = answers.get(each) ?? answerTo(each);
  answers.set(each, answer);
  return answer;
}

/** What differs between the answer and the maker's; empty where they agree. */
function differences({ verdict, codes, notCodes }: VerdictCase, answer: Answer): readonly string[] {
  return [
    ...(answer.verdict === verdict ? [] : [`${answer.verdict}, not ${verdict} (${answer.codes.join(' ')})`]),
    ...codes.filter((code) => !answer.codes.includes(code)).map((code) => `${code} is missing`),
    ...notCodes.filter((code) => answer.codes.includes(code)).map((code) => `${code} is there`),
  ];
}

/** Findings of a mix that is hard to weigh or to stir. */
const SMALL_MIXES: readonly string[] = ['batch-too-small', 'mix-too-small'];

for (const [heading, cases] of readCases()) {
  describe(heading, () => {
    for (const each of cases) {
      test(each.isKnownWrong ? `${each.name} (known to be judged otherwise)` : each.name, async () => {
        const found = differences(each, await answerOnce(each));
        if (each.isKnownWrong) {
          expect(found, 'it is judged as a maker would: take its "?" off in cases.txt').not.toEqual([]);
        } else {
          expect(found, each.reason).toEqual([]);
        }
      });
    }
    test.each(cases.filter(({ verdict }) => verdict !== 'refused').map((each) => [each.name, each] as const))(
      'every way out holds what it says: %s',
      async (_, each) => {
        const { report } = await answerOnce(each);
        const { source, job, materials } = await caseJob(each);
        expect(
          report === null ? ['it is refused'] : await brokenWays(source, job, report, materials),
        ).toEqual([]);
      },
    );
  });
}

test('the table has 150 cases or more, each with a name of its own and a reason', () => {
  const cases = [...readCases().values()].flat();
  expect(cases.length).toBeGreaterThanOrEqual(150);
  expect(new Set(cases.map(({ name }) => name)).size).toBe(cases.length);
  expect(cases.filter(({ reason }) => reason === '')).toEqual([]);
});

test('notes on small mixes come with few of the jobs that a maker would sign', async ({ skip }) => {
  const sound = [...readCases().values()].flat().filter(({ verdict }) => verdict === 'clear').length;
  const signed = [...answers].filter(([{ verdict }]) => verdict === 'clear');
  skip(signed.length < sound, 'some cases were left out');
  const unasked: string[] = [];
  for (const [{ name, codes }, answer] of signed) {
    // rows that are about mixes expect them
    const isSmall = (code: string): boolean => SMALL_MIXES.includes(code);
    if ((await answer).codes.some(isSmall) && !codes.some(isSmall)) {
      unasked.push(name);
    }
  }
  expect(unasked.length / signed.length, unasked.join(', ')).toBeLessThan(0.1);
});
