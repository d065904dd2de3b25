import { type JobFile, type JobInput, settleJob } from '@pourproof/job';
import { type FindingCode, judgeDrawing, type Report } from '@pourproof/proof';
import { cutSentences } from '@pourproof/wording';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf, waysOut } from '../../support/fix-of.ts';

const VEE: JobFile = {
  schema: 'pourproof/job@1',
  bit: ['vee:60deg:12mm'],
  depth: '10mm',
  wood: 'walnut',
  seal: 'none',
  level: '0.3mm',
};
const BAR = rectangle(0, 0, 30, 4);

const reportOf = (rings: readonly number[][], job: JobInput = {}, turnDeg = 0): Report =>
  judgeDrawing(drawingOf(rings, { turnDeg }), 'test', settleJob({ ...VEE, ...job })).report;
const find = (rings: readonly number[][], code: FindingCode, job: JobInput = {}) =>
  reportOf(rings, job).findings.find((finding) => finding.code === code);
const SHRINKAGE = 0.03;

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
    expect(find([BAR, hair], 'bit-cannot-enter')).toBeUndefined();
    const blunt = find([BAR, hair], 'bit-cannot-enter', { bit: ['vee:60deg:12mm:tip 0.2mm'] });
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

describe('a V with a flat tip', () => {
  const blunt: JobInput = { bit: ['vee:60deg:12mm:tip 2mm'], depth: '6mm', level: '0.5mm' };
  const wideAndThin = [rectangle(0, 0, 30, 20), rectangle(40, 0, 1.5, 20)];

  test('is levelled by the narrowest stroke that it cuts, not by one that stays wood', () => {
    const { levelling } = reportOf(wideAndThin, blunt);
    expect(levelling.leftWidthMm).toBeCloseTo(20 - Math.tan(Math.PI / 6), 6);
    expect(levelling.firstLostAt?.[0]).toBeLessThan(30);
    expect(find(wideAndThin, 'sands-through', blunt)).toBeUndefined();
    expect(find([wideAndThin[0] ?? []], 'sands-through', blunt)).toBeUndefined();
  });

  test('enters with a finer tip, which no flat bit can stand for: each way out clears the finding', () => {
    const finding = find(wideAndThin, 'bit-cannot-enter', blunt);
    expect(finding?.measured.value).toBeCloseTo(1.5, 9);
    expect(finding?.limit).toMatchObject({ quantity: 'tip-width', unit: 'mm' });
    const finer = { ...blunt, bit: [`vee:60deg:12mm:tip ${fixOf(finding, 'use-tip')?.tipMm}mm`] };
    expect(find(wideAndThin, 'bit-cannot-enter', finer)).toBeUndefined();
    const larger = wideAndThin.map((ring) =>
      ring.map((each) => each * (fixOf(finding, 'scale')?.factor ?? 0)),
    );
    expect(find(larger, 'bit-cannot-enter', blunt)).toBeUndefined();
    const wider = [rectangle(40, 0, 1.5 + (fixOf(finding, 'widen')?.byMm ?? 0), 20)];
    expect(find(wider, 'bit-cannot-enter', blunt)).toBeUndefined();
    // clearing bits keep within the walls of the V
    const flat = { ...blunt, bit: ['vee:60deg:12mm:tip 2mm', 'flat:1mm'] };
    expect(find(wideAndThin, 'bit-cannot-enter', flat)).toBeDefined();
    expect(waysOut(finding, 'mm')).toContain('Use a V with a tip of 1.50 mm or less.');
  });
});

