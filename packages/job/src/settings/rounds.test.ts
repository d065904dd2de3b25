import { expect, test } from 'vitest';
import { settleJob } from '../settle-job.ts';
import { typedJob } from '../typed-job.ts';

const roundsOf = (rounds: NonNullable<Parameters<typeof settleJob>[0]['rounds']>) =>
  settleJob({ rounds }).rounds;
const flat = (diameterMm: number) => ({ kind: 'flat', diameterMm, cuttingLengthMm: null });

test('a round may have a depth and bits of its own, typed or as a structure', () => {
  const typed = roundsOf('black, red+blue:2mm with flat:1mm + vee:60deg:6mm, white with flat:3mm');
  expect(typed).toEqual([
    { drawn: ['black'], depthMm: null, bits: null },
    {
      drawn: ['red', 'blue'],
      depthMm: 2,
      bits: [
        flat(1),
        { kind: 'vee', angleDeg: 60, diameterMm: 6, tipMm: 0, tipRadiusMm: 0, cuttingLengthMm: null },
      ],
    },
    { drawn: ['white'], depthMm: null, bits: [flat(3)] },
  ]);
  const given = [
    { colours: ['black'] },
    { colours: ['red', 'blue'], depth: '2mm', bit: ['flat:1mm', 'vee:60deg:6mm'] },
    { colours: ['white'], bit: [{ kind: 'flat', diameterMm: 3 }] },
  ] as const;
  expect(roundsOf(given)).toEqual(typed);
  expect(roundsOf(String(typedJob({ rounds: given }).rounds))).toEqual(typed);
});

test('the commas of a profile part no rounds, and names may hold the words and signs of the syntax', () => {
  expect(
    roundsOf('red with profile:1mm@0mm,3mm@2mm, blue').map(({ drawn, bits }) => [drawn, bits?.length]),
  ).toEqual([
    [['red'], 1],
    [['blue'], undefined],
  ]);
  expect(roundsOf('lid with rim, base:lid').map(({ drawn }) => drawn)).toEqual([
    ['lid with rim'],
    ['base:lid'],
  ]);
});

test('a bit that is none, and an empty list of them, are refused', () => {
  expect(() => roundsOf('red with flat:big')).toThrow(/length|flat:big/u);
  expect(() => roundsOf([{ colours: ['red'], bit: [] }])).toThrow();
});
