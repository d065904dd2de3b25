import { type JobInput, settleJob } from '@pourproof/job';
import { type FindingCode, judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf, waysOut } from '../../support/fix-of.ts';

type Finding = ReturnType<typeof judgeDrawing>['report']['findings'][number];

const JOB: JobInput = {
  bit: ['flat:3mm'],
  depth: '3mm',
  wood: 'cherry',
  seal: 'epoxy',
  units: 'mm',
};

/** A five-pointed star whose outline crosses itself, in a box of about 40 mm: tips of 36°. */
const STAR = [20, 2, 31, 36, 2, 15, 38, 15, 9, 36];

function find(
  rings: readonly (readonly number[])[],
  code: FindingCode,
  job: JobInput = {},
): Finding | undefined {
  return judgeDrawing(drawingOf(rings), 'a test', settleJob({ ...JOB, ...job })).report.findings.find(
    (finding) => finding.code === code,
  );
}

function scaled(rings: readonly (readonly number[])[], factor: number): number[][] {
  return rings.map((ring) => ring.map((value) => value * factor));
}

describe('what the bit leaves', () => {
  test('a star is not offered a larger size, for at any size its tips lose the same to the bit', () => {
    const finding = find([STAR], 'cut-ends-short');
    expect(finding).toBeDefined();
    expect(fixOf(finding, 'scale')?.factor).toBeUndefined();
    for (const factor of [5, 25]) {
      expect(find(scaled([STAR], factor), 'cut-ends-short')?.measured.value).toBeCloseTo(
        finding?.measured.value ?? 0,
        6,
      );
    }
  });

  test('a slot scaled as told is entered, and hardly less is too little', () => {
    for (const width of [0.7, 1.4, 2.6]) {
      const slot = [rectangle(0, 0, 50, width)];
      const factor = fixOf(find(slot, 'bit-cannot-enter'), 'scale')?.factor ?? Number.NaN;
      // the largest bit is found to 1 %, and factors are whole hundredths
      // and what flattening can take off a stroke, 10 µm, is not held against it
      expect(factor).toBeGreaterThanOrEqual((3 - 0.01) / width);
      expect(factor).toBeLessThan((3 / width) * 1.02 + 0.01);
      expect(find(scaled(slot, factor), 'bit-cannot-enter')).toBeUndefined();
    }
  });
});

describe('stroke-near-bit-width', () => {
  const strokes = [rectangle(0, 0, 60, 2), rectangle(0, 20, 60, 3)];

  test('the bit that it offers has room in the strokes that the bit of the job does not enter, too', () => {
    const finding = find(strokes, 'stroke-near-bit-width');
    expect(finding?.measured.value).toBeCloseTo(3, 6);
    // 2 mm would have room in the 3 mm stroke, but just fill the other
    expect(fixOf(finding, 'use-bit')?.diameterMm).toBe(1.5);
    expect(find(strokes, 'stroke-near-bit-width', { bit: ['flat:3mm', 'flat:2mm'] })).toBeDefined();
    expect(find(strokes, 'stroke-near-bit-width', { bit: ['flat:3mm', 'flat:1.5mm'] })).toBeUndefined();
  });

  test('the scale that it offers does not bring a narrower stroke up to the bit', () => {
    const ladder = [rectangle(0, 0, 60, 2.9), rectangle(0, 20, 60, 3)];
    const factor = fixOf(find(ladder, 'stroke-near-bit-width'), 'scale')?.factor ?? Number.NaN;
    expect(find(scaled(ladder, 1.05), 'stroke-near-bit-width')).toBeDefined();
    expect(factor).toBeCloseTo(3.15 / 2.9, 1);
    expect(find(scaled(ladder, factor), 'stroke-near-bit-width')).toBeUndefined();
  });
});

describe('sands-through', () => {
  const slots = [rectangle(0, 0, 50, 3)];
  const sealed = { bit: ['flat:1mm'], depth: '2mm', coats: 7, level: '0.5mm' };

  test('where seal has filled the slot the way out is fewer coats, and it clears', () => {
    const finding = find(slots, 'sands-through', sealed);
    const coats = fixOf(finding, 'fewer-coats')?.coats ?? Number.NaN;
    expect(coats).toBeLessThan(7);
    expect(find(slots, 'sands-through', { ...sealed, coats })).toBeUndefined();
    expect(find(slots, 'sands-through', { ...sealed, coats: coats + 1 })).toBeDefined();
  });

  test('no cut of many times the depth is offered, and one that is offered clears', () => {
    const narrow = [rectangle(0, 0, 50, 1.4)];
    const thick = { ...sealed, depth: '0.8mm', coats: 6 };
    // at 1.4 mm the walls hold 6/7 of the room at any depth: it would take some 17 mm
    expect(fixOf(find(narrow, 'sands-through', thick), 'deepen')?.byMm).toBeUndefined();
    const deeper = fixOf(find(slots, 'sands-through', sealed), 'deepen')?.byMm ?? Number.NaN;
    expect(find(slots, 'sands-through', { ...sealed, depth: `${2 + deeper}mm` })).toBeUndefined();
  });
});

test('a move onto the board is said in the directions that it has, and it clears', () => {
  const bar = [rectangle(0, 0, 40, 4)];
  const board = { wood: undefined, board: 'plain 100x60x20mm cherry', place: '10mm,30mm' };
  const finding = find(bar, 'off-the-board', board);
  expect(waysOut(finding, 'mm')).toEqual(['Move the artwork 10.00 mm to the right, as drawn.']);
  expect(find(bar, 'off-the-board', { ...board, place: '20mm,30mm' })).toBeUndefined();
  const corner = find(bar, 'off-the-board', { ...board, place: '90mm,59mm' });
  expect(waysOut(corner, 'in')).toEqual(['Move the artwork 0.394 in to the left and 0.040 in up, as drawn.']);
});

describe('a finding that no single change clears still says what to do', () => {
  test('a slot that three coats fill, under the sander', () => {
    const finding = find([rectangle(0, 0, 50, 0.7)], 'sands-through', {
      bit: ['flat:0.5mm'],
      depth: '2mm',
      coats: 3,
    });
    expect(finding?.fix.options).toEqual([]);
    expect(waysOut(finding, 'mm')).toHaveLength(1);
  });
});
