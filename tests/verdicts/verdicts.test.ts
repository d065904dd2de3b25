import { describe, expect, test } from 'vitest';
import { captured, ROOT } from '../support/cli/captured-run.ts';
import { caseArtwork } from './artwork.ts';
import { readCases, type VerdictCase } from './read-cases.ts';

/** What pourproof answered: its verdict, or that it refused the job, and the codes of its findings. */
interface Answer {
  readonly verdict: VerdictCase['verdict'];
  readonly codes: readonly string[];
}

const NAME = 'case.svg';

async function answerTo({ artwork, flags }: VerdictCase): Promise<Answer> {
  const drawn = caseArtwork(artwork);
  const source = drawn.kind === 'flags' ? drawn.flags : [NAME];
  const files = drawn.kind === 'svg' ? { readFile: async () => new TextEncoder().encode(drawn.svg) } : {};
  const { code, out, err } = await captured(['vet', ...source, ...flags, '--json'], { cwd: ROOT, ...files });
  if (code === 2) {
    return { verdict: 'refused', codes: [] };
  }
  expect(code, err).toBeLessThan(2);
  const { verdict, findings } = JSON.parse(out) as {
    verdict: Answer['verdict'];
    findings: readonly { code: string }[];
  };
  return { verdict, codes: findings.map((finding) => finding.code) };
}

/** What differs between the answer and the maker's; empty where they agree. */
function differences({ verdict, codes, notCodes }: VerdictCase, answer: Answer): readonly string[] {
  return [
    ...(answer.verdict === verdict ? [] : [`${answer.verdict}, not ${verdict} (${answer.codes.join(' ')})`]),
    ...codes.filter((code) => !answer.codes.includes(code)).map((code) => `${code} is missing`),
    ...notCodes.filter((code) => answer.codes.includes(code)).map((code) => `${code} is there`),
  ];
}

for (const [heading, cases] of readCases()) {
  describe(heading, () => {
    for (const each of cases) {
      test(each.isKnownWrong ? `${each.name} (known to be judged otherwise)` : each.name, async () => {
        const found = differences(each, await answerTo(each));
        if (each.isKnownWrong) {
          expect(found, 'it is judged as a maker would: take its "?" off in cases.txt').not.toEqual([]);
        } else {
          expect(found, each.reason).toEqual([]);
        }
      });
    }
  });
}

test('the table has 150 cases or more, each with a name of its own and a reason', () => {
  const cases = [...readCases().values()].flat();
  expect(cases.length).toBeGreaterThanOrEqual(150);
  expect(new Set(cases.map(({ name }) => name)).size).toBe(cases.length);
  expect(cases.filter(({ reason }) => reason === '')).toEqual([]);
});
