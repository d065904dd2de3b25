import { defaultMaterials } from '@pourproof/materials';
import { mmFromInches } from '@pourproof/plane';
import type { Finding } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { findingEntries } from './finding-entries.ts';

const MM = { units: 'mm', materials: defaultMaterials } as const;
const INCHES = { ...MM, units: 'in' } as const;
/** Only what the entries read of a report. */
const reportOf = (...findings: Finding[]) => ({ findings });

function finding(code: Finding['code'], severity: Finding['severity'], places: number): Finding {
  return {
    code,
    severity,
    where: Array.from({ length: places }, (_, k) => ({
      atMm: [k, 0],
      outline: [],
      what: 'stroke',
      lengthMm: 44,
      widthMm: 1.5,
    })),
    measured: { value: mmFromInches(1 / 8), quantity: 'width', unit: 'mm' },
    limit: { value: 3, quantity: 'count', unit: '1' },
    because: ['common-practice', 'common-practice'],
    fix: { options: [] },
  };
}

describe('findings in words', () => {
  test('stand in the order of gravity, then of the checks', () => {
    const entries = findingEntries(
      reportOf(
        finding('outline-crosses', 'note', 1),
        finding('stroke-near-bit-width', 'caution', 1),
        finding('bit-cannot-enter', 'stop', 1),
        finding('outline-open', 'caution', 1),
      ),
      MM,
    );
    expect(entries.map(({ number, code }) => `${number} ${code}`)).toEqual([
      '1 bit-cannot-enter',
      '2 stroke-near-bit-width',
      '3 outline-open',
      '4 outline-crosses',
    ]);
  });

  test('label places by letters, one place by the number alone', () => {
    const [many, single] = findingEntries(
      reportOf(finding('bit-cannot-enter', 'stop', 704), finding('outline-open', 'caution', 1)),
      MM,
    );
    const labels = many?.places.map((place) => place.label) ?? [];
    expect([labels[0], labels[25], labels[26], labels[27], labels[701], labels[702]]).toEqual([
      '1a',
      '1z',
      '1aa',
      '1ab',
      '1zz',
      '1aaa',
    ]);
    expect(new Set(labels).size).toBe(704);
    expect(single?.places.map((place) => place.label)).toEqual(['2']);
  });

  test('say what each place is and how large', () => {
    const [entry] = findingEntries(reportOf(finding('bit-cannot-enter', 'stop', 1)), MM);
    expect(entry?.places[0]?.text).toBe('stroke 44.00 mm long, 1.50 mm wide');
    const [inches] = findingEntries(reportOf(finding('bit-cannot-enter', 'stop', 1)), INCHES);
    expect(inches?.places[0]?.text).toBe('stroke 1.732 in long, 0.059 in wide');
  });

  test('give lengths in the unit asked for and counts as they are, each source once', () => {
    const [entry] = findingEntries(reportOf(finding('outline-crosses', 'note', 1)), INCHES);
    expect(entry?.measured).toBe('0.125 in');
    expect(entry?.limit).toBe('3 crossings');
    expect(entry?.basis).toHaveLength(1);
    const area: Finding = {
      ...finding('off-the-board', 'stop', 1),
      measured: { value: 64.516, quantity: 'area', unit: 'mm²' },
    };
    expect(findingEntries(reportOf(area), INCHES)[0]?.measured).toBe('0.100 in²');
    expect(findingEntries(reportOf(area), MM)[0]?.measured).toBe('64.5 mm²');
  });
});

test('ways out that no proof was left for are told one by one only where there is no other', () => {
  const widen = { do: 'widen', what: 'stroke', byMm: 0.5, clears: true } as const;
  const own = finding('bit-cannot-enter', 'stop', 1);
  const texts = (fix: Finding['fix']): readonly string[] =>
    findingEntries(reportOf({ ...own, fix }), MM)[0]?.fixes.map(({ text }) => text) ?? [];
  const [alone] = texts({ options: [widen] });
  expect(texts({ options: [widen], untried: [widen] })).toEqual([
    alone,
    'One more way out was not tried: a drawing of this size allows few trials.',
  ]);
  expect(texts({ options: [], untried: [widen, widen] })).toEqual(
    Array(2).fill(
      `Not tried, as a drawing of this size allows few trials, so that it may bring worse: ${alone}`,
    ),
  );
});
