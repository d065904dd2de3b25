import { settleJob } from '@pourproof/job';
import { type Finding, judgeDrawing } from '@pourproof/proof';
import { readDrawing, sourceName } from 'pourproof';
import { test } from 'vitest';
import { expectGolden } from '../support/expect-golden.ts';
import { caseJob } from './case-job.ts';
import { readCases, type VerdictCase } from './read-cases.ts';

/** Rows of cases.txt that are told for each code. */
const ROWS = 2;

/** Places that are told of a finding. */
const PLACES = 4;

async function findingsOf(each: VerdictCase): Promise<readonly Finding[]> {
  const { source, job, materials } = await caseJob(each);
  const hasFont = source.font !== null && source.font !== undefined;
  const settled = settleJob(job, { source: source.kind, hasFont, materials });
  return judgeDrawing(await readDrawing(source, settled), sourceName(source), settled).report.findings;
}

/** Numbers to six digits: the last ones differ between engines. */
const told = (value: unknown): string =>
  JSON.stringify(value, (_, inner) => (typeof inner === 'number' ? Number(inner.toPrecision(6)) : inner));

function toldFinding({ severity, measured, limit, because, where, fix, ...more }: Finding): string {
  const { code: _, seenTo, ...others } = more;
  const rest = { ...others, ...(seenTo === true && { seenTo }) };
  return [
    `  ${severity}: ${told(measured)} against ${told(limit)} (${because.join(', ')})`,
    ...(Object.keys(rest).length > 0 ? [`  besides: ${told(rest)}`] : []),
    ...where
      .slice(0, PLACES)
      .map(
        ({ outline, ...part }) =>
          `  at ${told(part)}, drawn by ${outline.length === 1 ? '1 line' : `${outline.length} lines`}`,
      ),
    ...(where.length > PLACES ? [`  and at ${where.length - PLACES} places more`] : []),
    ...fix.options.map((option) => `  proposed: ${told(option)}`),
  ].join('\n');
}

const all = [...readCases().values()].flat().filter(({ verdict }) => verdict !== 'refused');
const codes = [...new Set(all.flatMap((each) => each.codes))].sort();

// what checks propose, before it is tried: which of it is offered, the tests of ways out hold
test.each(codes)(
  '%s: severity, numbers, places, sources and proposals are as they were looked at',
  async (code) => {
    const rows = all.filter((each) => each.codes.includes(code)).slice(0, ROWS);
    const blocks: string[] = [];
    for (const each of rows) {
      const findings = (await findingsOf(each)).filter((finding) => finding.code === code);
      blocks.push([`${each.name}: ${each.artwork}`, ...findings.map(toldFinding)].join('\n'));
    }
    expectGolden(new URL(`as-judged/${code}.txt`, import.meta.url), `${blocks.join('\n\n')}\n`);
  },
);
