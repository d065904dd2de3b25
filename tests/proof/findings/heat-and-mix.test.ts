import { type JobInput, settleJob } from '@pourproof/job';
import { type Finding, type FindingCode, judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf, waysOut } from '../../support/fix-of.ts';

/** A job in which nothing speaks against anything. */
const CALM: JobInput = {
  bit: ['flat:3mm'],
  depth: '3mm',
  wood: 'walnut',
  seal: 'epoxy',
  sealHours: '24h',
  weigh: 'fine',
};
const POCKET = drawingOf([rectangle(0, 0, 40, 20)]);
const find = (code: FindingCode, job: JobInput, drawing = POCKET): Finding | undefined =>
  judgeDrawing(drawing, 'test', settleJob({ ...CALM, ...job })).report.findings.find(
    (finding) => finding.code === code,
  );

describe('cup-too-large', () => {
  // 500 × 400 mm, 3 mm deep less 0.1 mm of film, 0.5 mm proud: about 0.68 l, and 15 % waste on it
  const tray = drawingOf([rectangle(0, 0, 500, 400)]);

  test('fires where a layer takes more than one cup may hold, and the plan is split into cups below it', () => {
    const finding = find('cup-too-large', {}, tray);
    expect(finding?.severity).toBe('caution');
    expect(finding?.limit.value).toBe(500);
    const { report } = judgeDrawing(tray, 'test', settleJob(CALM));
    const [colour] = report.pour.colours;
    // the report prints the mass in whole steps of the scale
    expect(Math.abs((finding?.measured.value ?? 0) - (colour?.massG ?? 0))).toBeLessThan(0.02);
    expect((colour?.massG ?? 0) / (colour?.cups.count ?? 1)).toBeLessThanOrEqual(500);
    expect(fixOf(finding, 'more-cups')?.cups).toBe(colour?.cups.count);
    expect(fixOf(finding, 'more-cups')?.cups).toBe(Math.ceil((colour?.massG ?? 0) / 500));
  });

  test('a slower resin whose cup holds it all clears it', () => {
    const resin = fixOf(find('cup-too-large', {}, tray), 'use-resin')?.resin ?? '';
    expect(resin).toBe('deep-pour');
    expect(find('cup-too-large', { resin }, tray)).toBeUndefined();
  });

  test('ten degrees more leave about a third of the cup', () => {
    expect(find('cup-too-large', { shopTemp: '35C' }, tray)?.limit.value).toBeCloseTo(500 / 8 ** 0.5, 6);
  });

  test('is silent on a small tray', () => {
    expect(find('cup-too-large', {}, drawingOf([rectangle(0, 0, 300, 300)]))).toBeUndefined();
  });
});

describe('pour-hurried', () => {
  /** Equal dots in rows: many pockets, little resin. */
  const dots = (count: number) =>
    drawingOf(Array.from({ length: count }, (_, k) => rectangle((k % 20) * 8, Math.floor(k / 20) * 8, 4, 4)));
  // a cup of coating resin fills (25 − 3) / 0.5 = 44 pockets in its working time
  const kitchen: JobInput = { weigh: 'kitchen' };

  test('fires on many small pockets weighed on a coarse scale, with both numbers', () => {
    const finding = find('pour-hurried', kitchen, dots(60));
    expect(finding?.severity).toBe('caution');
    expect(finding?.measured.value).toBe(60);
    expect(finding?.limit.value).toBe(44);
  });

  test('each way out clears it', () => {
    const finding = find('pour-hurried', kitchen, dots(60));
    const scale = fixOf(finding, 'use-scale')?.scale ?? '';
    const resin = fixOf(finding, 'use-resin')?.resin ?? '';
    expect(find('pour-hurried', { weigh: scale }, dots(60))).toBeUndefined();
    expect(find('pour-hurried', { ...kitchen, resin }, dots(60))).toBeUndefined();
  });

  test('is silent at the limit', () => {
    expect(find('pour-hurried', kitchen, dots(44))).toBeUndefined();
  });
});

describe('pour-flush', () => {
  // 3 mm shrink by 2 %: 0.06 mm
  const flush: JobInput = { overpour: '0mm', level: '0mm' };

  test('fires on a pour level with the face that is not levelled, and a proud pour clears it', () => {
    const finding = find('pour-flush', flush);
    expect(finding?.limit.value).toBeCloseTo(0.06, 9);
    const overpour = `${fixOf(finding, 'pour-proud')?.overpourMm}mm`;
    expect(overpour).toBe('0.5mm');
    expect(find('pour-flush', { ...flush, overpour })).toBeUndefined();
  });

  test('is silent where levelling goes down to it', () => {
    expect(find('pour-flush', { overpour: '0mm', level: '0.07mm' })).toBeUndefined();
    expect(find('pour-flush', { overpour: '0mm', level: '0.05mm' })).toBeDefined();
  });
});

describe('resin-too-cold and resin-too-warm', () => {
  test.each([
    ['coating', 14, 27.5],
    ['laminating', 9, 30.5],
    ['deep-pour', 17, 27.5],
  ])('%s is refused outside its range, and the way out lies within', (resin, coldC, warmC) => {
    for (const [code, shopC] of [
      ['resin-too-cold', coldC],
      ['resin-too-warm', warmC],
    ] as const) {
      const finding = find(code, { resin, shopTemp: `${shopC}C` });
      expect(finding?.measured).toEqual({ value: shopC, quantity: 'temperature', unit: '°C' });
      const shopTemp = `${fixOf(finding, 'change-temperature')?.toC}C`;
      expect(find('resin-too-cold', { resin, shopTemp })).toBeUndefined();
      expect(find('resin-too-warm', { resin, shopTemp })).toBeUndefined();
    }
  });

  test('are silent at both ends', () => {
    expect(find('resin-too-cold', { shopTemp: '15C' })).toBeUndefined();
    expect(find('resin-too-warm', { shopTemp: '27C' })).toBeUndefined();
  });
});

describe('pigment-too-much', () => {
  test('fires above 6 %, and its way out clears it', () => {
    const finding = find('pigment-too-much', { pigmentPct: 8 });
    expect(waysOut(finding, 'mm')).toEqual(['Use no more than 6 %, and test whether it is enough.']);
    expect(
      find('pigment-too-much', { pigmentPct: fixOf(finding, 'less-pigment')?.toPct ?? 0 }),
    ).toBeUndefined();
  });
});
