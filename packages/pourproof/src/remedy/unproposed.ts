import type { Job, JobInput } from '@pourproof/job';
import { applyFix, type Finding, type FindingCode, type FixContext, type FixStep } from '@pourproof/proof';
import type { Candidate } from './candidate.ts';
import { outlineCandidates } from './outline-candidates.ts';

/** Findings of an artwork that has no room at its place. */
const NO_ROOM: ReadonlySet<FindingCode> = new Set(['off-the-board', 'rim-too-thin', 'clamp-in-the-way']);

/** Sizes are sought down to this share, and up to this one (our choice), in steps of half a percent. */
const SIZES = { least: 0.6, most: 1.6, step: 0.005 } as const;
/** How far an artwork is moved at most, and by what it begins, in whole millimetres (our choice). */
const MOVES = { most: 200, guess: 20 } as const;
/** Where the search for wider strokes begins, mm (our choice). */
const WIDER_MM = 0.2;
/** Step of a plan of levelling, mm (our choice). */
const LEVEL_STEP_MM = 0.05;

/**
 * What a maker tries though no formula says how much of it is enough: another place and a smaller artwork where there is no room,
 * and less levelling, wider strokes and a larger artwork where levelling takes the colour.
 */
export function unproposed(
  finding: Finding,
  job: JobInput,
  settled: Job,
  context: FixContext,
): readonly Candidate[] {
  const at = (step: (steps: number) => FixStep) => (steps: number) => applyFix(job, step(steps), context);
  const size = (sign: 1 | -1, most: number): Candidate => ({
    part: 'size',
    guess: 10,
    most: Math.round(Math.abs(most - 1) / SIZES.step),
    at: at((steps) => ({ do: 'scale', factor: 1 + sign * steps * SIZES.step, clears: true })),
  });
  if (NO_ROOM.has(finding.code)) {
    return [...(settled.board === null ? [] : moves(at)), size(-1, SIZES.least)];
  }
  if (finding.code !== 'sands-through') {
    return [];
  }
  const most = Math.round(settled.levelMm / LEVEL_STEP_MM) - 1;
  const offered = new Set(finding.fix.options.map((fix) => fix.do));
  return [
    ...(most < 1 || offered.has('level-less')
      ? []
      : [
          {
            part: 'levelling' as const,
            guess: Math.ceil(most / 3),
            most,
            at: at((steps) => ({ do: 'level-less', byMm: steps * LEVEL_STEP_MM, clears: true })),
          },
        ]),
    ...(offered.has('widen')
      ? []
      : outlineCandidates(job, settled, finding, {
          do: 'widen',
          what: 'stroke',
          byMm: WIDER_MM,
          clears: true,
        }).map((each) => ({ ...each, most: Math.max(each.most, 40) }))),
    ...(offered.has('scale') ? [] : [size(1, SIZES.most)]),
  ];
}

/** The artwork moved along the sides of the board, as it is drawn. */
function moves(at: (step: (steps: number) => FixStep) => Candidate['at']): readonly Candidate[] {
  return [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ].map(([right = 0, down = 0]) => ({
    part: 'place',
    ...MOVES,
    at: at((steps) => ({ do: 'move', rightMm: right * steps, downMm: down * steps, clears: true })),
  }));
}
