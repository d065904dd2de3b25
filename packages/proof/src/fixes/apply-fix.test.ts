import { type JobInput, settleJob } from '@pourproof/job';
import { type Drawing, packRings, textInUnits } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import type { Fix } from '../report/fix-schema.ts';
import { judgeDrawing } from '../vet-drawing.ts';
import { applyFix, FIX_SETTINGS } from './apply-fix.ts';

const applied = (fix: Fix, job: JobInput = {}, isLettering = false) => applyFix(job, fix, { isLettering });

test('a bit comes after those at hand, the usual one among them, in the unit of the job', () => {
  const bit: Fix = { do: 'use-bit', kind: 'flat', diameterMm: 1, clears: true };
  expect(applied(bit, { bit: ['flat:3mm'] })).toEqual({ bit: ['flat:3mm', 'flat:1mm'] });
  expect(applied(bit)).toEqual({ bit: ['flat:1/8in', 'flat:1mm'] });
  const inches: Fix = { ...bit, diameterMm: 25.4 / 16 };
  expect(applied(inches, { bit: ['flat:1/8in'], units: 'in' })?.bit).toEqual(['flat:1/8in', 'flat:0.0625in']);
  const structure = { kind: 'flat', diameterMm: 3 } as const;
  expect(applied(bit, { bit: [structure] })?.bit).toEqual([structure, 'flat:1mm']);
});

test('a V is changed in its place, and only where it is what the way out is for', () => {
  const bit = ['flat:3mm', 'vee:60deg:6mm:tip 0.5mm', 'vee:90deg:6mm'];
  const wider: Fix = { do: 'use-vee', angleDeg: 60, diameterMm: 12, clears: true };
  const changed = applied(wider, { bit })?.bit;
  expect([changed?.[0], changed?.[2]]).toEqual([bit[0], bit[2]]);
  expect(changed?.[1]).toMatchObject({ kind: 'vee', angleDeg: 60, diameterMm: 12, tipMm: 0.5 });
  const pointed: Fix = { do: 'use-tip', tipMm: 0.2, clears: true };
  expect(applied(pointed, { bit })?.bit?.[1]).toMatchObject({ kind: 'vee', diameterMm: 6, tipMm: 0.2 });
  expect(applied(pointed, { bit: ['vee:90deg:6mm'] })).toBeNull();
});

describe('scaling', () => {
  const larger: Fix = { do: 'scale', factor: 1.2, clears: true };

  test('keeps the setting and the unit that the size has', () => {
    expect(applied(larger, { width: '100mm' })).toEqual({ width: '120mm' });
    expect(applied(larger, { height: '1-1/2in' })).toEqual({ height: '1.8in' });
    expect(applied(larger, { width: { in: 4 } })).toEqual({ width: '4.8in' });
    expect(applied(larger, { scale: 1.5 })).toEqual({ scale: 1.8 });
    expect(applied(larger)).toEqual({ scale: 1.2 });
  });

  test('of lettering goes by its capitals or its width', () => {
    expect(applied(larger, { capHeight: '20mm' }, true)).toEqual({ capHeight: '24mm' });
    expect(applied(larger, { width: '4in' }, true)).toEqual({ width: '4.8in' });
    expect(applied(larger, {}, true)).toBeNull();
  });
});

test('the artwork turns on a described board; without one the fibres turn the other way under it', () => {
  const turn: Fix = { do: 'turn', deg: 30, sparedPct: 40, clears: false };
  const board = 'plain 300x180x20mm walnut';
  expect(applied(turn, { board, turn: '-10deg' })).toEqual({ board, turn: '20deg' });
  expect(applied(turn, { grain: '45deg' })).toEqual({ grain: '15deg' });
  expect(applied(turn, { grain: { deg: 10 } })).toEqual({ grain: '160deg' });
});

