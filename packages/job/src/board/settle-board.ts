import { MeasureError, type Point, parseMeasure } from '@pourproof/plane';
import { JobError } from '../job-error.ts';
import type { JobFile } from '../job-file.ts';
import type { Board } from './board.ts';
import type { HeightReading } from './height-reading.ts';
import { parseBlock } from './parse-block.ts';
import { parseBoard } from './parse-board.ts';
import { type Obstacle, parseObstacle, parsePlace } from './parse-obstacle.ts';

/** The board of a job and how the artwork lies on it; lengths in mm. */
export interface SettledBoard {
  /** `null` where no board is described. */
  readonly board: Board | null;
  readonly marginMm: number;
  readonly obstacles: readonly Obstacle[];
  /** Where the middle of the artwork comes on the board; `null` for the board's middle. */
  readonly placeMm: Point | null;
  /** Turn of the artwork on the board, counter-clockwise as seen on the face. */
  readonly turnDeg: number;
  readonly readings: readonly HeightReading[];
}

type BoardKeys = Pick<
  JobFile,
  'board' | 'block' | 'margin' | 'keepClear' | 'place' | 'turn' | 'reading' | 'grain' | 'dive' | 'wood'
>;

/**
 * Settles the keys of a job that describe a board.
 *
 * @param isWood whether the job's materials know a wood
 * @throws {JobError} when one cannot be read, or when keys contradict each other
 */
export function settleBoard(given: BoardKeys, isWood: (id: string) => boolean): SettledBoard {
  if (given.board === undefined) {
    refuseOrphans(given);
    return {
      board: null,
      marginMm: 0,
      obstacles: [],
      placeMm: null,
      turnDeg: 0,
      readings: readingsOf(given),
    };
  }
  for (const key of ['wood', 'grain', 'dive'] as const) {
    if (given[key] !== undefined) {
      throw new JobError(
        `board and ${key} are both given, and they may disagree. The board names woods and fibres: leave ${key} out. To turn the artwork against them, give turn.`,
      );
    }
  }
  const base = parseBoard(given.board);
  const blocks = (given.block ?? []).map(parseBlock);
  const board = base.blocks.length === 0 ? { ...base, blocks } : base;
  if (base.blocks.length > 0 && blocks.length > 0) {
    throw new JobError('block goes with the pattern polygons only, as in board "polygons 300x180x20mm".');
  }
  if (board.blocks.length === 0) {
    throw new JobError(
      'the pattern polygons needs at least one block, as in "walnut 0mm,0mm 80mm,0mm 80mm,60mm".',
    );
  }
  const unknown = board.blocks.find(({ wood }) => !isWood(wood));
  if (unknown !== undefined) {
    throw new JobError(`board: wood "${unknown.wood}" is unknown. pourproof list woods shows them all.`);
  }
  return {
    board,
    marginMm:
      given.margin === undefined ? 0 : read('margin', () => parseMeasure(given.margin ?? '', 'length').value),
    obstacles: (given.keepClear ?? []).map(parseObstacle),
    placeMm: given.place === undefined ? null : read('place', () => parsePlace(given.place)),
    turnDeg: given.turn === undefined ? 0 : read('turn', () => parseMeasure(given.turn ?? '', 'angle').value),
    readings: readingsOf(given),
  };
}

/** Keys that say nothing without a board are a slip, not to be dropped in silence. */
function refuseOrphans(given: BoardKeys): void {
  const orphan = (['block', 'margin', 'keepClear', 'place', 'turn', 'reading'] as const).find(
    (key) => given[key] !== undefined,
  );
  if (orphan !== undefined) {
    throw new JobError(`${orphan} needs a board. Add it as in board "plain 300x180x20mm maple".`);
  }
}

function readingsOf({ reading = [] }: BoardKeys): readonly HeightReading[] {
  if (reading.length > 0 && (reading.length < 5 || reading.length > 9)) {
    throw new JobError(
      `reading: ${reading.length} are given; flatness needs 5 to 9, such as the corners and the middle.`,
    );
  }
  return reading.map((text) => {
    const [place, height, rest] = text.trim().split(/\s+/u);
    if (height === undefined || rest !== undefined) {
      throw new JobError(`reading "${text}" is not a place and a height. Type it as in "20mm,30mm 19.8mm".`);
    }
    return read('reading', () => ({
      atMm: parsePlace(place),
      heightMm: parseMeasure(height, 'length').value,
    }));
  });
}

function read<T>(key: string, parse: () => T): T {
  try {
    return parse();
  } catch (error) {
    throw error instanceof MeasureError ? new JobError(`${key}: ${error.message}`) : error;
  }
}
