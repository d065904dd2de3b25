import { type JobInput, settleJob } from '@pourproof/job';
import { degrees, radians } from '@pourproof/plane';
import { judgeDrawing, type Report } from '@pourproof/proof';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawingOf } from '../support/drawing-of.ts';
import { cases } from '../support/lane.ts';
import { type Move, moved, movedAzimuth, moves, symmetric } from '../support/shapes/moved.ts';
import { stadium } from '../support/shapes/stroke-shapes.ts';
import { job } from '../verdicts/random-jobs.ts';

/** Places, turns and boxes, which move along, and error bounds, which hang on what may be a chord of a curve. */
const MOVES_ALONG =
  /At(?:Mm|\[|$)|errorBound|atMm|outline|boundsMm|rulerOffsetMm|grainDeg|turnDeg|where|places|\.path(?:\[|$)|printWidthMm|printHeightMm/u;

/** By what share a figure may differ. */
function slackOf(key: string): number {
  // which parts of a way are walked twice is a choice among many
  if (/minutes|pathMm/iu.test(key)) {
    return 0.2;
  }
  // lengths of widths between points along a line
  return key.includes('levelling') ? 0.01 : 1e-3;
}

/** All numbers of a report by their keys, smallest first where there are several of a key. */
function numbersOf(report: Report): ReadonlyMap<string, readonly number[]> {
  const all = new Map<string, number[]>();
  const walk = (value: unknown, key: string): void => {
    if (MOVES_ALONG.test(key)) {
      return;
    }
    if (typeof value === 'number') {
      all.set(
        key,
        [...(all.get(key) ?? []), value].sort((a, b) => a - b),
      );
    } else if (Array.isArray(value)) {
      for (const each of value) {
        walk(each, `${key}[]`);
      }
    } else if (typeof value === 'object' && value !== null) {
      for (const [name, each] of Object.entries(value)) {
        walk(each, `${key}.${name}`);
      }
    }
  };
  const { cut, strokes, endGrain, bleed, levelling, pour } = report;
  walk({ cut, strokes, endGrain, bleed, levelling, pour }, 'report');
  return all;
}

function judged(rings: readonly (readonly number[])[], input: JobInput): Report {
  return judgeDrawing(drawingOf(rings), 'law', settleJob(input), undefined, 'none').report;
}

/** The same drawn elsewhere, the fibre moved along and the rings in another order. */
function expectSameReport(rings: readonly (readonly number[])[], input: JobInput, move: Move): void {
  const grainDeg = degrees(movedAzimuth(radians(Number.parseFloat(String(input.grain))), move));
  const here = judged(rings, input);
  const there = judged(rings.map((ring) => moved(ring, move)).toReversed(), {
    ...input,
    grain: `${grainDeg}deg`,
  });
  expect(there.verdict).toBe(here.verdict);
  expect(there.findings.map(({ code, severity }) => `${code} ${severity}`).toSorted()).toEqual(
    here.findings.map(({ code, severity }) => `${code} ${severity}`).toSorted(),
  );
  const got = numbersOf(there);
  for (const [key, values] of numbersOf(here)) {
    const share = slackOf(key);
    expect(got.get(key)?.length, key).toBe(values.length);
    for (const [k, value] of values.entries()) {
      const off = Math.abs((got.get(key)?.[k] ?? Number.NaN) - value);
      expect(off, `${key}: ${got.get(key)} for ${values}`).toBeLessThanOrEqual(share * (1 + Math.abs(value)));
    }
  }
}

test('no figure and no finding of a report hangs on how artwork is turned, mirrored, subdivided, begun or ordered', () => {
  fc.assert(
    fc.property(symmetric, job, moves, (ring, input, move) => {
      // a bar beside it, so that there is an order
      expectSameReport([ring, stadium(9, 3, 0.005).map((v, i) => (i % 2 === 0 ? v + 60 : v))], input, move);
    }),
    cases(4),
  );
});
