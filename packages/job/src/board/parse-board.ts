import { MeasureError, type Point, parseLengthMm } from '@pourproof/plane';
import { JobError } from '../job-error.ts';
import type { Block, Board } from './board.ts';

/** Patterns that a board can be glued up in. */
export const BOARD_PATTERNS: readonly string[] = [
  'plain',
  'stripes',
  'checkerboard',
  'alternating-checkerboard',
  'end-grain-checkerboard',
  'brick',
  'polygons',
];

/** More blocks than any shop glues up: a slip of the unit. */
const MOST_BLOCKS = 5000;
const FORM =
  'as in "stripes 300x180x20mm maple:60mm walnut:20mm" or "checkerboard 320x320x20mm maple walnut square:40mm"';

/** A wood of a pattern, with the length typed after it. */
interface Strip {
  readonly wood: string;
  readonly part: Block['part'];
  readonly sizeMm: number | null;
}

interface Words {
  readonly pattern: string;
  readonly size: readonly [width: number, height: number, thickness: number];
  readonly strips: readonly Strip[];
  /** Lengths by name, such as `square`. */
  readonly lengths: ReadonlyMap<string, number>;
}

/**
 * Reads a glue-up from one line: a pattern, the board's width x height x thickness, its woods and the lengths that the pattern needs.
 *
 * - `plain 300x180x20mm maple`
 * - `stripes 300x180x20mm maple:60mm walnut:20mm`: strips along the board, from its upper edge down, repeated until it is full
 * - `checkerboard 320x320x20mm maple walnut square:40mm`; with `alternating-checkerboard` every second square is turned by 90°,
 *   with `end-grain-checkerboard` all fibres stand upright
 * - `brick 300x200x20mm maple walnut length:80mm row:25mm`: each row is moved by half a length
 *
 * `polygons 300x180x20mm` has no blocks of its own: they are given one by one.
 *
 * `/heart` or `/sap` may follow a wood, as in `poplar/sap`. The last strip, square or brick is cut off at the edge.
 * @throws {JobError} saying what cannot be read and what to type
 */
export function parseBoard(text: string): Board {
  const words = readWords(text);
  const [widthMm, heightMm, thicknessMm] = words.size;
  refuseTooMany(words, text);
  const blocks = blocksOf(words);
  return { widthMm, heightMm, thicknessMm, blocks };
}

/** Counts before anything is made: a slip of the unit could ask for millions. */
function refuseTooMany({ size, strips, lengths }: Words, text: string): void {
  const [width, height] = size;
  const least = Math.min(Infinity, ...strips.map((strip) => strip.sizeMm ?? Infinity));
  const across = width / (lengths.get('square') ?? lengths.get('length') ?? width);
  const down = height / (lengths.get('square') ?? lengths.get('row') ?? Math.min(height, least));
  const count = Math.ceil(across) * Math.ceil(down);
  if (count > MOST_BLOCKS) {
    throw new JobError(
      `board: "${text}" would have ${count} blocks, more than ${MOST_BLOCKS}. Check the units.`,
    );
  }
}

function readWords(text: string): Words {
  const [pattern = '', size = '', ...rest] = text.trim().split(/\s+/u);
  if (!BOARD_PATTERNS.includes(pattern)) {
    throw new JobError(
      `board: pattern "${pattern}" is unknown. Known: ${BOARD_PATTERNS.join(', ')}; ${FORM}.`,
    );
  }
  const strips: Strip[] = [];
  const lengths = new Map<string, number>();
  for (const word of rest) {
    const [name = '', typed] = word.split(':');
    if (['square', 'length', 'row'].includes(name)) {
      lengths.set(name, lengthOf(typed ?? '', name));
      continue;
    }
    const [wood = '', part] = name.split('/');
    if (part !== undefined && part !== 'heart' && part !== 'sap') {
      throw new JobError(`board: "${word}" is neither heart nor sap. Type ${wood}/heart or ${wood}/sap.`);
    }
    strips.push({ wood, part: part ?? null, sizeMm: typed === undefined ? null : lengthOf(typed, wood) });
  }
  if (strips.length === 0 && pattern !== 'polygons') {
    throw new JobError(`board: "${text}" names no wood. Type the woods after the size, ${FORM}.`);
  }
  return { pattern, size: sizeOf(size), strips, lengths };
}

