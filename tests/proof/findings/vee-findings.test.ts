import { type JobInput, settleJob } from '@pourproof/job';
import { judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf, waysOut } from '../../support/fix-of.ts';
import { BAR, findInVee, reportOf, VEE } from '../../support/vee-job.ts';

describe('a V with a flat tip', () => {
  const blunt: JobInput = { bit: ['vee:60deg:12mm:tip 2mm'], depth: '6mm', level: '0.5mm' };
  const wideAndThin = [rectangle(0, 0, 30, 20), rectangle(40, 0, 1.5, 20)];

  test('is levelled by the narrowest stroke that it cuts, not by one that stays wood', () => {
    const { levelling } = reportOf(wideAndThin, blunt);
    expect(levelling.leftWidthMm).toBeCloseTo(20 - Math.tan(Math.PI / 6), 6);
    expect(levelling.firstLostAt?.[0]).toBeLessThan(30);
    expect(findInVee(wideAndThin, 'sands-through', blunt)).toBeUndefined();
    expect(findInVee([wideAndThin[0] ?? []], 'sands-through', blunt)).toBeUndefined();
  });

  test('enters with a finer tip, which no flat bit can stand for: each way out clears the finding', () => {
    const finding = findInVee(wideAndThin, 'bit-cannot-enter', blunt);
    expect(finding?.measured.value).toBeCloseTo(1.5, 9);
    expect(finding?.limit).toMatchObject({ quantity: 'tip-width', unit: 'mm' });
    const finer = { ...blunt, bit: [`vee:60deg:12mm:tip ${fixOf(finding, 'use-tip')?.tipMm}mm`] };
    expect(findInVee(wideAndThin, 'bit-cannot-enter', finer)).toBeUndefined();
    const larger = wideAndThin.map((ring) =>
      ring.map((each) => each * (fixOf(finding, 'scale')?.factor ?? 0)),
    );
    expect(findInVee(larger, 'bit-cannot-enter', blunt)).toBeUndefined();
    const wider = [rectangle(40, 0, 1.5 + (fixOf(finding, 'widen')?.byMm ?? 0), 20)];
    expect(findInVee(wider, 'bit-cannot-enter', blunt)).toBeUndefined();
    // clearing bits keep within the walls of the V
    const flat = { ...blunt, bit: ['vee:60deg:12mm:tip 2mm', 'flat:1mm'] };
    expect(findInVee(wideAndThin, 'bit-cannot-enter', flat)).toBeDefined();
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

describe('floor-left-ridged', () => {
  test('offers no depth that the V itself or a usual board does not have', () => {
    const wide = [rectangle(0, 0, 30, 20)];
    const deepens = (job: JobInput): boolean =>
      findInVee(wide, 'floor-left-ridged', job)?.fix.options.some((option) => option.do === 'deepen') ??
      false;
    // its flanks would meet 10/tan(30°) = 17.32 mm deep
    expect(deepens({ depth: '2mm' })).toBe(false);
    expect(deepens({ depth: '2mm', bit: ['vee:60deg:40mm'] })).toBe(false);
    expect(deepens({ depth: '2mm', bit: ['vee:120deg:40mm'] })).toBe(true);
    expect(deepens({ depth: '2mm', bit: ['vee:120deg:40mm:length 3mm'] })).toBe(false);
  });

  test('fires where a depth limit leaves a floor to the tip, and its flat bit clears most of it', () => {
    const finding = findInVee([rectangle(0, 0, 30, 10)], 'floor-left-ridged', { depth: '2mm' });
    const inset = 4 * Math.tan(Math.PI / 6);
    expect(finding?.severity).toBe('caution');
    // but for corners that a disc of 1 mm leaves
    expect(finding?.measured.value).toBeCloseTo((30 - inset) * (10 - inset) - (4 - Math.PI) * 0.25, 6);
    const bit = fixOf(finding, 'use-bit');
    expect(finding?.fix.options.map((fix) => fix.do)).toEqual(['use-bit', 'deepen']);
    const left = findInVee([rectangle(0, 0, 30, 10)], 'floor-left-ridged', {
      depth: '2mm',
      bit: ['vee:60deg:12mm', `flat:${bit?.diameterMm}mm`],
    });
    expect(left === undefined || bit?.clears === false).toBe(true);
    expect(left?.measured.value ?? 0).toBeLessThan(0.2 * (finding?.measured.value ?? 0));
    expect(
      findInVee([rectangle(0, 0, 30, 10)], 'floor-left-ridged', {
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
      const finding = findInVee([outline], 'floor-left-ridged', job);
      const fix = fixOf(finding, 'use-bit');
      expect(fix).toBeDefined();
      const after = findInVee([outline], 'floor-left-ridged', {
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
    const finding = findInVee([plus], 'floor-left-ridged', job);
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
    expect(findInVee([rectangle(0, 0, 100, width)], 'floor-left-ridged', { depth: '2mm' })).toBeUndefined();
  });

  test('is silent where the flanks meet before the limit, and for other bits', () => {
    expect(findInVee([BAR], 'floor-left-ridged')).toBeUndefined();
    expect(findInVee([BAR], 'floor-left-ridged', { bit: ['flat:2mm'], depth: '2mm' })).toBeUndefined();
    expect(findInVee([BAR], 'floor-left-ridged', { bit: ['ball:2mm'], depth: '2mm' })).toBeUndefined();
  });
});

describe('vee-ends-early', () => {
  const wide = [rectangle(0, 0, 40, 14)];

  test('fires where a stroke is wider than the bit, and a wider bit or less depth clears it', () => {
    const finding = findInVee(wide, 'vee-ends-early', { depth: '11mm' });
    expect(finding?.measured.value).toBeCloseTo(6 / Math.tan(Math.PI / 6), 7);
    expect(finding?.limit.value).toBe(11);
    expect(
      findInVee(wide, 'vee-ends-early', {
        depth: '11mm',
        bit: [`vee:60deg:${fixOf(finding, 'use-vee')?.diameterMm}mm`],
      }),
    ).toBeUndefined();
    expect(
      findInVee(wide, 'vee-ends-early', { depth: `${fixOf(finding, 'cut-shallower')?.toMm}mm` }),
    ).toBeUndefined();
  });

  test('takes the rounding of a tip into account: neither too early nor with too small a bit', () => {
    const round = ['vee:60deg:12mm:tip radius 1mm'];
    // 6/tan(30°) less ρ/sin(30°) − ρ: the bit ends at 9.392 mm
    const reach = 6 / Math.tan(Math.PI / 6) - 1;
    expect(
      findInVee([rectangle(0, 0, 40, 12)], 'vee-ends-early', { depth: '20mm', bit: round }),
    ).toBeUndefined();
    const finding = findInVee(wide, 'vee-ends-early', { depth: '11mm', bit: round });
    expect(finding?.measured.value).toBeCloseTo(reach, 9);
    const bit = fixOf(finding, 'use-vee');
    expect(bit?.diameterMm).toBeCloseTo(2 * 12 * Math.tan(Math.PI / 6), 1);
    const larger = [`vee:60deg:${bit?.diameterMm}mm:tip radius 1mm`];
    expect(findInVee(wide, 'vee-ends-early', { depth: '11mm', bit: larger })).toBeUndefined();
  });

  test('is silent where another V of the job goes all the way', () => {
    const bit = ['vee:60deg:12mm', 'vee:60deg:25mm'];
    expect(findInVee(wide, 'vee-ends-early', { depth: '11mm', bit })).toBeUndefined();
  });

  test('fires where the cutting edge is too short', () => {
    expect(findInVee(wide, 'vee-ends-early', { bit: ['vee:60deg:25mm:length 5mm'] })?.measured.value).toBe(5);
  });

  test('is silent where no stroke asks for more', () => {
    expect(findInVee([BAR], 'vee-ends-early')).toBeUndefined();
  });
});

describe('findings that a V changes', () => {
  test('sands-through tells the width that is left, and each way out clears it', () => {
    const thin = [rectangle(0, 0, 30, 0.8)];
    const finding = findInVee(thin, 'sands-through', { level: '0.3mm' });
    expect(finding?.severity).toBe('caution');
    expect(finding?.measured).toMatchObject({ quantity: 'width', unit: 'mm' });
    expect(finding?.measured.value).toBeCloseTo(0.8 - 0.6 * Math.tan(Math.PI / 6), 8);
    expect(
      findInVee([rectangle(0, 0, 30, 0.8 + (fixOf(finding, 'widen')?.byMm ?? 0))], 'sands-through', {
        level: '0.3mm',
      }),
    ).toBeUndefined();
    // less levelling is wide enough, but still within what sanding by hand may take
    const less = fixOf(finding, 'level-less');
    expect(less?.clears).toBe(false);
    const after = findInVee(thin, 'sands-through', { level: `${0.3 - (less?.byMm ?? 0)}mm` });
    expect(after?.measured).toEqual({
      // until 0.2 mm of its width are left
      value: expect.closeTo(0.3 * Math.sqrt(3), 6),
      quantity: 'height',
      unit: 'mm',
    });
    expect(after?.limit.value).toBe(1);
  });

  test('sands-through is a stop where a quarter of a millimetre would be left', () => {
    expect(findInVee([rectangle(0, 0, 30, 0.8)], 'sands-through', { level: '0.5mm' })?.severity).toBe('stop');
  });

  test('sands-through is a stop where the whole depth of a stroke is taken', () => {
    expect(findInVee([rectangle(0, 0, 30, 0.5)], 'sands-through', { level: '0.5mm' })?.severity).toBe('stop');
  });

  test('ghost-stroke fires below 4 t/cos(A/2) over one half, and not on a wider stroke', () => {
    const sealed: JobInput = { seal: 'epoxy', coats: 1, sealHours: '24h' };
    const { filmMm } = reportOf([BAR], sealed).seal;
    const limit = (8 * filmMm) / Math.cos(Math.PI / 6);
    expect(findInVee([rectangle(0, 0, 30, limit * 0.99)], 'ghost-stroke', sealed)).toBeDefined();
    expect(findInVee([rectangle(0, 0, 30, limit * 1.01)], 'ghost-stroke', sealed)).toBeUndefined();
    expect(reportOf([BAR], sealed).seal.ghostBelowMm).toBeCloseTo(limit / 2, 9);
  });

  test('stroke-near-bit-width has nothing to say of a V', () => {
    expect(
      findInVee([rectangle(0, 0, 30, 3.05)], 'stroke-near-bit-width', { bit: ['vee:60deg:3mm'] }),
    ).toBeUndefined();
  });
});
