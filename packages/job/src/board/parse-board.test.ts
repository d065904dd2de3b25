import { packRings, signedArea } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { JobError } from '../refusals/job-error.ts';
import type { Board } from './board.ts';
import { parseBoard } from './parse-board.ts';

const area = (board: Board): number =>
  board.blocks.reduce((sum, block) => sum + signedArea(packRings([block.outline.flat()])), 0);
const woods = (board: Board): string => board.blocks.map((block) => block.wood).join(' ');

describe('a board in one line', () => {
  test.each([
    'plain 300x180x20mm maple',
    'stripes 300x180x20mm maple:60mm walnut:20mm',
    'stripes 300x175x20mm maple:60mm walnut:20mm',
    'checkerboard 320x320x20mm maple walnut square:40mm',
    'checkerboard 300x170x20mm maple walnut square:40mm',
    'end-grain-checkerboard 12x8x1-1/2in maple walnut cherry square:2in',
    'brick 300x200x20mm maple walnut length:80mm row:30mm',
  ])('%s is covered by its blocks exactly once', (text) => {
    const board = parseBoard(text);
    expect(area(board)).toBeCloseTo(board.widthMm * board.heightMm, 6);
    for (const block of board.blocks) {
      expect(signedArea(packRings([block.outline.flat()]))).toBeGreaterThan(0);
    }
  });

  test('repeats stripes from the upper edge down', () => {
    expect(woods(parseBoard('stripes 300x180x20mm maple:60mm walnut:20mm'))).toBe(
      'maple walnut maple walnut maple',
    );
  });

  test('turns every second square of an alternating checkerboard', () => {
    const { blocks } = parseBoard('alternating-checkerboard 80x80x20mm maple walnut square:40mm');
    expect(blocks.map((block) => block.grainDeg)).toEqual([0, 90, 90, 0]);
    expect(blocks.map((block) => block.wood)).toEqual(['maple', 'walnut', 'walnut', 'maple']);
  });

  test('stands all fibres of an end-grain checkerboard upright', () => {
    const { blocks } = parseBoard('end-grain-checkerboard 80x80x40mm maple walnut square:40mm');
    expect(new Set(blocks.map((block) => block.diveDeg))).toEqual(new Set([90]));
  });

  test('moves every second row of bricks by half a length', () => {
    const { blocks } = parseBoard('brick 160x60x20mm maple walnut length:80mm row:30mm');
    expect(blocks.map((block) => block.outline[0])).toEqual([
      [0, 0],
      [80, 0],
      [0, 30],
      [40, 30],
      [120, 30],
    ]);
  });

  test('knows heart from sap', () => {
    expect(parseBoard('plain 300x180x20mm poplar/sap').blocks[0]).toMatchObject({
      wood: 'poplar',
      part: 'sap',
    });
  });

  test.each([
    ['herringbone 300x180x20mm maple', 'pattern "herringbone"'],
    ['plain 300x180 maple', 'width x height x thickness'],
    ['plain 300x180x20 maple', 'width x height x thickness'],
    ['plain 300x180x20mm', 'no wood'],
    ['stripes 300x180x20mm maple walnut:20mm', 'maple:40mm'],
    ['stripes 200x80x20mm maple:60mm walnut:20mm cherry:100mm', 'no stripe of cherry'],
    ['checkerboard 320x320x20mm maple walnut', 'square:40mm'],
    ['plain 300x0x20mm maple', 'above 0'],
    ['plain 300x180x20mm maple/bark', 'maple/heart'],
    ['checkerboard 3000x3000x20mm maple walnut square:1mm', 'Check the units'],
  ])('refuses "%s" with the way out', (text, part) => {
    expect(() => parseBoard(text)).toThrow(JobError);
    expect(() => parseBoard(text)).toThrow(part);
  });
});
