import { type JobInput, settleJob } from '@pourproof/job';
import { judgeDrawing, type Report } from '@pourproof/proof';
import { measureFacts } from '@pourproof/wording';
import { expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';

const PLATE = rectangle(0, 0, 60, 40);
const reportOf = (bit: string[], job: JobInput = {}): Report =>
  judgeDrawing(drawingOf([PLATE]), 'test', settleJob({ bit, depth: '10mm', wood: 'walnut', ...job })).report;
const SHORT_THEN_LONG = ['flat:6mm:length 4mm', 'flat:3mm:length 12mm'];

test('a short bit before a longer, finer one leaves the same cut as that one alone', () => {
  const { cut, levelling, endGrain, pour } = reportOf(SHORT_THEN_LONG);
  const alone = reportOf(['flat:3mm']);
  for (const key of ['areaMm2', 'volumeMm3', 'floorAreaMm2', 'wallAreaMm2', 'maxDepthMm'] as const) {
    expect(cut[key]).toBeCloseTo(alone.cut[key], 6);
  }
  expect(levelling).toEqual(alone.levelling);
  expect(endGrain).toEqual(alone.endGrain);
  expect(pour.layers).toEqual(alone.pour.layers);
});

test('the report says what each did: the short one down to its length, the next all below and the corners', () => {
  const report = reportOf(SHORT_THEN_LONG);
  const [short, long] = report.cut.perCutter;
  const corners = (r: number): number => (4 - Math.PI) * r * r;
  expect(short).toMatchObject({ depthMm: 4, floorMm2: 0 });
  expect(short?.volumeMm3).toBeCloseTo(4 * (2400 - corners(3)), 6);
  expect(long).toMatchObject({ depthMm: 10, places: 4 });
  expect(long?.areaMm2).toBeCloseTo(corners(3) - corners(1.5), 9);
  expect(long?.floorMm2).toBeCloseTo(2400 - corners(1.5), 6);
  const remarks = measureFacts(report, 'mm')
    .filter(({ name }) => name.startsWith('  by the '))
    .map(({ remark }) => remark);
  expect(remarks[0]).toMatch(/^down to 4 mm, as far as it reaches; /u);
  expect(remarks[1]).not.toContain('as far as it reaches');
});

test('the longer bit has all of the floor to clear below: the rest above, and whole passes from there', () => {
  const [short, long] = reportOf(SHORT_THEN_LONG).cut.perCutter;
  // 4 mm in 2 passes of at most 3; corners in 3 of at most 1.5, then 6 mm in 4
  expect([short?.passes, long?.passes]).toEqual([2, 3 + 4]);
  const alone = reportOf(['flat:3mm']).cut.perCutter[0];
  const rest = reportOf(['flat:6mm', 'flat:3mm']).cut.perCutter[1];
  // 10 mm in 7 passes alone
  expect(alone?.passes).toBe(7);
  const whole = ((alone?.pathMm ?? 0) * 4) / 7;
  expect(long?.pathMm).toBeGreaterThan(whole);
  expect(long?.pathMm).toBeLessThan(whole + (rest?.pathMm ?? 0));
});

test('one that no longer bit follows is refused with what to do', () => {
  const message =
    'depth is 10 mm, but the cutting edge of the 3 mm flat bit is only 5 mm long. Cut no deeper, or give a longer bit that is no wider after it: it goes on below.';
  expect(() => reportOf(['flat:6mm:length 12mm', 'flat:3mm:length 5mm'])).toThrow(message);
  expect(() => reportOf(['flat:3mm:length 5mm', 'flat:6mm:length 12mm'])).toThrow(message);
});
