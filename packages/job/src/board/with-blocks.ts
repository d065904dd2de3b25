import { JobError } from '../refusals/job-error.ts';
import type { Board } from './board.ts';
import type { BlockInput } from './board-input.ts';
import { readBlock } from './read-block.ts';

/** Settings that a described board speaks for. */
const FROM_BOARD = ['wood', 'grain', 'dive', 'thickness'] as const;
/** Settings that say nothing without one. */
const ON_BOARD = ['block', 'margin', 'keepClear', 'place', 'turn', 'reading'] as const;

type BoardKeys = {
  readonly [Key in 'board' | (typeof FROM_BOARD)[number] | (typeof ON_BOARD)[number]]?: unknown;
};

/**
 * Refuses settings that a board contradicts, and settings that need one.
 *
 * @throws {JobError}
 */
export function refuseBoardConflicts(given: BoardKeys): void {
  const stray = (given.board === undefined ? ON_BOARD : FROM_BOARD).find((key) => given[key] !== undefined);
  if (stray !== undefined) {
    throw given.board === undefined
      ? new JobError('needs-board', stray, {})
      : new JobError('board-and-key', stray, { isThickness: stray === 'thickness' });
  }
}

/**
 * A board with the blocks that were given for it one by one.
 *
 * @param woodId the id of a wood in the job's materials, from its id or name
 * @throws {JobError} when blocks are missing or too many, or of an unknown wood
 */
export function withBlocks(
  board: Board | null,
  block: readonly BlockInput[] | undefined,
  woodId: (typed: string) => string,
): Board | null {
  if (board === null) {
    return null;
  }
  const given = (block ?? []).map(readBlock);
  if (board.blocks.length > 0 && given.length > 0) {
    throw new JobError('block-without-polygons', 'block', {});
  }
  const blocks = board.blocks.length > 0 ? board.blocks : given;
  if (blocks.length === 0) {
    throw new JobError('needs-block', 'block', {});
  }
  return { ...board, blocks: blocks.map((each) => ({ ...each, wood: woodId(each.wood) })) };
}
