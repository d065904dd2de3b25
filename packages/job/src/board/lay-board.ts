import type { Point } from '@pourproof/plane';
import { JobError } from '../refusals/job-error.ts';
import type { Block, Board } from './board.ts';
import type { BoardPattern, BoardStructure, BoardWood } from './board-input.ts';

/** More blocks than any shop glues up: a slip of the unit (our choice). */
const MAX_BLOCKS = 5000;
/** A strip narrower than this at the far edge comes from rounding, mm. */
const EDGE_TOL_MM = 1e-9;

/** The lengths that each pattern needs; any other has no meaning for it. */
const NEEDS: Readonly<Record<BoardPattern, readonly LengthKey[]>> = {
  plain: [],
  stripes: [],
  checkerboard: ['squareMm'],
  'alternating-checkerboard': ['squareMm'],
  'end-grain-checkerboard': ['squareMm'],
  brick: ['lengthMm', 'rowMm'],
  polygons: [],
};
const EXAMPLES = { squareMm: 'square:40mm', lengthMm: 'length:80mm', rowMm: 'row:25mm' } as const;

type LengthKey = keyof typeof EXAMPLES;

/**
 * The blocks of a pattern, laid from the board's upper left corner; they cover it exactly once.
 *
 * @throws {JobError} when a length is missing or without meaning, a stripe finds no room, or there are more
 * blocks than any shop glues up
 */
export function layBoard(structure: BoardStructure): Board {
  const { pattern, widthMm, heightMm, thicknessMm, woods = [] } = structure;
  refuseLengths(structure);
  refuseWoods(structure);
  refuseTooMany(structure);
  const blocks = pattern === 'polygons' ? [] : blocksOf(structure, woods);
  return { widthMm, heightMm, thicknessMm, blocks };
}

function refuseLengths(structure: BoardStructure): void {
  const { pattern, woods = [] } = structure;
  const name = (key: LengthKey): string => key.replace('Mm', '');
  for (const key of ['squareMm', 'lengthMm', 'rowMm'] as const) {
    const isNeeded = NEEDS[pattern].includes(key);
    if (isNeeded && structure[key] === undefined) {
      throw new JobError('board-needs-length', 'board', { name: name(key), example: EXAMPLES[key] });
    }
    if (!isNeeded && structure[key] !== undefined) {
      throw new JobError('board-stray-length', 'board', { name: name(key), pattern });
    }
  }
  const sized = woods.find(({ widthMm }) => widthMm !== undefined);
  if (pattern !== 'stripes' && sized !== undefined) {
    throw new JobError('board-stray-length', 'board', { name: `the width of ${sized.wood}`, pattern });
  }
}

function refuseWoods({ pattern, woods = [] }: BoardStructure): void {
  const [first, second] = woods;
  if (first === undefined && pattern !== 'polygons') {
    throw new JobError('board-without-wood', 'board', { shown: pattern });
  }
  const stray = pattern === 'polygons' ? first : pattern === 'plain' ? second : undefined;
  if (stray !== undefined) {
    throw new JobError('board-stray-wood', 'board', { wood: stray.wood });
  }
}

/** Counts before anything is made: a slip of the unit could ask for millions. */
function refuseTooMany({ widthMm, heightMm, woods = [], squareMm, lengthMm, rowMm }: BoardStructure): void {
  const narrowest = Math.min(heightMm, ...woods.map((wood) => wood.widthMm ?? Infinity));
  const across = widthMm / (squareMm ?? lengthMm ?? widthMm);
  const down = heightMm / (squareMm ?? rowMm ?? narrowest);
  const count = Math.ceil(across) * Math.ceil(down);
  if (count > MAX_BLOCKS) {
    throw new JobError('board-blocks', 'board', { count, max: MAX_BLOCKS });
  }
}

function blocksOf(structure: BoardStructure, woods: readonly BoardWood[]): readonly Block[] {
  const { pattern, widthMm, heightMm, squareMm = 0, lengthMm = 0, rowMm = 0 } = structure;
  switch (pattern) {
    case 'plain':
      return [block(woods, 0, [0, 0, widthMm, heightMm])];
    case 'stripes':
      return stripes(structure, woods);
    case 'brick':
      return bricks(structure, woods, lengthMm, rowMm);
    default:
      return squares(structure, woods, squareMm);
  }
}

function stripes({ widthMm, heightMm }: BoardStructure, woods: readonly BoardWood[]): readonly Block[] {
  let filled = 0;
  const widths = woods.map(({ wood, widthMm: own }) => {
    if (own === undefined) {
      throw new JobError('board-stripe-width', 'board', { wood });
    }
    if (filled >= heightMm - EDGE_TOL_MM) {
      throw new JobError('board-stripe-room', 'board', { wood });
    }
    filled += own;
    return own;
  });
  const blocks: Block[] = [];
  let y = 0;
  for (let k = 0; heightMm - y > EDGE_TOL_MM; k++) {
    const next = Math.min(heightMm, y + (widths[k % widths.length] ?? heightMm));
    blocks.push(block(woods, k, [0, y, widthMm, next]));
    y = next;
  }
  return blocks;
}

function squares(
  { pattern, widthMm, heightMm }: BoardStructure,
  woods: readonly BoardWood[],
  square: number,
): readonly Block[] {
  const blocks: Block[] = [];
  for (let row = 0; heightMm - row * square > EDGE_TOL_MM; row++) {
    for (let column = 0; widthMm - column * square > EDGE_TOL_MM; column++) {
      const k = row + column;
      const box: Box = [
        column * square,
        row * square,
        Math.min(widthMm, (column + 1) * square),
        Math.min(heightMm, (row + 1) * square),
      ];
      const grainDeg = pattern === 'alternating-checkerboard' && k % 2 === 1 ? 90 : 0;
      const diveDeg = pattern === 'end-grain-checkerboard' ? 90 : 0;
      blocks.push({ ...block(woods, k, box), grainDeg, diveDeg });
    }
  }
  return blocks;
}

function bricks(
  { widthMm, heightMm }: BoardStructure,
  woods: readonly BoardWood[],
  length: number,
  rowHeight: number,
): readonly Block[] {
  const blocks: Block[] = [];
  for (let row = 0; heightMm - row * rowHeight > EDGE_TOL_MM; row++) {
    const top = row * rowHeight;
    const bottom = Math.min(heightMm, top + rowHeight);
    let left = 0;
    let right = row % 2 === 0 ? length : length / 2;
    for (let column = 0; widthMm - left > EDGE_TOL_MM; column++) {
      blocks.push(block(woods, row + column, [left, top, Math.min(widthMm, right), bottom]));
      left = right;
      right += length;
    }
  }
  return blocks;
}

type Box = readonly [left: number, top: number, right: number, bottom: number];

function block(woods: readonly BoardWood[], k: number, [left, top, right, bottom]: Box): Block {
  const { wood, part } = woods[k % woods.length] as BoardWood;
  const outline: Point[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return { wood, part: part ?? null, grainDeg: 0, diveDeg: 0, outline };
}
