import { settleJob } from '@pourproof/job';
import { judgeDrawing, type Report } from '@pourproof/proof';
import { cutSentences } from '@pourproof/wording';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { BAR, findInVee, reportOf, SHRINKAGE, VEE } from '../../support/vee-job.ts';

describe('the report of a V cut', () => {
  // b² (3a − b)/12 over tan(A/2): the integral of the distance to the edge of a 30 × 4 bar is 114.66667
  test.each([
    [30, 427.9418],
    [60, 198.60849],
    [90, 114.66667],
  ])('has the closed form of a bar at %s°, wherever it is turned', (angleDeg, volumeMm3) => {
    for (const turnDeg of [0, 33, 90]) {
      const { cut } = reportOf([BAR], { bit: [`vee:${angleDeg}deg:25mm`], depth: '20mm' }, turnDeg);
      expect(cut.volumeMm3).toBeCloseTo(volumeMm3, angleDeg === 30 ? 3 : 4);
      expect(cut.areaMm2).toBeCloseTo(120, 6);
      expect(cut.leftStandingMm2).toBeCloseTo(0, 6);
      expect(cut.maxDepthMm).toBeCloseTo(2 / Math.tan((angleDeg * Math.PI) / 360), 7);
      // plan area over sin(A/2)
      expect(cut.wallAreaMm2).toBeCloseTo(120 / Math.sin((angleDeg * Math.PI) / 360), 6);
      expect(cut.floorAreaMm2).toBe(0);
    }
  });

  test('stops at its depth limit with a level floor: 149.45312 mm³ at 1.7 mm', () => {
    const { cut } = reportOf([BAR], { depth: '1.7mm' });
    expect(cut.volumeMm3).toBeCloseTo(149.45312, 4);
    const inset = 2 * 1.7 * Math.tan(Math.PI / 6);
    expect(cut.floorAreaMm2).toBeCloseTo((30 - inset) * (4 - inset), 8);
    expect(cut.ridgedFloorMm2).toBeCloseTo(cut.floorAreaMm2, 8);
  });

  test('takes the same away when a flat bit clears its floor, which is then level but for its corners', () => {
    const { cut } = reportOf([BAR], { depth: '1.7mm', bit: ['vee:60deg:12mm', 'flat:1mm'] });
    expect(cut.volumeMm3).toBeCloseTo(149.45312, 4);
    expect(cut.ridgedFloorMm2).toBeCloseTo((4 - Math.PI) * 0.25, 8);
    expect(cut.perCutter[1]?.minutes).toBeGreaterThan(0);
    const [vee, flat] = cut.perCutter.map(({ floorMm2 }) => floorMm2);
    expect(vee).toBe(0);
    expect(flat).toBeCloseTo(cut.floorAreaMm2 - (4 - Math.PI) * 0.25, 8);
  });

  test('exposes end walls by cos(A/2), and on end grain all walls by sin(A/2)', () => {
    const ends = 2 * (0.5 * 4 * (2 / Math.sin(Math.PI / 6)));
    const across = reportOf([BAR], { grain: '0deg' }).endGrain;
    expect(across.wallExposedMm2).toBeCloseTo(ends * Math.cos(Math.PI / 6), 8);
    const upright = reportOf([BAR], { dive: '90deg' }).endGrain;
    expect(upright.wallExposedMm2).toBeCloseTo(240 * 0.5, 8);
    expect(upright.wallFraction).toBeCloseTo(0.5, 9);
  });

  test('shares walls out to the blocks of a board without rest', () => {
    const onBoard = (board: string): Report['endGrain'] => {
      const { wood: _, ...job } = VEE;
      return judgeDrawing(drawingOf([BAR]), 'test', settleJob({ ...job, board })).report.endGrain;
    };
    const whole = onBoard('plain 100x60x20mm maple');
    const endGrain = onBoard('stripes 100x60x20mm maple:30mm walnut:30mm');
    expect(endGrain.byBlock).toHaveLength(2);
    const sum = endGrain.byBlock.reduce((total, block) => total + block.wallAreaMm2, 0);
    expect(sum).toBeCloseTo(240, 6);
    expect(endGrain.wallExposedMm2).toBeCloseTo(whole.wallExposedMm2, 6);
  });

  test('pours what is cut: sealed walls and overpour apart, the resin fills the V', () => {
    const { pour, cut } = reportOf([BAR], { overpour: '0mm', grain: '90deg' });
    const volume = pour.colours.reduce((sum, { volumeMl }) => sum + volumeMl, 0);
    expect(volume).toBeGreaterThanOrEqual(cut.volumeMm3 / 1000);
  });

  test('leaves no colour without its share: two bars of two colours add up', () => {
    const drawing = drawingOf([BAR, rectangle(0, 10, 30, 2)]);
    const shapes = drawing.shapes.map((shape, k) => ({ ...shape, colour: k === 0 ? '#102030' : '#a04020' }));
    const job = settleJob({ ...VEE, overpour: '0mm', wastePct: 0, grain: '0deg' });
    const { pour } = judgeDrawing({ ...drawing, shapes }, 'two colours', job).report;
    const [wide, narrow] = pour.colours.map(({ volumeMl }) => volumeMl);
    // 4² (90 − 4) against 2² (90 − 2); uptake by end grain is shared by area, and small
    expect((wide ?? 0) / (narrow ?? 1)).toBeGreaterThan(3);
  });

  test('has the way of its point along the middle and up into all corners, in one pass where that is deep enough', () => {
    const [effort] = reportOf([BAR]).cut.perCutter;
    // 26 mm of middle, four corners of 2√2 mm across and 2/tan 30° up, two of which are walked twice to save retracts
    const corner = Math.hypot(2, 2, 2 / Math.tan(Math.PI / 6));
    expect(effort?.passes).toBe(1);
    expect(effort?.retracts).toBe(1);
    expect(effort?.pathMm).toBeCloseTo(26 + 6 * corner, 6);
    expect(reportOf([BAR], { passDepth: '1mm' }).cut.perCutter[0]?.passes).toBe(4);
  });

  test('takes the longer the slower it is driven, and says what was given', () => {
    const fast = reportOf([BAR]).cut.time;
    const slow = reportOf([BAR], { feed: '100mm/min' }).cut.time;
    expect(slow.minutes).toBeGreaterThan(2 * fast.minutes);
    const origins = (time: typeof fast) => time.assumptions.find(({ name }) => name === 'feedMmPerMin');
    expect(origins(fast)).toMatchObject({ origin: 'common practice' });
    expect(origins(slow)).toMatchObject({ origin: 'given', value: 100 });
  });

  test('narrows by 2 s tan(A/2) when levelled', () => {
    const { levelling } = reportOf([BAR], { level: '0.5mm' });
    expect(levelling.leftWidthMm).toBeCloseTo(3.42265, 5);
    const depth = 2 / Math.tan(Math.PI / 6);
    expect(levelling.marginMm).toBeLessThan(depth);
    expect(levelling.marginMm).toBeGreaterThan(depth * (1 - SHRINKAGE));
  });

  test('reaches every corner with a true point, and leaves hairlines standing below a flat one', () => {
    const hair = rectangle(0, 10, 20, 0.15);
    expect(findInVee([BAR, hair], 'bit-cannot-enter')).toBeUndefined();
    const blunt = findInVee([BAR, hair], 'bit-cannot-enter', { bit: ['vee:60deg:12mm:tip 0.2mm'] });
    expect(blunt?.where).toHaveLength(1);
  });
});

