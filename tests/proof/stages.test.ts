import { type JobInput, readMaterialsFile, SETTING_KEYS, settleJob } from '@pourproof/job';
import {
  judgeDrawing,
  ProofStopped,
  STAGE_NAMES,
  type StageName,
  Stages,
  vetDrawing,
} from '@pourproof/proof';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changeOf, renderStagesPage, STAGED_DRAWING, STAGED_JOB, stagesAfter } from '../pages/stages-page.ts';
import { expectPage } from '../support/expect-page.ts';
import { cases } from '../support/lane.ts';

const CHANGED = SETTING_KEYS.filter((key) => changeOf(key) !== null);

test('docs/method/stages.md shows which stages run today', () => {
  expectPage('docs/method/stages.md', renderStagesPage());
});

describe('a proof with kept stages is equal to one from scratch', () => {
  test.each(CHANGED)('after a change of %s and back', (key) => {
    const stages = new Stages();
    const [before, after] = changeOf(key) ?? [STAGED_JOB, STAGED_JOB];
    for (const input of [before, after, before]) {
      const job = settleJob(input);
      const kept = judgeDrawing(STAGED_DRAWING, 'staged', job, stages);
      expect(kept).toEqual(judgeDrawing(STAGED_DRAWING, 'staged', job));
    }
  });

  test('after any sequence of changes', () => {
    const free = CHANGED.filter((key) => changeOf(key)?.[0] === STAGED_JOB && key !== 'board');
    fc.assert(
      fc.property(
        fc.array(fc.subarray(free, { maxLength: 3 }), { minLength: 5, maxLength: 50 }),
        (sequence) => {
          const stages = new Stages();
          for (const keys of sequence) {
            const input: JobInput = Object.assign({}, STAGED_JOB, ...keys.map((key) => changeOf(key)?.[1]));
            const job = settleJob(input);
            expect(judgeDrawing(STAGED_DRAWING, 'staged', job, stages).report).toEqual(
              judgeDrawing(STAGED_DRAWING, 'staged', job).report,
            );
          }
        },
      ),
      cases(2),
    );
  });
});

test('nothing runs anew where nothing has changed', () => {
  const ran: StageName[] = [];
  const stages = new Stages({ onStage: (stage) => ran.push(stage) });
  const job = settleJob(STAGED_JOB);
  judgeDrawing(STAGED_DRAWING, 'staged', job, stages);
  expect(ran.length).toBeGreaterThan(0);
  ran.length = 0;
  judgeDrawing(STAGED_DRAWING, 'staged', settleJob({ ...STAGED_JOB }), stages);
  expect(ran).toEqual([]);
});

test('what is levelled, weighed and dated leaves the cut as it was', () => {
  for (const key of ['level', 'wastePct', 'boards', 'pricePerG', 'start', 'overpour'] as const) {
    expect(stagesAfter(key).filter((stage) => stage !== 'levelling')).toEqual([]);
  }
});

test('materials that are read anew are the ones that coupons are told apart by', () => {
  const shed = { name: 'walnut from the shed', like: 'walnut' };
  const stages = new Stages();
  const job = () => {
    const materials = readMaterialsFile(
      { schema: 'pourproof/materials@1', woods: { 'shed-walnut': shed } },
      'materials.json',
    );
    const coupons = [{ wood: 'shed-walnut', slots: ['2mm'] }];
    return settleJob({ ...STAGED_JOB, wood: 'shed-walnut', coupons }, { materials });
  };
  for (let k = 0; k < 2; k++) {
    const { report } = judgeDrawing(STAGED_DRAWING, 'staged', job(), stages);
    expect(report.bleed.coupons).toBe(1);
  }
});

test('jobs that are tried do not push out what is kept', () => {
  const ran: StageName[] = [];
  const stages = new Stages({ onStage: (stage) => ran.push(stage) });
  const kept = {};
  stages.of('cut', [kept], 0, () => 'kept');
  const aside = stages.aside();
  for (let k = 0; k < 20; k++) {
    expect(aside.of('cut', [kept], 0, () => 'anew')).toBe('kept');
    aside.of('cut', [{}], k, () => 'tried');
  }
  expect(stages.of('cut', [kept], 0, () => 'anew')).toBe('kept');
  expect(ran).toHaveLength(21);
});