test('half of the depth that a V really reaches is out of flat enough to stop', () => {
  const { wood: _, ...job } = VEE;
  const board = {
    board: 'plain 100x60x20mm walnut',
    reading: ['5mm,5mm 20mm', '95mm,5mm 22mm', '5mm,55mm 20mm', '95mm,55mm 22mm', '50mm,30mm 21mm'],
  };
  const severity = (width: number, bit: string) =>
    judgeDrawing(
      drawingOf([rectangle(0, 0, 60, width)]),
      't',
      settleJob({ ...job, ...board, bit: [bit] }),
    ).report.findings.find(({ code }) => code === 'board-not-flat')?.severity;
  // 1.33 mm under the 60 mm of the bar; 2 mm of a 60° V are 1.73 mm deep, 6 mm are 5.2 mm
  expect(severity(2, 'vee:60deg:12mm')).toBe('stop');
  expect(severity(6, 'vee:60deg:12mm')).toBe('caution');
  expect(severity(2, 'flat:1mm')).toBe('caution');
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

describe('floor-left-ridged', () => {
  test('offers no depth that the V itself or a usual board does not have', () => {
    const wide = [rectangle(0, 0, 30, 20)];
    const deepens = (job: JobInput): boolean =>
      find(wide, 'floor-left-ridged', job)?.fix.options.some((option) => option.do === 'deepen') ?? false;
    // its flanks would meet 10/tan(30°) = 17.32 mm deep
    expect(deepens({ depth: '2mm' })).toBe(false);
    expect(deepens({ depth: '2mm', bit: ['vee:60deg:40mm'] })).toBe(false);
    expect(deepens({ depth: '2mm', bit: ['vee:120deg:40mm'] })).toBe(true);
    expect(deepens({ depth: '2mm', bit: ['vee:120deg:40mm:length 3mm'] })).toBe(false);
  });

  test('fires where a depth limit leaves a floor to the tip, and its flat bit clears most of it', () => {
    const finding = find([rectangle(0, 0, 30, 10)], 'floor-left-ridged', { depth: '2mm' });
    const inset = 4 * Math.tan(Math.PI / 6);
    expect(finding?.severity).toBe('caution');
    // but for corners that a disc of 1 mm leaves
    expect(finding?.measured.value).toBeCloseTo((30 - inset) * (10 - inset) - (4 - Math.PI) * 0.25, 6);
    const bit = fixOf(finding, 'use-bit');
    expect(finding?.fix.options.map((fix) => fix.do)).toEqual(['use-bit', 'deepen']);
    const left = find([rectangle(0, 0, 30, 10)], 'floor-left-ridged', {
      depth: '2mm',
      bit: ['vee:60deg:12mm', `flat:${bit?.diameterMm}mm`],
    });
    expect(left === undefined || bit?.clears === false).toBe(true);
    expect(left?.measured.value ?? 0).toBeLessThan(0.2 * (finding?.measured.value ?? 0));
    expect(
      find([rectangle(0, 0, 30, 10)], 'floor-left-ridged', {
        depth: `${2 + (fixOf(finding, 'deepen')?.byMm ?? 0)}mm`,
      }),
    ).toBeUndefined();
  });

  test('its flat bit, added to the job, leaves what it says, and nothing where it clears', () => {
    const star = (radius: number): number[] =>
      Array.from({ length: 10 }, (_, k) => [k % 2 === 0 ? radius : radius * 0.5, (Math.PI * k) / 5]).flatMap(
        ([r, angle]) => [r! * Math.cos(angle!), r! * Math.sin(angle!)],
      );
    for (const outline of [rectangle(0, 0, 30, 30), rectangle(0, 0, 80, 6), star(12), star(40)]) {
      const job = { depth: '2mm', bit: ['vee:60deg:12mm'] };
      const finding = find([outline], 'floor-left-ridged', job);
      const fix = fixOf(finding, 'use-bit');
      expect(fix).toBeDefined();
      const after = find([outline], 'floor-left-ridged', {
        ...job,
        bit: [...job.bit, `flat:${fix?.diameterMm}mm`],
      });
      expect(after === undefined).toBe(fix?.clears);
      const share = 1 - (after?.measured.value ?? 0) / (finding?.measured.value ?? 0);
      expect(100 * share).toBeGreaterThanOrEqual((fix?.floorSharePct ?? 101) - 0.5);
    }
  });

  test('what the job’s bits leave is told at its place: the arms of a star that a wide bit does not enter', () => {
    const plus = [-4, -30, 4, -30, 4, -4, 30, -4, 30, 4, 4, 4, 4, 30, -4, 30, -4, 4, -30, 4, -30, -4, -4, -4];
    const job = { depth: '2mm', bit: ['vee:60deg:12mm', 'flat:7mm'] };
    const finding = find([plus], 'floor-left-ridged', job);
    expect(finding?.where).toHaveLength(4);
    expect(finding?.where.every(({ what }) => what === 'floor')).toBe(true);
    expect(finding?.where.reduce((sum, { areaMm2 }) => sum + (areaMm2 ?? 0), 0)).toBeCloseTo(
      finding?.measured.value ?? 0,
      0,
    );
  });

  test('is silent on a floor that is no wider than a round or two', () => {
    // 100 mm of a stroke whose floor is 0.9 mm wide
    const width = 0.9 + 4 * Math.tan(Math.PI / 6);
    expect(find([rectangle(0, 0, 100, width)], 'floor-left-ridged', { depth: '2mm' })).toBeUndefined();
  });

  test('is silent where the flanks meet before the limit, and for other bits', () => {
    expect(find([BAR], 'floor-left-ridged')).toBeUndefined();
    expect(find([BAR], 'floor-left-ridged', { bit: ['flat:2mm'], depth: '2mm' })).toBeUndefined();
    expect(find([BAR], 'floor-left-ridged', { bit: ['ball:2mm'], depth: '2mm' })).toBeUndefined();
  });
});

describe('vee-ends-early', () => {
  const wide = [rectangle(0, 0, 40, 14)];

  test('fires where a stroke is wider than the bit, and a wider bit or less depth clears it', () => {
    const finding = find(wide, 'vee-ends-early', { depth: '11mm' });
    expect(finding?.measured.value).toBeCloseTo(6 / Math.tan(Math.PI / 6), 7);
    expect(finding?.limit.value).toBe(11);
    expect(
      find(wide, 'vee-ends-early', {
        depth: '11mm',
        bit: [`vee:60deg:${fixOf(finding, 'use-vee')?.diameterMm}mm`],
      }),
    ).toBeUndefined();
    expect(
      find(wide, 'vee-ends-early', { depth: `${fixOf(finding, 'cut-shallower')?.toMm}mm` }),
    ).toBeUndefined();
  });

  test('takes the rounding of a tip into account: neither too early nor with too small a bit', () => {
    const round = ['vee:60deg:12mm:tip radius 1mm'];
    // 6/tan(30°) less ρ/sin(30°) − ρ: the bit ends at 9.392 mm
    const reach = 6 / Math.tan(Math.PI / 6) - 1;
    expect(find([rectangle(0, 0, 40, 12)], 'vee-ends-early', { depth: '20mm', bit: round })).toBeUndefined();
    const finding = find(wide, 'vee-ends-early', { depth: '11mm', bit: round });
    expect(finding?.measured.value).toBeCloseTo(reach, 9);
    const bit = fixOf(finding, 'use-vee');
    expect(bit?.diameterMm).toBeCloseTo(2 * 12 * Math.tan(Math.PI / 6), 1);
    const larger = [`vee:60deg:${bit?.diameterMm}mm:tip radius 1mm`];
    expect(find(wide, 'vee-ends-early', { depth: '11mm', bit: larger })).toBeUndefined();
  });

  test('is silent where another V of the job goes all the way', () => {
    const bit = ['vee:60deg:12mm', 'vee:60deg:25mm'];
    expect(find(wide, 'vee-ends-early', { depth: '11mm', bit })).toBeUndefined();
  });

  test('fires where the cutting edge is too short', () => {
    expect(find(wide, 'vee-ends-early', { bit: ['vee:60deg:25mm:length 5mm'] })?.measured.value).toBe(5);
  });

  test('is silent where no stroke asks for more', () => {
    expect(find([BAR], 'vee-ends-early')).toBeUndefined();
  });
});

describe('findings that a V changes', () => {
  test('sands-through tells the width that is left, and each way out clears it', () => {
    const thin = [rectangle(0, 0, 30, 0.8)];
    const finding = find(thin, 'sands-through', { level: '0.3mm' });
    expect(finding?.severity).toBe('caution');
    expect(finding?.measured).toMatchObject({ quantity: 'width', unit: 'mm' });
    expect(finding?.measured.value).toBeCloseTo(0.8 - 0.6 * Math.tan(Math.PI / 6), 8);
    expect(
      find([rectangle(0, 0, 30, 0.8 + (fixOf(finding, 'widen')?.byMm ?? 0))], 'sands-through', {
        level: '0.3mm',
      }),
    ).toBeUndefined();
    // less levelling is wide enough, but still within what sanding by hand may take
    const less = fixOf(finding, 'level-less');
    expect(less?.clears).toBe(false);
    const after = find(thin, 'sands-through', { level: `${0.3 - (less?.byMm ?? 0)}mm` });
    expect(after?.measured).toEqual({
      // until 0.2 mm of its width are left
      value: expect.closeTo(0.3 * Math.sqrt(3), 6),
      quantity: 'height',
      unit: 'mm',
    });
    expect(after?.limit.value).toBe(1);
  });

  test('sands-through is a stop where a quarter of a millimetre would be left', () => {
    expect(find([rectangle(0, 0, 30, 0.8)], 'sands-through', { level: '0.5mm' })?.severity).toBe('stop');
  });

  test('sands-through is a stop where the whole depth of a stroke is taken', () => {
    expect(find([rectangle(0, 0, 30, 0.5)], 'sands-through', { level: '0.5mm' })?.severity).toBe('stop');
  });

  test('ghost-stroke fires below 4 t/cos(A/2) over one half, and not on a wider stroke', () => {
    const sealed: JobInput = { seal: 'epoxy', coats: 1, sealHours: '24h' };
    const { filmMm } = reportOf([BAR], sealed).seal;
    const limit = (8 * filmMm) / Math.cos(Math.PI / 6);
    expect(find([rectangle(0, 0, 30, limit * 0.99)], 'ghost-stroke', sealed)).toBeDefined();
    expect(find([rectangle(0, 0, 30, limit * 1.01)], 'ghost-stroke', sealed)).toBeUndefined();
    expect(reportOf([BAR], sealed).seal.ghostBelowMm).toBeCloseTo(limit / 2, 9);
  });

  test('stroke-near-bit-width has nothing to say of a V', () => {
    expect(
      find([rectangle(0, 0, 30, 3.05)], 'stroke-near-bit-width', { bit: ['vee:60deg:3mm'] }),
    ).toBeUndefined();
  });
});
