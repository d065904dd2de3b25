import { readFileSync } from 'node:fs';
import {
  type CouponRow,
  JobError,
  type JobFile,
  type JobInput,
  readCouponsFile,
  settleJob,
} from '@pourproof/job';
import { judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../support/drawing-of.ts';

/** A bar of 30 × 4 mm that stands across the fibres, in cherry without a seal: prior median 3 mm. */
const BAR = drawingOf([rectangle(0, 0, 4, 30)]);
const CHERRY: JobInput = {
  bit: ['flat:3mm'],
  depth: '1/8in',
  wood: 'cherry',
  seal: 'none',
  coats: 0,
};
const vetted = (job: JobInput) => judgeDrawing(BAR, 'bar', settleJob({ ...CHERRY, ...job })).report;

describe('the worked example, from the job to the report', () => {
  const before = vetted({});
  const after = vetted({ coupons: [{ slots: ['1.2mm', '1.6mm', '0.9mm'] }] });

  test('moves 3 mm (0.556 to 16.194) to 1.285 mm (0.437 to 5.925) and says with how many coupons', () => {
    expect(before.bleed.basis).toBe('prior');
    expect(before.bleed.blocks[0]?.travelMm.median).toBeCloseTo(3, 12);
    expect(before.bleed.blocks[0]?.travelMm.low).toBeCloseTo(0.556, 3);
    expect(before.bleed.blocks[0]?.travelMm.high).toBeCloseTo(16.194, 3);
    expect(after.bleed).toMatchObject({ basis: 'calibrated', coupons: 1, couponsUnused: [] });
    const [block] = after.bleed.blocks;
    expect(block).toMatchObject({ basis: 'calibrated', coupons: 1, slots: 3 });
    expect(block?.travelMm.median).toBeCloseTo(1.2852, 3);
    expect(block?.travelMm.low).toBeCloseTo(0.437, 2);
    expect(block?.travelMm.high).toBeCloseTo(5.925, 1);
    expect(block?.ownSlots).toMatchObject({ slots: 3, bleeding: 3 });
  });

  test('moves the face that colour may reach: two long walls of 30 mm, each the travel wide', () => {
    expect(before.bleed.blocks[0]?.areaMm2).toBeCloseTo(2 * 30 * 3, 6);
    const median = after.bleed.blocks[0]?.travelMm.median ?? Number.NaN;
    expect(after.bleed.blocks[0]?.areaMm2).toBeCloseTo(2 * 30 * median, 6);
  });

  test('moves the findings: a stop becomes a caution, and both say what they rest on', () => {
    const wall = (report: typeof after) => report.findings.find(({ code }) => code === 'high-bleed-wall');
    expect(wall(before)?.severity).toBe('stop');
    expect(wall(before)?.because).not.toContain('own-coupons');
    expect(wall(after)?.severity).toBe('caution');
    expect(wall(after)?.because).toContain('own-coupons');
    expect(wall(after)?.measured.value).toBeCloseTo(1.2852, 3);
  });
});

test('the honest probabilities at the prior spread: 6 → 0.999, 3 → 0.986, 2 → 0.959, 1 → 0.823, 0.36 → 0.398, 0.12 → 0.062', () => {
  const cases: readonly (readonly [JobInput, number])[] = [
    [{ wood: 'poplar' }, 0.999],
    [{ wood: 'cherry' }, 0.986],
    [{ wood: 'maple' }, 0.959],
    [{ wood: 'walnut' }, 0.823],
    [{ wood: 'maple', seal: 'epoxy', coats: 1, sealHours: '1h' }, 0.398],
    [{ wood: 'poplar', seal: 'epoxy', coats: 1, sealHours: '24h' }, 0.062],
  ];
  for (const [job, probability] of cases) {
    expect(vetted(job).bleed.blocks[0]?.visibleProbability).toBeCloseTo(probability, 3);
  }
});

test('3 of 3 clean slots are told with their upper end of 0.527; 28 bring it below 0.10', () => {
  const clean = (count: number) =>
    vetted({ coupons: [{ slots: Array.from({ length: count }, () => 'none below 0.45mm') }] }).bleed.blocks[0]
      ?.ownSlots;
  expect(clean(3)?.chance).toBeCloseTo(0.2, 12);
  expect(clean(3)?.chanceUpper95).toBeCloseTo(0.527, 3);
  expect(clean(28)?.chanceUpper95).toBeLessThan(0.1);
  expect(clean(27)?.chanceUpper95).toBeGreaterThan(0.1);
});

test('“none below 0.45 mm” and “clean” say the same; an inch is read as an inch', () => {
  const median = (...slots: string[]) => vetted({ coupons: [{ slots }] }).bleed.blocks[0]?.travelMm.median;
  expect(median('none below 0.45mm')).toBe(median('clean'));
  expect(median('  Severe ')).toBe(median('severe'));
  expect(median('none visible below 0.45mm')).toBe(median('clean'));
});

test('a length carries what it was read to: its last digit, or the rule that the row names', () => {
  const readings = (row: Omit<CouponRow, 'slots'>, ...slots: CouponRow['slots'][number][]) =>
    settleJob({ ...CHERRY, coupons: [{ ...row, slots }] }).coupons[0]?.readings;
  const streak = (lengthMm: number, stepMm?: number) => ({
    kind: 'streak',
    lengthMm: expect.closeTo(lengthMm, 12),
    ...(stepMm === undefined ? {} : { stepMm: expect.closeTo(stepMm, 12) }),
  });
  expect(readings({}, '3mm', '1.2mm', '0.95mm')).toEqual([
    streak(3, 1),
    streak(1.2, 0.1),
    streak(0.95, 0.01),
  ]);
  expect(readings({}, '1/16in', '1-1/4in', '0.2in')).toEqual([
    streak(25.4 / 16, 25.4 / 16),
    streak(25.4 * 1.25, 25.4 / 4),
    streak(5.08, 2.54),
  ]);
  const structure = { kind: 'streak', lengthMm: 2 } as const;
  expect(readings({ rule: '0.5mm' }, '3mm', '1.2mm', structure)).toEqual([
    streak(3, 0.5),
    streak(1.2, 0.5),
    streak(2, 0.5),
  ]);
  expect(readings({}, structure)).toEqual([streak(2)]);
  expect(
    readings({}, 'between 1 and 2mm', '0.5mm to 1/16in', { kind: 'between', fromMm: 0, toMm: 1 }),
  ).toEqual([
    { kind: 'between', fromMm: 1, toMm: 2 },
    { kind: 'between', fromMm: 0.5, toMm: expect.closeTo(25.4 / 16, 12) },
    { kind: 'between', fromMm: 0, toMm: 1 },
  ]);
});

test('rows of another wood and of one other board move nothing and are named', () => {
  const { bleed } = vetted({
    coupons: [
      { wood: 'maple', slots: ['1mm'] },
      { board: 'offcut', slots: ['1mm'] },
    ],
  });
  expect(bleed).toMatchObject({ basis: 'prior', coupons: 0 });
  expect(bleed.couponsUnused).toEqual([
    { row: 1, why: 'other-wood' },
    { row: 2, why: 'one-other-board' },
  ]);
});

test('two other boards move the wood', () => {
  const { bleed } = vetted({
    coupons: [
      { board: 'a', slots: ['1mm', '1mm'] },
      { board: 'b', slots: ['1mm', '1mm'] },
    ],
  });
  expect(bleed).toMatchObject({ basis: 'calibrated', coupons: 2, couponsUnused: [] });
  const median = bleed.blocks[0]?.travelMm.median ?? 0;
  expect(median).toBeLessThan(3);
  const own = vetted({ coupons: [{ slots: ['1mm', '1mm', '1mm', '1mm'] }] }).bleed.blocks[0];
  expect(median).toBeGreaterThan(own?.travelMm.median ?? 0);
});

test('in a glue-up a coupon moves the blocks of its own wood only', () => {
  const board = 'stripes 100x100x20mm cherry:50mm maple:50mm';
  const glued = (coupons: JobFile['coupons']) =>
    judgeDrawing(
      drawingOf([rectangle(0, 0, 60, 60)]),
      'bar',
      settleJob({ ...CHERRY, wood: undefined, board, coupons }),
    ).report.bleed.blocks;
  const [cherry, maple] = glued([{ wood: 'cherry', slots: ['1mm'] }]);
  expect(cherry).toMatchObject({ basis: 'calibrated', coupons: 1 });
  expect(maple).toMatchObject({ basis: 'prior', coupons: 0 });
  expect(() => glued([{ slots: ['1mm'] }])).toThrow(/row 1: the board has several woods/u);
});

describe('a bad row is named by its number, counted from 1, with what to write', () => {
  const good = { slots: ['1.2mm'] };
  const cases: readonly (readonly [string, object, RegExp])[] = [
    ['a length without unit', { slots: ['1.2mm', '1.2'] }, /row 2, slot 2: .*1\.2/u],
    ['no length', { slots: ['a bit'] }, /row 2, slot 1: "a bit" is no reading\. Write a length/u],
    ['none without a limit', { slots: ['none'] }, /row 2, slot 1: .*none below 0\.45mm/u],
    ['ends the wrong way round', { slots: ['between 2mm and 1mm'] }, /row 2, slot 1: .*between 2mm and 1mm/u],
    ['a rule of nothing', { rule: '0mm', slots: ['1mm'] }, /row 2: rule "0mm" is nothing/u],
    ['zero', { slots: ['0mm'] }, /row 2, slot 1: a streak of 0 is no reading/u],
    ['a streak of a metre', { slots: ['1m'] }, /row 2, slot 1: .*Check its unit/u],
    [
      'an unknown wood',
      { wood: 'chery', slots: ['1mm'] },
      /row 2: wood "chery" is unknown\. Did you mean cherry\? Known: poplar/u,
    ],
    ['an unknown seal', { seal: 'wax', slots: ['1mm'] }, /row 2: seal "wax" is unknown/u],
    [
      'hours in the past',
      { sealHours: '-2h', slots: ['1mm'] },
      /row 2: "-2.?h" is no time that a seal was left/u,
    ],
    ['a frozen shop', { temp: '-5C', slots: ['1mm'] }, /row 2: temp is -5 °C/u],
  ];
  test.each(cases)('%s', (_, row, message) => {
    const settle = () => settleJob({ coupons: [good, row as typeof good] });
    expect(settle).toThrow(JobError);
    expect(settle).toThrow(message);
  });

  test.each<readonly [string, unknown, RegExp]>([
    [
      'a number',
      { slots: ['1mm', 1.2] },
      /coupons, row 2, slot 2: is a number without quotes; write text between quotes/u,
    ],
    ['no slot', { slots: [] }, /coupons, row 2, slots: /u],
    ['half a coat', { coats: 0.5, slots: ['1mm'] }, /coupons, row 2, coats: /u],
    ['a misspelt key', { slot: ['1mm'], slots: ['1mm'] }, /coupons, row 2, slot: means nothing here/u],
  ])('%s in a file of coupons', (_, row, message) => {
    const read = () => readCouponsFile({ schema: 'pourproof/coupons@1', coupons: [good, row] }, 'mine.json');
    expect(read).toThrow(JobError);
    expect(read).toThrow(message);
  });
});

test('the example on the page of docs is a file that is read', () => {
  const page = readFileSync('docs/method/coupons.md', 'utf8');
  const [, json = ''] = /```json\n(.*?)```/su.exec(page) ?? [];
  const rows = readCouponsFile(JSON.parse(json), 'the example');
  expect(vetted({ coupons: rows }).bleed.basis).toBe('calibrated');
});
