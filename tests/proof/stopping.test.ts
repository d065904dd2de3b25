import { settleJob } from '@pourproof/job';
import { judgeDrawing, type Proof, ProofStopped, type StageName, Stages } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { STAGED_DRAWING, STAGED_JOB } from '../pages/stages-page.ts';

const job = settleJob(STAGED_JOB);
const judged = (stages: Stages): Proof => judgeDrawing(STAGED_DRAWING, 'staged', job, stages, 'none');

/** At which stage each poll of a proof from scratch came; `null` before the first. */
function polled(): readonly (StageName | null)[] {
  const at: (StageName | null)[] = [];
  let stage: StageName | null = null;
  judged(
    new Stages({
      onStage: (next) => {
        stage = next;
      },
      isStopped: () => {
        at.push(stage);
        return false;
      },
    }),
  );
  return at;
}

// what is known of the drawing itself is known to all but the first
polled();
const POLLS = polled();
const scratch = judged(new Stages());

test('what takes long is polled inside, not only before and after', () => {
  const count = (stage: StageName): number => POLLS.filter((each) => each === stage).length;
  for (const stage of ['resolve', 'axis', 'outline', 'levelling', 'wood-axis'] as const) {
    expect(count(stage), stage).toBeGreaterThan(2);
  }
});

test.each([...new Set(POLLS)].filter((stage) => stage !== null))(
  'a proof that is stopped amid the stage %s ends there, and the next one is equal to one from scratch',
  (stage) => {
    const own = POLLS.flatMap((each, k) => (each === stage ? [k] : []));
    const stopAt = own[own.length >> 1] ?? 0;
    const stages = new Stages();
    let polls = 0;
    const stopped = stages.watchedBy({ isStopped: () => polls++ === stopAt });
    expect(() => judged(stopped)).toThrow(ProofStopped);
    expect(polls).toBe(stopAt + 1);
    const again = judged(stages);
    expect(again.report).toEqual(scratch.report);
    expect(again.picture).toEqual(scratch.picture);
  },
);

test('whoever stops what has ended does not stop the next proof, which takes up what is kept', () => {
  const stages = new Stages();
  let isStopped = false;
  judged(stages.watchedBy({ isStopped: () => isStopped }));
  isStopped = true;
  const turned = settleJob({ ...STAGED_JOB, grain: '40deg' });
  const next = judgeDrawing(STAGED_DRAWING, 'staged', turned, stages, 'none');
  expect(next.report).toEqual(judgeDrawing(STAGED_DRAWING, 'staged', turned, new Stages(), 'none').report);
});
