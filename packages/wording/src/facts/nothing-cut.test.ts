import { settleJob } from '@pourproof/job';
import { packRings, textInUnits } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { cutSentences } from './cut-sentences.ts';
import { formatMinutes } from './cutter-facts.ts';
import { measureFacts } from './measure-facts.ts';
import { resinFacts } from './resin-facts.ts';

/** Bars of 20 × 2 mm under a 1 mm bit unless told otherwise. */
function reportOf(
  rings: readonly (readonly number[])[],
  bit = 'flat:1mm',
  pigmentPct = 3,
  depth = '2mm',
): Report {
  const drawing = {
    format: 'svg' as const,
    scaleSource: textInUnits('made by a test'),
    toleranceMm: 0.005,
    notices: [],
    shapes: [
      {
        region: { ...packRings(rings), fillRule: 'evenodd' as const },
        layer: '',
        colour: '#000000',
        source: '',
      },
    ],
  };
  return judgeDrawing(drawing, 'test', settleJob({ bit: [bit], depth, pigmentPct, weigh: 'tenth' })).report;
}
const BAR = [0, 0, 20, 0, 20, 2, 0, 2];

describe('where no bit enters', () => {
  const report = reportOf([BAR], 'flat:6mm');

  test('it is said that nothing is cut, not that 0.0 mm² are', () => {
    expect(cutSentences(report, 'mm')).toEqual([
      'None of the 40.0 mm² drawn will be cut: no bit of the job fits anywhere in it.',
    ]);
  });

  test('neither time nor resin is told', () => {
    expect(measureFacts(report, 'mm').find(({ name }) => name === 'Cutting time')?.value).toBe('none');
    expect(resinFacts(report, 'mm').map(({ name, value }) => [name, value])).toEqual([['Mix', 'none']]);
  });

  test('nothing is off by anything, also where curves are flattened', () => {
    // a dot of 4 mm across
    const dot = Array.from({ length: 60 }, (_, k) => [
      2 * Math.cos((Math.PI * k) / 30),
      2 * Math.sin((Math.PI * k) / 30),
    ]).flat();
    const facts = measureFacts(reportOf([dot], 'flat:6mm'), 'mm');
    for (const name of ['Cut', 'Wall']) {
      const { value = '', remark = '' } = facts.find((each) => each.name === name) ?? {};
      expect(value).toMatch(/^0\.00? mm²?$/u);
      expect(remark).not.toContain('±');
    }
    const cut = measureFacts(reportOf([dot], 'flat:1mm'), 'mm').find(({ name }) => name === 'Cut');
    expect(cut?.remark).toMatch(/^±/u);
  });
});

test('shapes and holes are counted in words', () => {
  const remark = (rings: readonly (readonly number[])[]): string | undefined =>
    measureFacts(reportOf(rings), 'mm')[0]?.remark;
  expect(remark([BAR])).toBe('1 separate shape with no holes');
  const frame = [
    [0, 0, 20, 0, 20, 20, 0, 20],
    [5, 5, 15, 5, 15, 15, 5, 15],
  ];
  expect(remark([...frame, [30, 0, 40, 0, 40, 10, 30, 10]])).toBe('2 separate shapes with 1 hole');
});

test('the scale has a reading for pigment only where it shows some', () => {
  const cups = (pigmentPct: number): string | undefined =>
    resinFacts(reportOf([[0, 0, 60, 0, 60, 40, 0, 40]], 'flat:3mm', pigmentPct), 'mm').find(
      ({ name }) => name === 'Cups',
    )?.remark;
  expect(cups(3)?.match(/ g\b/g)).toHaveLength(3);
  expect(cups(0)?.match(/ g\b/g)).toHaveLength(2);
});

test('a deep pocket is mixed layer by layer, and a full cup thickens sooner than told', () => {
  const deep = (mm: number): string[] =>
    resinFacts(reportOf([[0, 0, mm, 0, mm, mm, 0, mm]], 'flat:3mm', 3, '12mm'), 'mm')
      .filter(({ name }) => name === 'Cups' || name === 'Pour')
      .map(({ value, remark }) => `${value}: ${remark}`);
  // 12.5 mm with the overpour at 6 mm a layer
  const [small = '', pour = ''] = deep(40);
  expect(small).toMatch(/^3: one for each layer, each on a scale/u);
  expect(pour).toMatch(/^3 layers: of 4\.17 mm.* about 25 min$/u);
  expect(deep(150)[1]).toContain('about 25 min in a cup of 100 g, less in a fuller one');
});

test('long cutting times are told in hours', () => {
  expect([0.4, 9.94, 119, 120, 599, 6433].map(formatMinutes)).toEqual([
    'under 1 min',
    '9.9 min',
    '119 min',
    '2.0 h',
    '10.0 h',
    '107 h',
  ]);
});