test('of a stage no more than four results are kept, those asked for last', () => {
  const stages = new Stages();
  for (let k = 0; k < 5; k++) {
    stages.of('cut', [], k, () => k);
  }
  expect(stages.of('cut', [], 1, () => 'anew')).toBe(1);
  expect(stages.of('cut', [], 0, () => 'anew')).toBe('anew');
});

test('of small results that a board has many of, 64 are kept', () => {
  const stages = new Stages();
  for (let k = 0; k < 65; k++) {
    stages.of('travel', [], k, () => k);
  }
  expect(stages.of('travel', [], 1, () => 'anew')).toBe(1);
  expect(stages.of('travel', [], 0, () => 'anew')).toBe('anew');
});

test('numbers that JSON has no word for are told apart', () => {
  const stages = new Stages();
  stages.of('cut', [], { at: Number.POSITIVE_INFINITY }, () => 'infinite');
  expect(stages.of('cut', [], { at: null }, () => 'none')).toBe('none');
});

describe('a proof that is followed', () => {
  const job = settleJob(STAGED_JOB);
  const ran = (): readonly StageName[] => {
    const stages: StageName[] = [];
    judgeDrawing(STAGED_DRAWING, 'staged', job, new Stages({ onStage: (stage) => stages.push(stage) }));
    return stages;
  };

  test('tells its stages, those that the verdict hangs on first', () => {
    const stages = ran();
    const rest = STAGE_NAMES.slice(STAGE_NAMES.indexOf('paths'));
    const firstOfRest = stages.findIndex((stage) => rest.includes(stage));
    expect(firstOfRest).toBeGreaterThan(0);
    expect(stages.slice(firstOfRest).filter((stage) => !rest.includes(stage))).toEqual([]);
  });

  test('stops at every stage, keeps nothing half, and the next proof is right', () => {
    const right = judgeDrawing(STAGED_DRAWING, 'staged', job);
    const count = ran().length;
    for (let at = 0; at < count; at++) {
      let begun = 0;
      const stages = new Stages();
      const watched = stages.watchedBy({ onStage: () => begun++, isStopped: () => begun > at });
      const stopped = stoppedBy(() => judgeDrawing(STAGED_DRAWING, 'staged', job, watched));
      expect(begun).toBe(at + 1);
      expect(STAGE_NAMES).toContain(stopped.stage);
      const again: StageName[] = [];
      const next = stages.watchedBy({ onStage: (stage) => again.push(stage) });
      expect(judgeDrawing(STAGED_DRAWING, 'staged', job, next)).toEqual(right);
      // what was whole before is kept: at the most the stage that was stopped, and what stands around it, runs again
      expect(again.length).toBeGreaterThanOrEqual(count - at - 1);
      expect(again.length).toBeLessThanOrEqual(count - at + 2);
    }
  });

  test('stops inside a long stage', () => {
    let polls = 0;
    let begun = 0;
    const stages = new Stages();
    const counting = stages.watchedBy({
      onStage: () => begun++,
      isStopped: () => {
        polls++;
        return false;
      },
    });
    judgeDrawing(STAGED_DRAWING, 'staged', job, counting);
    // before and after each stage, and more often than that
    expect(polls).toBeGreaterThan(2 * begun + 10);
  });

  test('a stopped trial of a way out stops the whole', () => {
    let isTrying = false;
    const stages = new Stages();
    const proved = judgeDrawing(STAGED_DRAWING, 'staged', job, stages);
    expect(proved.report.findings.length).toBeGreaterThan(0);
    const watched = stages.watchedBy({
      onStage: () => {
        isTrying = true;
      },
      isStopped: () => isTrying,
    });
    expect(() => vetDrawing(STAGED_DRAWING, 'staged', job, watched)).toThrow(ProofStopped);
  });
});

function stoppedBy(attempt: () => unknown): ProofStopped {
  try {
    attempt();
  } catch (error) {
    expect(error).toBeInstanceOf(ProofStopped);
    return error as ProofStopped;
  }
  throw new Error('it was not stopped');
}
