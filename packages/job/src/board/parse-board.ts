import { JobError } from '../refusals/job-error.ts';
import { readMeasure } from '../values/measure-input.ts';
import type { Board } from './board.ts';
import {
  BOARD_PATTERNS,
  type BoardInput,
  type BoardPattern,
  type BoardStructure,
  type BoardWood,
} from './board-input.ts';
import { layBoard } from './lay-board.ts';

/** Lengths that a pattern may need, by the word that is typed. */
const LENGTHS = { square: 'squareMm', length: 'lengthMm', row: 'rowMm' } as const;

/**
 * A glue-up, from one line or from a structure of the same.
 *
 * @throws {JobError} saying what cannot be read and what to type
 */
export function readBoard(input: BoardInput): Board {
  return typeof input === 'string' ? parseBoard(input) : layBoard(input);
}

/**
 * Reads a glue-up from one line: a pattern, the board's width x height x thickness, its woods and the lengths that the pattern needs.
 *
 * - `plain 300x180x20mm maple`
 * - `stripes 300x180x20mm maple:60mm walnut:20mm`: stripes along the board, from its upper edge down, repeated until it is full
 * - `checkerboard 320x320x20mm maple walnut square:40mm`; with `alternating-checkerboard` every second square is turned by 90°,
 *   with `end-grain-checkerboard` all fibres stand upright
 * - `brick 300x200x20mm maple walnut length:80mm row:25mm`: each row is moved by half a length
 *
 * `polygons 300x180x20mm` has no blocks of its own: they are given one by one.
 *
 * `/heart` or `/sap` may follow a wood, as in `poplar/sap`. The last stripe, square or brick is cut off at the edge.
 * @throws {JobError} saying what cannot be read and what to type
 */
export function parseBoard(text: string): Board {
  const [pattern = '', size = '', ...words] = text.trim().split(/\s+/u);
  if (!isPattern(pattern)) {
    throw new JobError('board-pattern', 'board', { pattern, known: BOARD_PATTERNS });
  }
  const woods: BoardWood[] = [];
  const lengths: { squareMm?: number; lengthMm?: number; rowMm?: number } = {};
  for (const word of words) {
    const [name = '', typed] = word.split(':');
    if (isLengthName(name)) {
      lengths[LENGTHS[name]] = lengthOf(name, typed ?? '');
    } else {
      woods.push(woodOf(word));
    }
  }
  const structure: BoardStructure = { pattern, ...sizeOf(size), ...lengths, woods };
  if (woods.length === 0 && pattern !== 'polygons') {
    throw new JobError('board-without-wood', 'board', { shown: text });
  }
  return layBoard(structure);
}

function isPattern(word: string): word is BoardPattern {
  return BOARD_PATTERNS.some((pattern) => pattern === word);
}

function isLengthName(word: string): word is keyof typeof LENGTHS {
  return Object.hasOwn(LENGTHS, word);
}

function woodOf(word: string): BoardWood {
  const [name = '', typed] = word.split(':');
  const [wood = '', part] = name.split('/');
  if (part !== undefined && part !== 'heart' && part !== 'sap') {
    throw new JobError('board-part', 'board', { word, wood });
  }
  return { wood, part, ...(typed === undefined ? {} : { widthMm: lengthOf(wood, typed) }) };
}

function sizeOf(text: string): Pick<BoardStructure, 'widthMm' | 'heightMm' | 'thicknessMm'> {
  const match = /^([\d.,/-]+)x([\d.,/-]+)x([\d.,/-]+)([a-z"]+)$/iu.exec(text);
  if (match === null) {
    throw new JobError('board-size', 'board', { shown: text });
  }
  const [, width = '', height = '', thickness = '', unit = ''] = match;
  return {
    widthMm: lengthOf('width', width + unit),
    heightMm: lengthOf('height', height + unit),
    thicknessMm: lengthOf('thickness', thickness + unit),
  };
}

function lengthOf(name: string, typed: string): number {
  const value = readMeasure(`board: ${name}`, typed, 'length');
  if (!(value > 0)) {
    throw new JobError('board-length', 'board', { name, shown: typed });
  }
  return value;
}
