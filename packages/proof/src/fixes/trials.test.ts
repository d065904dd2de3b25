import { type JobInput, settleJob } from '@pourproof/job';
import { type Drawing, packRings, textInUnits } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { drawingOf } from '../../../../tests/support/drawing-of.ts';
import type { Finding } from '../report/finding-schema.ts';
import type { FixStep } from '../report/fix-schema.ts';
import { type Proved, prove } from './prove.ts';
import { proofsFor, type TrialResult, type Trials, trialsOf } from './trials.ts';

const drawing: Drawing = {
  format: 'svg',
  scaleSource: textInUnits('made by a test'),
  toleranceMm: 0.005,
  notices: [],
  shapes: [
    {
      region: { ...packRings([[0, 0, 20, 0, 20, 20, 0, 20]]), fillRule: 'nonzero' },
      layer: '',
      colour: '#000000',
      source: 'square',
    },
  ],
};
const proved = (job: JobInput = {}): Proved =>
  prove(drawing, settleJob({ bit: ['flat:2mm'], depth: '3mm', wood: 'maple', ...job }));
const finding: Finding = {
  code: 'stroke-near-bit-width',
  severity: 'caution',
  where: [{ atMm: [10, 0], outline: [], what: 'stroke' }],
  measured: { value: 2, quantity: 'width', unit: 'mm' },
  limit: { value: 2, quantity: 'width', unit: 'mm' },
  because: ['own-inference'],
  fix: { options: [] },
};

/** Tries ways out one after the other on the drawing as it is; `asked` hears how often it is asked for. */
function tried(
  trials: Trials,
  steps: readonly FixStep[],
  asked: (job: object) => void = () => {},
): TrialResult {
  const run = trials.tried(steps);
  let step = run.next();
  while (step.done !== true) {
    asked(step.value);
    step = run.next(drawing);
  }
  return step.value;
}
const deeper = (byMm: number): FixStep => ({ do: 'deepen', byMm, clears: true });

test('after thirty proofs nothing more is proved, neither a drawing nor a setting', () => {
  const trials = trialsOf(proved());
  for (let k = 0; k < 29; k++) {
    const widened = trials.drawn({ do: 'widen', what: 'stroke', byMm: 0.1, clears: true }, finding);
    expect(widened?.is).toBe('proved');
  }
  expect(tried(trials, [deeper(0.1)]).is).toBe('proved');
  expect(tried(trials, [deeper(0.2)])).toEqual({ is: 'spent' });
  expect(trials.drawn({ do: 'widen', what: 'stroke', byMm: 0.1, clears: true }, finding)).toEqual({
    is: 'spent',
  });
  // what was proved is still known
  expect(tried(trials, [deeper(0.1)]).is).toBe('proved');
});

test('a large drawing gets as many proofs as prove so many edges', () => {
  const edged = (edges: number): Drawing => drawingOf([Array(2 * edges).fill(0)]);
  expect([4, 3333, 4000, 6250, 100_000].map((edges) => proofsFor(edged(edges)))).toEqual([
    30, 30, 25, 20, 20,
  ]);
});

test('a proof that keeps the cut counts as a fifth', () => {
  const trials = trialsOf(proved());
  const warmer = (toC: number): FixStep => ({
    do: 'change-temperature',
    toC,
    besideSolvent: false,
    clears: true,
  });
  for (let k = 0; k < 29; k++) {
    trials.drawn({ do: 'widen', what: 'stroke', byMm: 0.1, clears: true }, finding);
  }
  const kinds = [21, 22, 23, 24].map((toC) => tried(trials, [warmer(toC)]).is);
  expect([...kinds, tried(trials, [deeper(0.1)]).is]).toEqual([...Array(4).fill('proved'), 'spent']);
  expect([26, 27].map((toC) => tried(trials, [warmer(toC)]).is)).toEqual(['proved', 'spent']);
});

test('each changed job is asked for and proved once', () => {
  const trials = trialsOf(proved());
  let count = 0;
  const asked = (): void => {
    count++;
  };
  const first = tried(trials, [deeper(0.5)], asked);
  expect(first.is).toBe('proved');
  expect(tried(trials, [deeper(0.5)], asked).is).toBe('proved');
  // the same depth in two steps
  expect(tried(trials, [deeper(0.2), deeper(0.3)], asked).is).toBe('proved');
  expect(count).toBe(1);
});

test('a change that changes nothing, cannot be typed or is refused is not proved', () => {
  const trials = trialsOf(proved({ thickness: '6mm', levelBy: 'planer' }));
  expect(tried(trials, [{ do: 'level-by', method: 'planer', clears: true }])).toEqual({ is: 'same' });
  expect(tried(trials, [{ do: 'flatten', byMm: 0.1, clears: true }])).toEqual({ is: 'same' });
  expect(tried(trials, [deeper(4)])).toEqual({ is: 'refused', code: 'deeper-than-board' });
  const short = trialsOf(proved({ bit: ['flat:2mm:length 3.5mm'] }));
  expect(tried(short, [deeper(1)])).toEqual({ is: 'refused', code: 'bit-too-short' });
});

test('work on the drawing that takes a maker’s eye is left to it', () => {
  expect(trialsOf(proved()).drawn({ do: 'redraw-ends', clears: true }, finding)).toBeNull();
});
