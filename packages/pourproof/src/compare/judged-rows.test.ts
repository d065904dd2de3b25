import type { JobInput } from '@pourproof/job';
import { expect, test } from 'vitest';
import type { Source } from '../source.ts';
import { vet } from '../vet.ts';
import { figuresOf } from './figures.ts';
import { judgedRows } from './judged-rows.ts';
import { byCost, countOf, rowsOf } from './rows-of.ts';

const source: Source = {
  kind: 'file',
  name: 'two.svg',
  bytes: new TextEncoder().encode(
    '<svg xmlns="http://www.w3.org/2000/svg" width="70mm" height="30mm" viewBox="0 0 70 30"><path d="M5 5H65V11H5ZM5 20H45V21.5H5Z"/></svg>',
  ),
};
const vary = {
  seal: ['none', 'shellac'],
  bit: [['flat:2mm'], ['flat:1mm']],
  width: ['60mm', '80mm'],
  depth: ['2mm', '3mm', 'bad'],
} satisfies { readonly [key: string]: readonly unknown[] };

test('rows are every choice, the last setting fastest; they are judged so that what costs most changes least', () => {
  const rows = rowsOf(vary);
  expect([rows.length, countOf(vary)]).toEqual([24, 24]);
  expect(rows.slice(0, 4).map(({ depth, width }) => `${width} ${depth}`)).toEqual([
    '60mm 2mm',
    '60mm 3mm',
    '60mm bad',
    '80mm 2mm',
  ]);
  const ordered = byCost(vary).map((k) => rows[k] as JobInput);
  expect(new Set(ordered).size).toBe(24);
  const changes = (key: keyof JobInput): number =>
    ordered.filter((row, k) => k > 0 && JSON.stringify(row[key]) !== JSON.stringify(ordered[k - 1]?.[key]))
      .length;
  expect([changes('width'), changes('bit'), changes('seal')]).toEqual([1, 3, 23]);
  expect(changes('depth')).toBeGreaterThan(changes('bit'));
});

test('every figure is that of vet, digit for digit, and a row that is refused says why', async () => {
  const rows = rowsOf(vary).filter((_, k) => k % 5 === 0 || k === 2);
  const job: JobInput = { wood: 'cherry', level: '0.4mm', pricePerG: 0.03 };
  const outcomes = await judgedRows({
    source,
    job,
    rows,
    options: {},
    names: { depth: '--depth' },
    isPictured: false,
  });
  expect(outcomes.length).toBe(rows.length);
  for (const [k, outcome] of outcomes.entries()) {
    const row = rows[k] as JobInput;
    if (row.depth === 'bad') {
      expect(outcome).toMatchObject({ is: 'refused', refusal: { code: 'not-a-measure', where: '--depth' } });
    } else {
      const { report } = await vet(source, { ...job, ...row });
      expect(outcome).toEqual({ is: 'judged', figures: figuresOf(report) });
      expect(outcome).toMatchObject({
        figures: {
          verdict: report.verdict,
          minutes: report.cut.time.minutes,
          massG: report.pour.colours[0]?.massG,
          travelMm: { median: report.bleed.blocks[0]?.travelMm.median },
        },
      });
    }
  }
});
