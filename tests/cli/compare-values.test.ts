import { readShopFile } from '@pourproof/job';
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