test('letters and lines are set farther apart than they are, in the unit of the tracking', () => {
  const track: Fix = { do: 'track', byMm: 0.254, clears: true };
  expect(applied(track, {}, true)).toEqual({ tracking: '0.254mm' });
  expect(applied(track, { tracking: '-1mm' }, true)).toEqual({ tracking: '-0.746mm' });
  expect(applied(track, { tracking: '0.1in' }, true)).toEqual({ tracking: '0.11in' });
  const lines: Fix = { do: 'space-lines', factor: 1.05, clears: true };
  expect(applied(lines, {}, true)).toEqual({ lineSpacing: 1.05 });
  expect(applied(lines, { lineSpacing: 0.8 }, true)).toEqual({ lineSpacing: 0.84 });
});

test('rows of coupons keep what they took from the job', () => {
  const seal: Fix = {
    do: 'change-seal',
    seal: 'epoxy',
    coats: 2,
    hours: 8,
    bondsUnsanded: true,
    clears: true,
  };
  const slots = ['1mm'];
  const job: JobInput = { seal: 'shellac', sealHours: '3h', coupons: [{ slots }, { seal: 'none', slots }] };
  const pinned = [
    { seal: 'shellac', coats: 1, sealHours: '3h', slots },
    { seal: 'none', coats: 1, sealHours: '3h', slots },
  ];
  expect(applied(seal, job)?.coupons).toEqual(pinned);
  expect(applied(seal, { ...job, coupons: pinned })?.coupons).toBe(pinned);
  expect(applied({ do: 'deepen', byMm: 1, clears: true }, job)?.coupons).toBe(job.coupons);
  const warm: Fix = { do: 'change-temperature', toC: 25, besideSolvent: false, clears: true };
  expect(applied(warm, { ...job, shopTemp: '18C' })?.coupons?.[0]).toEqual({ temp: '18C', slots });
  expect(applied({ do: 'use-resin', resin: 'deep-pour', clears: true }, job)?.coupons?.[1]).toEqual({
    seal: 'none',
    resin: 'coating',
    slots,
  });
});

test('a thicker board comes before the deeper cut that needs it', () => {
  const deeper: Fix = {
    ...{ do: 'deepen', byMm: 6, clears: true },
    also: [{ do: 'thicker-board', thicknessMm: 13.5, clears: true }],
  };
  expect(applied(deeper, { depth: '3mm', thickness: '8mm' })).toEqual({ depth: '9mm', thickness: '13.5mm' });
});

test('lengths are rounded so that they are enough', () => {
  const third: Fix = { do: 'deepen', byMm: 1 / 3, clears: true };
  expect(applied(third, { depth: '1mm' })).toEqual({ depth: '1.334mm' });
  expect(applied({ do: 'level-less', byMm: 1 / 3, clears: true }, { level: '1mm' })).toEqual({
    level: '0.666mm',
  });
  expect(applied({ do: 'cut-shallower', toMm: 3, clears: true }, { depth: '1/4in' })).toEqual({
    depth: '0.1181in',
  });
});

test.each<readonly [fix: Fix, job: JobInput]>([
  [{ do: 'thicker-board', thicknessMm: 24, clears: true }, { thickness: '18mm' }],
  [{ do: 'thicker-board', thicknessMm: 24, clears: true }, { board: 'plain 300x180x20mm walnut' }],
  [{ do: 'turn', deg: 30, sparedPct: 40, clears: false }, { grain: '45deg' }],
  [{ do: 'turn', deg: 30, sparedPct: 40, clears: false }, { board: 'plain 300x180x20mm walnut' }],
  [{ do: 'scale', factor: 2, clears: true }, { height: '20mm' }],
  [{ do: 'use-bit', kind: 'flat', diameterMm: 1, clears: true }, { bit: ['flat:3mm'] }],
  [{ do: 'change-seal', seal: 'epoxy', coats: 2, hours: 8, bondsUnsanded: true, clears: true }, {}],
  [{ do: 'deepen', byMm: 1, clears: true }, { depth: '3mm' }],
  [{ do: 'pour-proud', overpourMm: 1, clears: true }, {}],
])('%j changes no settings but those that are named for it, and one of them at least', (fix, job) => {
  const after = applied(fix, job) ?? {};
  const keys = [...new Set([...Object.keys(job), ...Object.keys(after)])] as (keyof JobInput)[];
  const changed = keys.filter((key) => JSON.stringify(after[key]) !== JSON.stringify(job[key]));
  expect(changed.length).toBeGreaterThan(0);
  expect(FIX_SETTINGS[fix.do]).toEqual(expect.arrayContaining(changed));
});

