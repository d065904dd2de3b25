import { resolveRegions } from '@pourproof/arrangement';
import type { Block, Job } from '@pourproof/job';
import type { Wood } from '@pourproof/materials';
import {
  type Bounds,
  type CleanRegion,
  compose,
  type Point,
  packRings,
  radians,
  rotation,
  type Transform,
  transformRings,
  translation,
} from '@pourproof/plane';

/** A block in the artwork's frame. */
export interface PlacedBlock {
  readonly row: Wood;
  readonly part: Block['part'];
  /**
   * Degrees from the artwork's x axis: below 180 for level fibres, which have no direction, else below 360.
   */
  readonly grainDeg: number;
  readonly diveDeg: number;
  /** Its face; `null`, everywhere, if no board is described. */
  readonly region: CleanRegion | null;
}

/** The board under the artwork. */
export interface PlacedBoard {
  readonly blocks: readonly PlacedBlock[];
  /** From the artwork's frame to the board's. */
  readonly toBoard: Transform;
  /** From the board's frame to the artwork's. */
  readonly toArtwork: Transform;
}

/**
 * Lays the board under the artwork: the middle of the artwork's box goes to the job's place on the board (by
 * default its middle), turned counter-clockwise as seen on the face.
 *
 * Without a board, one block of the job's wood lies everywhere, with the job's fibre direction.
 * @param boundsMm box of the artwork in its own frame
 */
export function placeBoard(job: Job, boundsMm: Bounds): PlacedBoard {
  const { board } = job;
  if (board === null) {
    const { grainDeg, diveDeg, rows } = job;
    return {
      blocks: [
        { row: rows.wood, part: null, grainDeg: plainAngle(grainDeg, diveDeg), diveDeg, region: null },
      ],
      toBoard: translation(0, 0),
      toArtwork: translation(0, 0),
    };
  }
  const [left, top, right, bottom] = boundsMm;
  const middle: Point = [(left + right) / 2, (top + bottom) / 2];
  const place: Point = job.placeMm ?? [board.widthMm / 2, board.heightMm / 2];
  const turn = radians(job.turnDeg);
  // with y down, counter-clockwise as seen is from +y towards +x
  const toBoard = compose(
    translation(...place),
    compose(rotation(-turn), translation(-middle[0], -middle[1])),
  );
  const toArtwork = compose(
    translation(...middle),
    compose(rotation(turn), translation(-place[0], -place[1])),
  );
  return {
    toBoard,
    toArtwork,
    blocks: board.blocks.map((block) => ({
      row: woodOf(job, block),
      part: block.part,
      grainDeg: plainAngle(block.grainDeg - job.turnDeg, block.diveDeg),
      diveDeg: block.diveDeg,
      region: cleanPolygon(block.outline, toArtwork),
    })),
  };
}

/** A transformed polygon as a clean region, whatever its orientation. */
export function cleanPolygon(outline: readonly Point[], map: Transform): CleanRegion {
  const rings = transformRings(map, packRings([outline.flat()]));
  return resolveRegions([{ ...rings, fillRule: 'nonzero' }]).region;
}

function woodOf(job: Job, { wood }: Block): Wood {
  const row = job.materials.woods[wood];
  if (row === undefined) {
    throw new RangeError(`a settled board names only known woods, not "${wood}"`);
  }
  return row;
}

/**
 * Normalised azimuth of fibres: below 180 for level ones, below 360 for those that dive, whose side of rise
 * matters.
 */
function plainAngle(deg: number, diveDeg: number): number {
  const round = diveDeg === 0 ? 180 : 360;
  const turned = ((deg % round) + round) % round;
  return turned === 0 ? 0 : turned;
}
