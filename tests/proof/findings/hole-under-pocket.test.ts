import { type JobInput, settleJob } from '@pourproof/job';
import { applyFix, type Finding, judgeDrawing, type Proof, reportSchema } from '@pourproof/proof';
import { findingEntries, overlaySvg, sheetHtml } from '@pourproof/wording';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf } from '../../support/fix-of.ts';

const CALM: JobInput = {
  bit: ['flat:2mm'],
  depth: '3mm',
  seal: 'epoxy',
  sealHours: '24h',
  boards: 10,
  units: 'mm',
  board: 'plain 100x100x20mm maple',
};
const SQUARE = [rectangle(0, 0, 40, 40)];
const judged = (job: JobInput, rings = SQUARE): Proof =>
  judgeDrawing(drawingOf(rings), 'test', settleJob({ ...CALM, ...job }));
const find = (job: JobInput, rings = SQUARE): Finding | undefined =>
  judged(job, rings).report.findings.find(({ code }) => code === 'hole-under-pocket');
const hole = (x: number, back: number): JobInput => ({ keepClear: [`hole ${x}mm,50mm 8mm back:${back}mm`] });

describe('the wood between a pocket and a hole in the back', () => {
  test('is the thickness less both depths below it, and the short way beside it', () => {
    expect(find(hole(50, 14))).toBeUndefined();
    expect(find(hole(50, 14.5))?.measured.value).toBeCloseTo(2.5, 6);
    expect(find(hole(50, 15.6))?.severity).toBe('stop');
    expect(find(hole(50, 18))?.measured.value).toBe(0);
    // the pocket ends at 70 mm, the hole begins 1.5 mm beside it and 2 mm below its floor
    expect(find(hole(75.5, 15))?.measured.value).toBeCloseTo(2.5, 6);
    expect(find(hole(77, 15))).toBeUndefined();
  });

  test('is judged where a V is deepest, to a thirty-second of its depth', () => {
    // 60°, 6 mm wide: limited to 3 mm over a floor 6 − 6 tan 30° wide in the middle
    const groove = [rectangle(0, 0, 60, 6)];
    const vee: JobInput = { bit: ['vee:60deg:1/2in'] };
    expect(find({ ...vee, ...hole(50, 15) }, groove)?.measured.value).toBeCloseTo(2, 4);
    // beside it the nearest place is on the sloping wall: y from 0.. of the wall at depth z is 3 − z tan 30°
    const beside: JobInput = { ...vee, keepClear: ['hole 50mm,57.5mm 8mm back:15mm'] };
    const exact = Math.min(
      ...Array.from({ length: 3001 }, (_, k) => k / 1000).map((z) =>
        Math.hypot(0.5 + z * Math.tan(Math.PI / 6), 5 - z),
      ),
    );
    const told = find(beside, groove)?.measured.value ?? Number.NaN;
    expect(told).toBeGreaterThanOrEqual(exact - 1e-4);
    expect(told).toBeLessThanOrEqual(exact + 3 / 64);
  });

  test('a groove counts along its whole length, and only the one that is too near', () => {
    const finding = find({
      keepClear: ['groove 0mm,45mm 100mm,45mm 6mm back:16mm', 'hole 90mm,90mm 8mm back:16mm'],
    });
    expect(finding?.where.map(({ what, widthMm }) => [what, widthMm])).toEqual([['groove', 6]]);
  });

  test('of two holes the higher one says how thick the board has to be and how shallow the pocket', () => {
    const both = { keepClear: ['hole 40mm,50mm 8mm back:15mm', 'hole 60mm,50mm 8mm back:16mm'] };
    for (const job of [both, { keepClear: both.keepClear.toReversed() }]) {
      const finding = find(job);
      expect(finding?.where).toHaveLength(2);
      const alone = find({ keepClear: both.keepClear.slice(1) });
      for (const doing of ['cut-shallower', 'thicker-board'] as const) {
        expect(fixOf(finding, doing)).toEqual(fixOf(alone, doing));
      }
    }
  });

  test('each way out, applied, clears it', () => {
    const job = { ...CALM, ...hole(50, 16) };
    const finding = find(job);
    for (const doing of ['cut-shallower', 'thicker-board', 'move'] as const) {
      const fix = fixOf(finding, doing);
      expect(fix, doing).toBeDefined();
      const changed = fix === undefined ? null : applyFix(job, fix);
      expect(changed, doing).not.toBeNull();
      expect(find(changed ?? job), doing).toBeUndefined();
    }
  });
});

describe('the board in report and picture', () => {
  const keepClear = [
    'hole 75.5mm,50mm 8mm back:15mm',
    'hole 90mm,50mm 6mm',
    'clamp 50mm,98mm 30x20mm',
    'hold-down 15mm,50mm 10mm',
  ];
  const { report, picture } = judged({ keepClear, margin: '5mm', place: '50mm,40mm' });

  test('blocks, thickness, rims, what is kept clear, and the least wood that is left', () => {
    expect(reportSchema.safeParse(report).error).toBeUndefined();
    expect(report.board).toMatchObject({
      sizeMm: [100, 100],
      thicknessMm: 20,
      marginMm: 5,
      middleMm: [50, 40],
      turnDeg: 0,
      blocks: [{ species: 'hard maple', blocks: 1, faceMm2: 10_000 }],
      leastFloor: { woodMm: 17 },
      leastRim: { beside: 'obstacle', woodMm: 17 },
    });
    expect(report.board?.keepClear.map(({ kind, fromBackMm }) => [kind, fromBackMm])).toEqual([
      ['hole', 15],
      ['hole', undefined],
      ['clamp', undefined],
      ['hold-down', undefined],
    ]);
    expect(report.board?.leastOverHole?.woodMm).toBeCloseTo(Math.hypot(1.5, 2), 6);
    const edge = judged({ place: '50mm,24mm' }).report.board?.leastRim;
    expect(edge).toMatchObject({ beside: 'edge', woodMm: 4 });
    const round = judged({ board: undefined, wood: 'maple', thickness: '12mm' }).report.board;
    expect(round).toMatchObject({ sizeMm: null, leastRim: null, leastFloor: { woodMm: 9 } });
    expect(judged({ board: undefined, wood: 'maple' }).report.board).toBeUndefined();
  });

  test('holes and clamps are drawn on the sheet and in the overlay, each by what it is', () => {
    expect(picture.obstacles.map(({ kind, isInBack }) => [kind, isInBack])).toEqual([
      ['hole', true],
      ['hole', false],
      ['clamp', false],
      ['hold-down', false],
    ]);
    const job = settleJob({ ...CALM, keepClear });
    const vetted = { report, picture, job };
    const html = sheetHtml([vetted], '0');
    for (const form of ['held', 'through', 'in-back']) {
      expect(html).toContain(`class="obstacle ${form}"`);
    }
    expect(html).toContain('hole or groove in the back</li>');
    const overlay = overlaySvg(vetted);
    expect(overlay).toContain('<g id="keep-clear"');
    expect(overlay).toContain('<title>hole in the back</title>');
    expect(findingEntries(report, job).map(({ code }) => code)).toContain('hole-under-pocket');
  });
});
