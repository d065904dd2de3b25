import { settleJob } from '@pourproof/job';
import { packRings, textInUnits } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { judgeDrawing } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { cutterFacts } from './cutter-facts.ts';

/** A rectangle of 30 × 10 mm cut 2 mm deep by these bits. */
function reportOf(bit: string[], job: object = {}): Report {
  const region = { ...packRings([[0, 0, 30, 0, 30, 10, 0, 10]]), fillRule: 'nonzero' as const };
  const drawing = {
    format: 'svg' as const,
    scaleSource: textInUnits('made by a test'),
    toleranceMm: 0.005,
    notices: [],
    shapes: [{ region, layer: '', colour: '#000000', source: '' }],
  };
  return judgeDrawing(drawing, 'test', settleJob({ bit, depth: '2mm', ...job })).report;
}
const CORNERS = 4 - Math.PI;

test('a flat bit goes over the floor that it cuts, and a finer one over the corners that it adds', () => {
  const { cut } = reportOf(['flat:3mm', 'flat:1mm']);
  const [coarse, fine] = cut.perCutter;
  expect(coarse?.floorMm2).toBeCloseTo(300 - CORNERS * 1.5 ** 2, 6);
  expect(fine?.floorMm2).toBeCloseTo(CORNERS * (1.5 ** 2 - 0.5 ** 2), 6);
  expect(cutterFacts({ cut } as Report, 'mm')[1]?.remark).toContain(
    'more than the bits before it, in 4 places',
  );
});

test('after a V a flat bit adds floor and nothing at the face, and the row says how much; a second one levels nothing', () => {
  const report = reportOf(['vee:60deg:12mm', 'flat:1mm', 'flat:1mm']);
  const [vee, flat, again] = report.cut.perCutter;
  const inset = 4 * Math.tan(Math.PI / 6);
  const levelled = (30 - inset) * (10 - inset) - CORNERS * 0.5 ** 2;
  expect(vee?.floorMm2).toBe(0);
  expect(flat?.floorMm2).toBeCloseTo(levelled, 6);
  expect(again?.floorMm2).toBeCloseTo(0, 6);
  const remarks = cutterFacts(report, 'mm').map(({ remark }) => remark);
  expect(remarks[1]).toContain(`no more at the face, but it levels ${levelled.toFixed(1)} mm² of floor; `);
  expect(remarks[2]).toContain('no more at the face; ');
});

test('what a time rests on: what the maker gave first, then what common practice says, named once', () => {
  const remark = (job: object): string | undefined => {
    const report = reportOf(['flat:3mm'], job);
    return cutterFacts(report, 'mm').at(-1)?.remark;
  };
  expect(remark({})).toBe(
    'by common practice feed 1000 mm/min, plunge 300 mm/min, travel 2500 mm/min, stepover 40 % of the tip, passes as deep as 50 % of the bit’s diameter',
  );
  expect(remark({ feed: '1200mm/min', passDepth: '1mm' })).toBe(
    'feed 1200 mm/min, passes 1.00 mm deep; by common practice plunge 300 mm/min, travel 2500 mm/min, stepover 40 % of the tip',
  );
});
