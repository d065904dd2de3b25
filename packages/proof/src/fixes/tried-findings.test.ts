import { type JobInput, settleJob } from '@pourproof/job';
import type { Drawing } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { drawingOf } from '../../../../tests/support/drawing-of.ts';
import type { Finding } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import { scaledDrawing } from './changed-drawing.ts';
import { prove } from './prove.ts';
import { triedFindings } from './tried-findings.ts';

const CALM: JobInput = { bit: ['flat:2mm'], depth: '3mm', seal: 'epoxy', sealHours: '24h', boards: 10 };

const drawn = (...rings: readonly (readonly number[])[]): Drawing => drawingOf(rings);
const SQUARE = drawn([0, 0, 40, 0, 40, 40, 0, 40]);

/** What becomes of some ways out, proposed for a finding that the job has. */
function tried(
  drawing: Drawing,
  job: JobInput,
  code: Finding['code'],
  options: readonly Fix[],
): Finding['fix'] {
  const proved = prove(drawing, settleJob({ ...CALM, ...job }));
  const own = proved.findings.find((finding) => finding.code === code);
  if (own === undefined) {
    throw new Error(`${code} is not found: ${proved.findings.map((finding) => finding.code).join(', ')}`);
  }
  const findings = proved.findings.map((finding) => ({
    ...finding,
    fix: { options: finding === own ? [...options] : [] },
  }));
  const run = triedFindings({ ...proved, findings });
  let step = run.next();
  while (step.done !== true) {
    step = run.next(scaledDrawing(drawing, step.value.scaledBy));
  }
  return step.value.find((finding) => finding.code === code)?.fix ?? { options: [] };
}

describe('a way out alone', () => {
  const thin: JobInput = { board: 'plain 100x100x20mm maple', level: '2mm' };

  test('stays where the finding is gone, and is made larger where it is hardly better', () => {
    const deepened = (byMm: number) =>
      tried(SQUARE, thin, 'sands-through', [{ do: 'deepen', byMm, clears: false }]);
    expect(deepened(1.5)).toEqual({ options: [{ do: 'deepen', byMm: 1.5, clears: true }] });
    expect(deepened(0.02)).toEqual({ options: [{ do: 'deepen', byMm: 0.2, clears: true }] });
  });

  test('that turns the artwork may leave the finding: it spares other walls', () => {
    const turn: Fix = { do: 'turn', deg: 90, sparedPct: 40, clears: false };
    const { options } = tried(SQUARE, thin, 'sands-through', [turn]);
    expect(options.map(({ do: kind, clears }) => [kind, clears])).toEqual([['turn', false]]);
    expect(options[0]?.leaves?.severity).toBeDefined();
  });
});

test('work at the bench and what only the maker can judge stay as they were proposed', () => {
  const options: Fix[] = [
    { do: 'test-coupon', slots: 3, lengthMm: 30, depthMm: 3, clears: false },
    { do: 'abrade', widthMm: 2, clears: true },
    { do: 'redraw-ends', clears: true },
    { do: 'close-gap', gapMm: 0.2, clears: true },
    { do: 'merge-shapes', crossings: 2, clears: true },
  ];
  expect(tried(SQUARE, { wood: 'maple', level: '2mm' }, 'sands-through', options)).toEqual({ options });
});

describe('a way out that brings something', () => {
  const onBoard = (byMm: number): readonly Fix[] =>
    tried(SQUARE, { board: 'plain 100x100x8mm maple', level: '2mm', resin: 'deep-pour' }, 'sands-through', [
      { do: 'deepen', byMm, clears: true },
    ]).options;

  test('is completed by what does not undo it', () => {
    // a shallower cut would clear the floor, too, but is no deeper one
    expect(onBoard(4.5).map(({ also = [] }) => also.map((step) => step.do))).toEqual([['thicker-board']]);
  });

  test('or that the board is too thin for takes one with it that has wood enough below', () => {
    const [deeper, ...more] = onBoard(6);
    expect(more).toEqual([]);
    const [board] = deeper?.also ?? [];
    // 9 mm deep: 3 mm stay below, and a third of the board
    expect(deeper?.also).toHaveLength(1);
    expect(board?.do === 'thicker-board' ? board.thicknessMm : undefined).toBeCloseTo(13.5, 6);
  });

  test('or that leaves it as it is takes with it what clears it', () => {
    const { options } = tried(SQUARE, { wood: 'maple', level: '2mm' }, 'sands-through', [
      { do: 'change-temperature', toC: 22, besideSolvent: false, clears: true },
    ]);
    expect(options.map(({ also = [], clears }) => [clears, ...also.map((step) => step.do)])).toEqual([
      [true, 'deepen'],
    ]);
  });

  test('or that leaves something takes the size with it that clears it', () => {
    const bar = drawn([0, 0, 40, 0, 40, 0.7, 0, 0.7]);
    const job: JobInput = { bit: ['flat:0.5mm'], wood: 'maple', level: '0.8mm', levelBy: 'planer' };
    const { options } = tried(bar, job, 'stroke-too-narrow-to-level', [
      { do: 'level-by', method: 'drum', clears: true },
    ]);
    expect(options.map(({ do: kind, also = [] }) => [kind, ...also.map((step) => step.do)])).toEqual([
      ['level-by', 'scale'],
    ]);
  });
});
