import { readFileSync } from 'node:fs';
import { openFont, readLettering } from '@pourproof/artwork';
import { settleJob } from '@pourproof/job';
import { judgeDrawing, type StageName, Stages } from '@pourproof/proof';
import { expect, test } from 'vitest';

/**
 * Calls of the functions below between two polls, at most: half of what one loop over all edges of the text would make, and some ten milliseconds in
 * the slowest loops. A text ten times as long has no more of them.
 */
const MOST = 4500;
const font = await openFont(
  new Uint8Array(readFileSync(new URL('../../fixtures/fonts/lora-400.ttf', import.meta.url))),
);
const drawing = await readLettering('Hamburgefonstiv', {
  font,
  capHeightMm: 15,
  toleranceMm: 0.01,
});

/** Does something while the calls are counted that kernels make in loops that take long: they stand for time, which no test measures. */
function counting(call: () => void, work: () => void): void {
  const { atan2, cos, hypot, sin, sqrt } = Math;
  const one =
    (inner: (x: number) => number) =>
    (x: number): number => {
      call();
      return inner(x);
    };
  const more =
    (inner: (...of: number[]) => number) =>
    (x: number, y: number, z = 0): number => {
      call();
      return inner(x, y, z);
    };
  Object.assign(Math, {
    atan2: more(atan2),
    cos: one(cos),
    hypot: more(hypot),
    sin: one(sin),
    sqrt: one(sqrt),
  });
  try {
    work();
  } finally {
    Object.assign(Math, { atan2, cos, hypot, sin, sqrt });
  }
}

test.each([['ball:1.6mm'], ['vee:60deg:1/2in', 'flat:1.6mm']])(
  'a proof with %s polls again before much is worked out, in every stage',
  (...bit) => {
    const most = new Map<StageName | 'before', number>();
    let stage: StageName | 'before' = 'before';
    let calls = 0;
    const stages = new Stages({
      onStage: (next) => {
        stage = next;
      },
      isStopped: () => {
        const sofar = calls;
        most.set(stage, Math.max(most.get(stage) ?? 0, sofar));
        calls = 0;
        return false;
      },
    });
    const job = settleJob({
      bit,
      depth: '3mm',
      grain: '10deg',
      seal: 'epoxy',
      sealHours: '24h',
      colour: 'blue',
    });
    counting(
      () => {
        calls++;
      },
      () => judgeDrawing(drawing, 'text', job, stages, 'none'),
    );
    expect(most.size).toBeGreaterThan(15);
    expect([...most].filter(([, count]) => count > MOST)).toEqual([]);
  },
);
