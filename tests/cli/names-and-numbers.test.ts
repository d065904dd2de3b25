import { describe, expect, test } from 'vitest';
import { folderWithSquare } from '../support/cli/bad-input.ts';
import { captured } from '../support/cli/captured-run.ts';

const folder = folderWithSquare();

async function answerOf(...flags: readonly string[]): Promise<string> {
  const { out, err } = await captured(
    ['vet', 'square.svg', '--depth', '3mm', ...flags, '--json', '--fail-on', 'never'],
    { cwd: folder() },
  );
  expect(err).toBe('');
  return out;
}

describe('two ways of typing the same give the same answer', () => {
  test.each([
    ['a wood in capitals', ['--wood', 'MAPLE'], ['--wood', 'maple']],
    ['a wood by its printed name', ['--wood', 'Hard Maple'], ['--wood', 'maple']],
    ['a wood with a blank for its hyphen', ['--wood', 'red oak'], ['--wood', 'red-oak']],
    ['a wood by its botanical name', ['--wood', 'juglans nigra'], ['--wood', 'walnut']],
    [
      'a wood of a glue-up',
      ['--board', 'plain 300x180x20mm Cherry'],
      ['--board', 'plain 300x180x20mm cherry'],
    ],
    ['a seal by its printed name', ['--seal', 'Clear epoxy'], ['--seal', 'epoxy']],
    ['a resin by its printed name', ['--resin', 'deep-pour Epoxy'], ['--resin', 'deep-pour']],
    ['a scale by its printed name', ['--weigh', 'scale reading 0.01 g'], ['--weigh', 'fine']],
    ['a colour in capitals', ['--colour', 'Blue'], ['--colour', 'blue']],
    ['a way of levelling in capitals', ['--level-by', 'Planer'], ['--level-by', 'planer']],
    ['a decimal comma', ['--level', '0,6mm'], ['--level', '0.6mm']],
    ['a decimal comma in a bit', ['--bit', 'flat:3,2mm'], ['--bit', 'flat:3.2mm']],
    [
      'decimal commas in a board',
      ['--board', 'plain 300,5x180x20mm maple'],
      ['--board', 'plain 300.5x180x20mm maple'],
    ],
    ['a decimal comma in a number', ['--pigment-pct', '2,5'], ['--pigment-pct', '2.5']],
    ['a percent sign', ['--pigment-pct', '4%'], ['--pigment-pct', '4']],
    ['a percent sign after a blank', ['--waste-pct', '10 %'], ['--waste-pct', '10']],
    ['a factor in percent', ['--scale', '125%'], ['--scale', '1.25']],
  ])('%s', async (_, typed, plain) => {
    expect(await answerOf(...typed)).toBe(await answerOf(...plain));
  });
});
