import type { Point } from '@pourproof/plane';
import type { Block, Board } from '../board/board.ts';
import {
  type BlockInput,
  type BoardInput,
  blockSchema,
  boardSchema,
  type ObstacleInput,
  obstacleSchema,
  type PlaceInput,
  placeSchema,
  READING_COUNT,
  type ReadingInput,
  readingSchema,
} from '../board/board-input.ts';
import { type HeightReading, readReading } from '../board/height-reading.ts';
import { type Obstacle, readObstacle } from '../board/obstacle.ts';
import { readBoard } from '../board/parse-board.ts';
import { readPlace } from '../board/place.ts';
import { readBlock } from '../board/read-block.ts';
import { typedBlock, typedBoard, typedObstacle, typedPlace, typedReading } from '../board/typed-board.ts';
import { listOf, measure, written } from './holds.ts';
import type { Rows } from './setting.ts';

/** The board and how the artwork lies on it; lengths in mm, in the frame of the board. */
export interface BoardSettings {
  /** `null` where no board is described. */
  readonly board: Board | null;
  /** Of the described board, or as given without one; `null` where it is not known. */
  readonly thicknessMm: number | null;
  readonly marginMm: number;
  readonly obstacles: readonly Obstacle[];
  /** Where the middle of the artwork comes on the board; `null` for the board's middle. */
  readonly placeMm: Point | null;
  /** Turn of the artwork on the board, counter-clockwise as seen on the face. */
  readonly turnDeg: number;
  readonly readings: readonly HeightReading[];
}

const IN_MM = { hasWorkLengths: true } as const;

/** Settings of the board. */
export const BOARD_SETTINGS = {
  board: {
    holds: written<BoardInput, Board>(
      boardSchema,
      'a glue-up in one line, such as "stripes 300x180x20mm maple:60mm walnut:20mm", or {"pattern": "plain", "widthMm": 300, "heightMm": 180, "thicknessMm": 20, "woods": [{"wood": "maple"}]}',
      readBoard,
      typedBoard,
      IN_MM,
    ),
    field: 'board',
    otherwise: 'one plain wood without edges',
    group: 'board',
    takes: '"PATTERN"',
    help: 'Glue-up in one line, as "stripes 300x180x20mm maple:60mm walnut:20mm"',
    label: 'Glue-up in one line',
    hint: 'As in “stripes 300x180x20mm maple:60mm walnut:20mm” or “plain 300x180x20mm cherry”; empty for one plain wood',
  },
  thickness: {
    holds: measure('length', '20mm', { above: 0, max: 1000 }),
    field: 'thicknessMm',
    otherwise: 'not known, so that the wood under the cut is not judged',
    group: 'board',
    takes: 'LENGTH',
    help: 'Thickness of the board, where no --board says it',
    label: 'Thickness of the board',
    hint: 'To judge the wood that stays under the cut; a described board says it itself',
    only: { board: 'without' },
  },
  block: {
    holds: listOf(
      written<BlockInput, Block>(blockSchema, '', readBlock, typedBlock, IN_MM),
      'a list of blocks, such as ["walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm"] or [{"wood": "walnut", "grainDeg": 45, "outlineMm": [[0, 0], [80, 0], [80, 60]]}]',
    ),
    // blocks become part of the board
    field: null,
    otherwise: 'those of the pattern',
    group: 'board',
    takes: '"BLOCK"',
    help: 'A block of any outline, as "walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm"; repeat it',
    label: 'Blocks, one a line',
    hint: 'As in “walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm”',
    only: { board: 'with', pattern: 'polygons' },
  },
  place: {
    isOfArtwork: true,
    holds: written<PlaceInput, Point>(
      placeSchema,
      'two lengths, such as "150mm,90mm" or {"atMm": [150, 90]}',
      readPlace,
      typedPlace,
      IN_MM,
    ),
    field: 'placeMm',
    otherwise: 'the middle of the board',
    group: 'board',
    takes: 'X,Y',
    help: 'Where the middle of the artwork comes on the board, as 150mm,90mm',
    label: 'Middle of the artwork on the board',
    hint: 'From the board’s left and top edge, as in “150mm,90mm”; empty for its middle',
    only: { board: 'with' },
  },
  turn: {
    isOfArtwork: true,
    holds: measure('angle', '15deg'),
    field: 'turnDeg',
    absent: 0,
    otherwise: 'not turned',
    group: 'board',
    takes: 'ANGLE',
    help: 'Turn of the artwork, counter-clockwise',
    label: 'Turn of the artwork, counter-clockwise',
    only: { board: 'with' },
  },
  margin: {
    holds: measure('length', '10mm', { min: 0, max: 1000 }),
    field: 'marginMm',
    absent: 0,
    otherwise: 'none',
    group: 'board',
    takes: 'LENGTH',
    help: 'Rim of the board that the cut stays off',
    label: 'Rim that the cut stays off',
    only: { board: 'with' },
  },
  keepClear: {
    holds: listOf(
      written<ObstacleInput, Obstacle>(obstacleSchema, '', readObstacle, typedObstacle, IN_MM),
      'a list of holes, grooves, clamps and hold-downs, such as ["hole 20mm,30mm 8mm", "clamp 20mm,90mm 40x25mm"] or [{"kind": "hole", "atMm": [20, 30], "diameterMm": 8}]',
    ),
    field: 'obstacles',
    absent: [],
    otherwise: 'none',
    group: 'board',
    takes: '"WHAT"',
    help: 'As "hole 20mm,30mm 8mm", "groove 0mm,160mm 300mm,160mm 6mm", either with "back:12mm" where it is only so deep and in the back, "clamp 20mm,90mm 40x25mm" or "hold-down 20mm,90mm 30mm"; repeat it',
    label: 'Holes, grooves and clamps, one a line',
    hint: 'As in “hole 20mm,30mm 8mm”, “groove 0mm,160mm 300mm,160mm 6mm” (with “back:12mm” at its end where it is in the back and only so deep), “clamp 20mm,90mm 40x25mm” (its middle and size) or “hold-down 20mm,90mm 30mm”',
    only: { board: 'with' },
  },
  reading: {
    holds: listOf(
      written<ReadingInput, HeightReading>(readingSchema, '', readReading, typedReading, IN_MM),
      `a list of ${READING_COUNT.min} to ${READING_COUNT.max} heights, such as ["20mm,30mm 19.8mm", …] or [{"atMm": [20, 30], "heightMm": 19.8}, …]`,
      READING_COUNT,
    ),
    field: 'readings',
    absent: [],
    otherwise: 'the board is taken as flat',
    group: 'board',
    takes: '"X,Y H"',
    help: `Height of the face at a place, as "20mm,30mm 19.8mm"; ${READING_COUNT.min} to ${READING_COUNT.max} of them`,
    label: `Heights of the face, ${READING_COUNT.min} to ${READING_COUNT.max}, one a line`,
    hint: 'Place and height, as in “20mm,30mm 19.8mm”',
    only: { board: 'with' },
  },
} as const satisfies Rows<BoardSettings>;