describe('a V alone over a level floor', () => {
  const wide = [rectangle(0, 0, 30, 20)];

  test('says what floor its time leaves out, which a flat bit clears', () => {
    const inset = 4 * Math.tan(Math.PI / 6);
    const alone = reportOf(wide, { depth: '2mm' }).cut.time;
    expect(alone.floorLeftOutMm2).toBeCloseTo((30 - inset) * (20 - inset), 8);
    const both = reportOf(wide, { depth: '2mm', bit: ['vee:60deg:12mm', 'flat:3mm'] }).cut.time;
    expect(both.floorLeftOutMm2).toBeUndefined();
    expect(both.minutes).toBeGreaterThan(alone.minutes);
    expect(reportOf([BAR]).cut.time.floorLeftOutMm2).toBeUndefined();
  });

  test('is up to its depth deep, and cuts all where it does', () => {
    expect(cutSentences(reportOf(wide, { depth: '2mm' }), 'mm').join(' ')).toMatch(
      /100\.0 %\), up to 2 mm deep/u,
    );
    expect(cutSentences(reportOf(wide, { depth: '2mm', bit: ['flat:3mm'] }), 'mm').join(' ')).toMatch(
      /\), 2 mm deep/u,
    );
  });

  test('is not measured by its tip', () => {
    const { strokes } = reportOf(wide, { bit: ['vee:60deg:12mm:tip 0.1mm'] });
    expect(strokes.narrowestToBit).toBeNull();
  });
});

test('each colour of a V is poured as deep as its own strokes are', () => {
  const drawing = drawingOf([rectangle(0, 0, 30, 10), rectangle(0, 20, 30, 1)]);
  const shapes = drawing.shapes.map((shape, k) => ({ ...shape, colour: k === 0 ? '#ff0000' : '#0000ff' }));
  const { colours } = judgeDrawing({ ...drawing, shapes }, 't', settleJob({ ...VEE, overpour: '0.5mm' }))
    .report.pour;
  const depths = colours.map(({ layers }) => layers.count * layers.eachMm - 0.5);
  expect(depths[0]).toBeCloseTo(5 / Math.tan(Math.PI / 6), 8);
  expect(depths[1]).toBeCloseTo(0.5 / Math.tan(Math.PI / 6), 8);
});

describe('several bits with a V', () => {
  test('are as deep as the one that goes deepest: a flat bit may clear below a V that ends early', () => {
    const { cut, pour } = reportOf([rectangle(0, 0, 30, 20)], {
      bit: ['vee:60deg:6mm', 'flat:3mm'],
      depth: '6mm',
      overpour: '0.5mm',
    });
    expect(cut.maxDepthMm).toBe(6);
    expect(pour.layers.eachMm * pour.layers.count).toBeCloseTo(6.5, 9);
  });

  test('have the walls of the sharpest V, in whichever order they are given', () => {
    const bar = [rectangle(0, 0, 20, 1.5)];
    const one = reportOf(bar, { bit: ['vee:60deg:12mm'] }).levelling;
    for (const bit of [
      ['vee:90deg:12mm', 'vee:60deg:12mm'],
      ['vee:60deg:12mm', 'vee:90deg:12mm'],
    ]) {
      const { levelling, cut } = reportOf(bar, { bit });
      expect(levelling.marginMm).toBeCloseTo(one.marginMm ?? Number.NaN, 9);
      expect(levelling.leftWidthMm).toBeCloseTo(one.leftWidthMm ?? Number.NaN, 9);
      expect(cut.maxDepthMm).toBeCloseTo(0.75 / Math.tan(Math.PI / 6), 9);
    }
  });
});
