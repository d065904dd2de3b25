import { readShopFile } from '@pourproof/job';
import { type Compared, compareCsv, compareText } from '@pourproof/wording';
import { expect, test } from 'vitest';
import { comparedValues, typedSettings } from '../../apps/cli/src/compare-values.ts';
import { parseFlags } from '../../apps/cli/src/parse-flags.ts';
import { captured } from '../support/cli/captured-run.ts';

const shop = readShopFile(
  {
    schema: 'pourproof/shop@1',
    bits: ['flat:1/8in', { bit: 'flat:1mm', toBuy: true }],
    seals: ['shellac'],
  },
  'shop.json',
);
function values(...argv: string[]): unknown {
  const flags = parseFlags(argv, 'repeat');
  return typedSettings(flags).map((flag) => comparedValues(flag, flags, shop));
}

test.each<readonly [readonly string[], unknown]>([
  [['--depth', '2mm or 3mm'], [['2mm', '3mm']]],
  [['--depth', '2mm', '--depth', '3mm or 2mm'], [['2mm', '3mm']]],
  [['--depth', '2mm to 3mm by 0.5mm'], [['2mm', '2.5mm', '3mm']]],
  [['--boards', '1 to 3 by 1'], [[1, 2, 3]]],
  [['--bit', 'flat:2mm', '--bit', 'flat:1mm'], [[['flat:2mm', 'flat:1mm']]]],
  [['--bit', 'flat:2mm', '--bit', 'flat:1mm or none'], [[['flat:2mm', 'flat:1mm'], ['flat:2mm']]]],
  [['--bit', 'flat:1mm or flat:3mm then flat:1mm'], [[['flat:1mm'], ['flat:3mm', 'flat:1mm']]]],
  [['--bit', 'shop'], [[['flat:1/8in'], ['flat:1mm']]]],
  [['--seal', 'none or shop'], [['none', 'shellac']]],
  [['--text', 'Salt or pepper'], [['Salt or pepper']]],
  [['--level-by', 'hand or Drum'], [['hand', 'drum']]],
])('%j is compared over %j', (argv, expected) => {
  expect(values(...argv)).toEqual(expected);
});

test.each<readonly [readonly string[], RegExp]>([
  [['--depth', '2mm to 3in by 1mm'], /no range/u],
  [['--depth', '3mm to 2mm by 1mm'], /no range/u],
  [['--resin', 'shop'], /shop\.json lists none/u],
  [['--depth', 'shop'], /no list in a shop file/u],
  [['--level-by', 'hand or sieve'], /unknown/u],
])('%j is refused', (argv, message) => {
  expect(() => values(...argv)).toThrow(message);
});

test('flags of other commands are refused by name', async () => {
  const compare = await captured(['compare', 'x.svg', '--overlay', 'y.svg']);
  expect([compare.code, compare.err]).toEqual([
    2,
    expect.stringContaining('--overlay is no flag of compare'),
  ]);
  const vet = await captured(['vet', 'fixtures/demo/board.svg', '--may', 'bit']);
  expect([vet.code, vet.err]).toEqual([2, expect.stringContaining('pourproof remedy')]);
});

test('a comparison is told as a table, narrow ones row by row, and as values that no program runs', () => {
  const figures = {
    verdict: 'stop',
    findings: [{ code: 'bit-cannot-enter', severity: 'stop' }],
    lostLengthMm: 12.5,
    levelledAwayMm: 0,
    leftStandingMm2: 3,
    narrowestMm: 1,
    minutes: 4,
    changeMinutes: null,
    massG: 2.5,
    price: null,
    travelMm: { median: 0.5, low: 0.1, high: 2 },
  } as const;
  const refusal = { code: 'not-a-measure', what: '--depth: "3" has no unit.', remedy: 'Type 3mm.' };
  const compared: Compared = {
    rows: [
      { artwork: '=a,b.svg', values: { depth: '2mm' }, outcome: { is: 'judged', figures } },
      { artwork: 'c.svg', values: { depth: '3' }, outcome: { is: 'refused', refusal } },
    ],
    keys: ['depth'],
    unit: 'mm',
  };
  const wide = compareText(compared, { columns: 120 });
  expect(wide).toMatch(/^artwork +depth +verdict +lost +narrowest +time +mix +travel\n/u);
  expect(wide).toMatch(
    /=a,b\.svg +2mm +STOP +12\.50 mm +1\.00 mm +4\.0 min +2\.5 g +0\.50 mm \(to 2\.00 mm\)/u,
  );
  expect(wide).toContain('2 rows: 0 clear, 0 with cautions, 1 stopped, 1 refused.');
  for (const line of compareText(compared, { columns: 40 }).split('\n')) {
    expect(line.length).toBeLessThanOrEqual(44);
  }
  const [head, one, two] = compareCsv(compared).split('\r\n');
  expect(head).toMatch(/^artwork,depth,verdict,stops/u);
  expect(one).toMatch(/^"'=a,b\.svg",2mm,stop,1,0,bit-cannot-enter,12\.5,0,3,1,4,,2\.5,,0\.5,0\.1,2,$/u);
  expect(two).toContain('"\'--depth: ""3"" has no unit."');
});