test('what no setting expresses changes nothing', () => {
  expect(applied({ do: 'widen', what: 'stroke', byMm: 0.2, clears: true })).toBeNull();
  expect(applied({ do: 'use-vee', angleDeg: 60, diameterMm: 14, clears: true })).toBeNull();
  expect(applied({ do: 'move', rightMm: 5, downMm: 0, clears: true })).toBeNull();
});

/** A pocket 40 mm long. */
function pocket(widthMm: number): Drawing {
  const region = { ...packRings([[0, 0, 40, 0, 40, widthMm, 0, widthMm]]), fillRule: 'nonzero' as const };
  return {
    format: 'svg',
    scaleSource: textInUnits('made by a test'),
    toleranceMm: 0.005,
    notices: [],
    shapes: [{ region, layer: '', colour: '#000000', source: 'pocket' }],
  };
}

const CALM: JobInput = {
  bit: ['flat:0.5mm'],
  wood: 'walnut',
  seal: 'epoxy',
  coats: 1,
  sealHours: '24h',
  boards: 10,
};
const ON_BOARD = { wood: undefined, board: 'plain 100x60x20mm walnut' };

test.each<readonly [doing: Fix['do'], code: string, widthMm: number, job: JobInput]>([
  ['wait', 'seal-not-cured', 20, { sealHours: '1h' }],
  ['level-less', 'sands-through', 20, { depth: '1.5mm', level: '1mm' }],
  ['deepen', 'sands-through', 20, { depth: '1.5mm', level: '1mm' }],
  ['fewer-coats', 'ghost-stroke', 1.45, { depth: '3mm', coats: 3 }],
  ['use-scale', 'batch-too-small', 15, { boards: 1, weigh: 'tenth' }],
  ['use-resin', 'pour-too-deep', 20, { depth: '12mm', level: '0.2mm' }],
  [
    'change-seal',
    'high-bleed-wall',
    8,
    { wood: 'maple', seal: 'none', coats: undefined, sealHours: undefined },
  ],
  ['use-bit', 'bit-cannot-enter', 1.2, { bit: ['flat:3mm'], depth: '2mm' }],
  ['scale', 'bit-cannot-enter', 2.9, { bit: ['flat:3mm'], depth: '2mm' }],
  ['move', 'off-the-board', 4, { ...ON_BOARD, place: '10mm,30mm' }],
  ['move', 'off-the-board', 4, { ...ON_BOARD, place: '99mm,30mm', turn: '90deg' }],
])('%s, applied, clears a real finding of %s', (doing, code, widthMm, over) => {
  const job = { ...CALM, ...over };
  const codesOf = (input: JobInput) => {
    // scaling is done by the reader
    const drawing = pocket(widthMm * (input.scale ?? 1));
    return judgeDrawing(drawing, 'x', settleJob({ ...input, scale: undefined })).report.findings;
  };
  const fix = codesOf(job)
    .find((each) => each.code === code)
    ?.fix.options.find((each) => each.do === doing);
  expect(fix?.clears).toBe(true);
  const after = applyFix(job, fix as Fix);
  expect(after).not.toBeNull();
  expect(codesOf(after as JobInput).map((each) => each.code)).not.toContain(code);
});
