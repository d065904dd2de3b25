import { expect, test } from 'vitest';
import type { Finding, FindingPlace } from '../report/finding-schema.ts';
import { type Comparison, changedFindings, compareFindings } from './compare-findings.ts';

const STILL = { moved: { to: (place: FindingPlace): FindingPlace => place, slackMm: 1 }, seenTo: [] };

const found = (more: Partial<Finding> & { value?: number; against?: number } = {}): Finding => {
  const { value = 0.5, against = 1, ...rest } = more;
  return {
    code: 'short-grain-will-break',
    severity: 'caution',
    where: [],
    measured: { value, quantity: 'width', unit: 'mm' },
    limit: { value: against, quantity: 'width', unit: 'mm' },
    because: ['own-inference'],
    fix: { options: [] },
    ...rest,
  };
};
const compared = (
  target: Finding,
  before: readonly Finding[],
  after: readonly Finding[],
  change: Parameters<typeof changedFindings>[2] = STILL,
): Comparison => compareFindings(target, changedFindings(before, after, change));
const isBetter = (before: Finding, left: Finding): boolean => compared(before, [before], [left]).isBetter;

test('a finding of the same grade is better from a fifth less beyond its limit', () => {
  // half a millimetre short of 1 mm: from 0.4 mm on it is better
  expect(isBetter(found(), found({ value: 0.59 }))).toBe(false);
  expect(isBetter(found(), found({ value: 0.61 }))).toBe(true);
  // as a share of the limit, which may be another after the change
  expect(isBetter(found(), found({ value: 1.3, against: 2 }))).toBe(true);
  expect(isBetter(found(), found({ value: 1.1, against: 2 }))).toBe(false);
  // beyond it on the other side
  expect(isBetter(found({ value: 1.5 }), found({ value: 1.39 }))).toBe(true);
  expect(isBetter(found({ value: 1.5 }), found({ value: 1.41 }))).toBe(false);
  // against a limit of nothing, by the measure itself
  expect(isBetter(found({ against: 0 }), found({ value: 0.39, against: 0 }))).toBe(true);
  expect(isBetter(found({ against: 0 }), found({ value: 0.41, against: 0 }))).toBe(false);
});

test('a milder one is better and a graver one is not, whatever it measures', () => {
  expect(isBetter(found(), found({ severity: 'note', value: 0.1 }))).toBe(true);
  expect(isBetter(found(), found({ severity: 'stop', value: 0.99 }))).toBe(false);
  const gone = compared(found(), [found()], []);
  expect([gone.left, gone.isBetter]).toEqual([undefined, true]);
});

test('of several that are left the gravest counts', () => {
  const after = [found({ severity: 'note' }), found({ severity: 'caution', value: 0.9 })];
  expect(compared(found(), [found()], after).left).toBe(after[1]);
});

test('what is new counts by its grade, but not what the maker has seen to', () => {
  const before = [found()];
  const after = [
    found({ code: 'floor-too-thin', severity: 'stop' }),
    found({ code: 'sands-through', severity: 'caution' }),
    found({ code: 'batch-too-small', severity: 'note' }),
  ];
  const codes = (findings: readonly Finding[]): readonly string[] => findings.map(({ code }) => code);
  const { asGrave, graver, brought } = compared(found(), before, after);
  expect(codes(asGrave)).toEqual(['floor-too-thin', 'sands-through']);
  expect(codes(graver)).toEqual(['floor-too-thin']);
  expect(brought).toEqual(['floor-too-thin', 'sands-through']);
  const seen = compared(found(), before, after, { ...STILL, seenTo: ['floor-too-thin'] });
  expect(codes(seen.graver)).toEqual([]);
  // one of the same round that was as grave before is not new; of another round it is
  const rounds = [found({ round: 1 }), found({ code: 'sands-through', round: 1 })];
  const again = [found({ code: 'sands-through', round: 1 }), found({ code: 'sands-through', round: 2 })];
  expect(compared(rounds[0] as Finding, rounds, again).asGrave).toEqual([again[1]]);
});