function sizeOf(text: string): readonly [number, number, number] {
  const match = /^([\d./-]+)x([\d./-]+)x([\d./-]+)([a-z"]+)$/iu.exec(text);
  if (match === null) {
    throw new JobError(`board: "${text}" is not width x height x thickness, ${FORM}.`);
  }
  const [, width = '', height = '', thickness = '', unit = ''] = match;
  return [
    lengthOf(width + unit, 'width'),
    lengthOf(height + unit, 'height'),
    lengthOf(thickness + unit, 'thickness'),
  ];
}

function lengthOf(text: string, what: string): number {
  try {
    const value = parseLengthMm(text);
    if (!(value > 0)) {
      throw new JobError(`board: ${what} is ${text}; it must be above 0.`);
    }
    return value;
  } catch (error) {
    throw error instanceof MeasureError ? new JobError(`board: ${what}: ${error.message}`) : error;
  }
}

function blocksOf(words: Words): readonly Block[] {
  const { pattern, strips } = words;
  const [width, height] = words.size;
  switch (pattern) {
    case 'polygons':
      return [];
    case 'plain':
      return [block(strips, 0, [0, 0, width, height])];
    case 'stripes':
      return stripes(words);
    case 'brick':
      return bricks(words);
    default:
      return squares(words);
  }
}

function stripes({ size, strips }: Words): readonly Block[] {
  const [width, height] = size;
  const missing = strips.find((strip) => strip.sizeMm === null);
  if (missing !== undefined) {
    throw new JobError(
      `board: the stripe of ${missing.wood} has no width. Type it as in ${missing.wood}:40mm.`,
    );
  }
  let filled = 0;
  for (const { wood, sizeMm } of strips) {
    if (filled >= height - 1e-9) {
      throw new JobError(
        `board: no stripe of ${wood} finds room, for those before it fill the board from its upper edge down. Make the board higher (its second size), or leave ${wood} out.`,
      );
    }
    filled += sizeMm ?? 0;
  }
  const blocks: Block[] = [];
  let y = 0;
  for (let k = 0; height - y > 1e-9; k++) {
    const next = Math.min(height, y + (strips[k % strips.length]?.sizeMm ?? height));
    blocks.push(block(strips, k, [0, y, width, next]));
    y = next;
  }
  return blocks;
}

function squares({ pattern, size, strips, lengths }: Words): readonly Block[] {
  const [width, height] = size;
  const square = needed(lengths, 'square', 'square:40mm');
  const blocks: Block[] = [];
  for (let row = 0; height - row * square > 1e-9; row++) {
    for (let column = 0; width - column * square > 1e-9; column++) {
      const k = row + column;
      const box: Box = [
        column * square,
        row * square,
        Math.min(width, (column + 1) * square),
        Math.min(height, (row + 1) * square),
      ];
      const grainDeg = pattern === 'alternating-checkerboard' && k % 2 === 1 ? 90 : 0;
      blocks.push({
        ...block(strips, k, box),
        grainDeg,
        diveDeg: pattern === 'end-grain-checkerboard' ? 90 : 0,
      });
    }
  }
  return blocks;
}

function bricks({ size, strips, lengths }: Words): readonly Block[] {
  const [width, height] = size;
  const length = needed(lengths, 'length', 'length:80mm');
  const rowHeight = needed(lengths, 'row', 'row:25mm');
  const blocks: Block[] = [];
  for (let row = 0; height - row * rowHeight > 1e-9; row++) {
    const top = row * rowHeight;
    const bottom = Math.min(height, top + rowHeight);
    let left = 0;
    let right = row % 2 === 0 ? length : length / 2;
    for (let column = 0; width - left > 1e-9; column++) {
      blocks.push(block(strips, row + column, [left, top, Math.min(width, right), bottom]));
      left = right;
      right += length;
    }
  }
  return blocks;
}

function needed(lengths: ReadonlyMap<string, number>, name: string, example: string): number {
  const value = lengths.get(name);
  if (value === undefined) {
    throw new JobError(`board: this pattern needs ${name}. Add it as in ${example}.`);
  }
  return value;
}

type Box = readonly [left: number, top: number, right: number, bottom: number];

function block(strips: readonly Strip[], k: number, [left, top, right, bottom]: Box): Block {
  const { wood, part } = strips[k % strips.length] as Strip;
  const outline: Point[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return { wood, part, grainDeg: 0, diveDeg: 0, outline };
}
