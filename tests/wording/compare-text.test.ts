import {
  type Compared,
  compareCsv,
  compareSheet,
  compareSummary,
  compareText,
  type ToldRow,
} from '@pourproof/wording';
import { describe, expect, test } from 'vitest';

type Judged = Extract<ToldRow['outcome'], { is: 'judged' }>['figures'];

const FIGURES: Judged = {
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
};
const judged = (artwork: string, values: ToldRow['values'], more: Partial<Judged> = {}): ToldRow => ({
  artwork,
  values,
  outcome: { is: 'judged', figures: { ...FIGURES, ...more } },
});
const refused = (artwork: string, values: ToldRow['values']): ToldRow => ({
  artwork,
  values,
  outcome: {
    is: 'refused',
    refusal: { code: 'not-a-measure', what: '--depth: "3" has no unit.', remedy: 'Type 3mm.' },
  },
});
const clear = { verdict: 'clear', findings: [], lostLengthMm: 0 } as const;
const NAMES = Array.from({ length: 12 }, (_, k) => `order-2026-11-30-of-the-${k}-customer.svg`);

test('a comparison is told as a table, what a row lacks by a letter, and as values that no program runs', () => {
  const compared: Compared = {
    rows: [judged('=a,b.svg', { depth: '2mm' }), refused('c.svg', { depth: '3' })],
    keys: ['depth'],
    unit: 'mm',
  };
  const [heads, units, one, two] = compareText(compared, { columns: 120 }).split('\n');
  expect(heads).toMatch(/^artwork +depth +verdict +why +lost +narrowest +time +mix +travel$/u);
  expect(units).toMatch(/^ +mm +mm +min +g +mm$/u);
  expect(one).toMatch(/^=a,b\.svg +2mm +STOP +a +12\.50 +1\.00 +4\.0 +2\.5 +0\.50 to 2\.00$/u);
  expect(two).toMatch(/^c\.svg +3 +refused +b +–/u);
  const text = compareText(compared, { columns: 80 });
  expect(text).toContain(
    'a  The bit cannot enter here (bit-cannot-enter)\nb  --depth: "3" has no unit. Type 3mm.',
  );
  expect(text.replaceAll(/\s+/gu, ' ')).toContain('2 rows: 0 clear, 0 with cautions, 1 stopped, 1 refused.');
  const [head, first, second] = compareCsv(compared).split('\r\n');
  expect(head).toMatch(/^artwork,depth,verdict,stops/u);
  expect(first).toMatch(/^"'=a,b\.svg",2mm,stop,1,0,bit-cannot-enter,12\.5,0,3,1,4,,2\.5,,0\.5,0\.1,2,$/u);
  expect(second).toContain('"\'--depth: ""3"" has no unit."');
});

describe('a wide table', () => {
  const bits = [['flat:1/8in:length 12mm'], ['flat:2mm', 'flat:1mm']];
  const rows = NAMES.flatMap((name, n) =>
    bits.map((bit, k) =>
      judged(name, { bit }, { massG: n + k, narrowestMm: 1 + n, levelledAwayMm: n, minutes: 9 * n }),
    ),
  );
  const compared: Compared = { rows, keys: ['bit'], unit: 'mm' };

  test.each([30, 44, 80, 100, 160])(
    'of %i columns holds them, says what is left out, and leaves out no row',
    (columns) => {
      const text = compareText(compared, { columns });
      for (const line of text.split('\n')) {
        // a name or a bit may be longer than a narrow terminal
        expect(line.length).toBeLessThanOrEqual(Math.max(columns, 50));
      }
      for (let n = 0; n < NAMES.length; n++) {
        expect(text).toMatch(new RegExp(`-${n}-c.*.svg`, 'u'));
      }
      expect(text.includes('Left out for want of room: ')).toBe(columns === 80);
    },
  );

  test('says once what is the same in all rows, and folds the rows of an artwork that cannot be read', () => {
    const text = compareText(
      { ...compared, rows: [...rows, ...bits.map((bit) => refused('bad.svg', { bit }))] },
      { columns: 160 },
    );
    expect(text).toContain('The same in all rows: travel 0.50 mm (to 2.00 mm).');
    expect(text.match(/^bad\.svg +all +refused/gmu)).toHaveLength(1);
  });
});

test('which of two bits to buy is one line for each, and a sentence that says why', () => {
  const rows = ['a', 'b', 'c'].flatMap((name, k) => [
    judged(name, { bit: ['flat:1mm'] }, k < 2 ? { ...clear, minutes: 6 } : { minutes: 6 }),
    judged(name, { bit: ['flat:2mm'] }, k < 1 ? { ...clear, minutes: 2 } : { minutes: 2 }),
  ]);
  const bitPrices = new Map([
    ['flat:1mm', 19],
    ['flat:2mm', 0],
  ]);
  const compared: Compared = { rows, keys: ['bit'], unit: 'mm', bitPrices };
  const [summary] = compareSummary(compared);
  expect(summary!.values).toMatchObject([
    { value: 'flat:1mm', rows: 3, clear: 2, stop: 1, artworksMade: 2, toBuy: 19, mean: { minutes: 6 } },
    { value: 'flat:2mm', rows: 3, clear: 1, stop: 2, artworksMade: 1, toBuy: 0, mean: { minutes: 2 } },
  ]);
  expect(summary!.values[1]!.mean!.lostLengthMm).toBeCloseTo(25 / 3, 12);
  expect(summary!.best).toEqual({ value: 'flat:1mm', by: 'stops' });
  const text = compareText(compared, { columns: 80 });
  expect(text).toMatch(/^flat:1mm +2 +0 +1 +19\.00 +4\.17 +6\.0 +2\.5$/mu);
  expect(text).toContain('flat:1mm is ahead: it is stopped least often.');
  expect(text.replaceAll(/\s+/gu, ' ')).toContain('Stopped in every row: c;');
  expect(compareSheet(compared, '0')).toContain('<td>flat:1mm</td><td>2</td><td>0</td><td>1</td>');
});

test.each<readonly [string | null, Partial<Judged>, Partial<Judged>]>([
  ['clear', {}, clear],
  ['lost', { ...clear, lostLengthMm: 2 }, clear],
  ['time', { ...clear, minutes: 5 }, clear],
  [null, clear, { ...clear, minutes: 4.001 }],
])('what decides between two values is %s', (by, a, b) => {
  const stopFree = { findings: [], verdict: 'caution' } as const;
  const rows = [
    judged('a', { depth: '2mm' }, { ...stopFree, ...a }),
    judged('a', { depth: '3mm' }, { ...stopFree, ...b }),
  ];
  const [summary] = compareSummary({ rows, keys: ['depth'], unit: 'mm' });
  expect(summary!.best).toEqual(by === null ? null : { value: '3mm', by });
});
