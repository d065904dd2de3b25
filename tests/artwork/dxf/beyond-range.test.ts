import { readDxf } from '@pourproof/artwork';
import { describe, expect, test } from 'vitest';
import { dxfText, MM } from '../../support/dxf/dxf-text.ts';

/** Each a closed shape of its own, with the codes of its numbers. */
const SHAPES: readonly (readonly [name: string, groups: readonly (string | number)[]])[] = [
  ['LWPOLYLINE', [70, 1, 10, 0, 20, 0, 42, 0.5, 10, 30, 20, 0, 42, 0.25, 10, 30, 20, 30]],
  ['LWPOLYLINE', [70, 0, 43, 2, 10, 0, 20, 0, 42, 0.5, 10, 30, 20, 0]],
  ['CIRCLE', [10, 5, 20, 5, 40, 3]],
  ['ELLIPSE', [10, 5, 20, 5, 11, 4, 21, 1, 40, 0.5, 41, 0, 42, 2 * Math.PI]],
  [
    'HATCH',
    [
      2,
      'SOLID',
      70,
      1,
      91,
      1,
      92,
      2,
      72,
      1,
      73,
      1,
      93,
      3,
      10,
      0,
      20,
      0,
      42,
      0.5,
      10,
      30,
      20,
      0,
      42,
      0.25,
      10,
      30,
      20,
      30,
      42,
      0.1,
      97,
      0,
    ],
  ],
  [
    'HATCH',
    [
      2,
      'SOLID',
      70,
      1,
      91,
      1,
      92,
      0,
      93,
      2,
      72,
      2,
      10,
      0,
      20,
      0,
      40,
      5,
      50,
      0,
      51,
      180,
      73,
      1,
      72,
      1,
      10,
      -5,
      20,
      0,
      11,
      5,
      21,
      0,
      97,
      0,
    ],
  ],
  [
    'SPLINE',
    [
      70, 8, 71, 2, 72, 6, 73, 3, 40, 0, 40, 0, 40, 0, 40, 1, 40, 1, 40, 1, 10, 0, 20, 0, 10, 5, 20, 9, 10, 9,
      20, 0,
    ],
  ],
  ['ARC', [10, 5, 20, 5, 40, 3, 50, 0, 51, 180]],
  ['LINE', [10, 5, 20, 5, 11, 3, 21, 180]],
  ['SOLID', [10, 0, 20, 0, 11, 9, 21, 0, 12, 0, 22, 9, 13, 9, 23, 9]],
];
const MOVING = new Set([10, 11, 12, 13, 20, 21, 22, 23, 40, 42, 43, 50, 51]);
/** Codes of notices by which a shape that is left out is told. */
const TOLD = new Set(['bad-number', 'broken-hatch', 'broken-spline', 'zero-size']);
const isAngle = (code: string | number): boolean => code === 50 || code === 51;
const SOUND = [0, 'CIRCLE', 8, 'A', 10, 200, 20, 0, 40, 5];

const rows = SHAPES.flatMap(([name, groups]) =>
  groups.flatMap((code, i) =>
    i % 2 === 0 && MOVING.has(code as number) && !(name === 'ELLIPSE' && (code === 40 || code === 42))
      ? ['1e308', '-1e200', '1e400', 'NaN']
          // an angle of any size is one
          .filter((value) => !isAngle(code) || value === '1e400' || value === 'NaN')
          .map((value) => ({
            name,
            code,
            value,
            sound: groups,
            groups: groups.map((each, k) => (k === i + 1 ? value : each)),
          }))
      : [],
  ),
);

const read = (name: string, groups: readonly (string | number)[]) => {
  const { shapes, notices } = readDxf(dxfText([...SOUND, 0, name, 8, 'A', ...groups], { header: MM }));
  return { regions: shapes.map(({ region }) => region), codes: notices.map(({ code }) => code) };
};

describe('a number beyond range leaves a notice, or the drawing as it is without it', () => {
  test.each(rows)('$name $code = $value', ({ name, sound, groups }) => {
    const { regions, codes } = read(name, groups);
    expect(regions.every(({ coords }) => coords.every(Number.isFinite))).toBe(true);
    // the outermost knots of a spline bear on nothing
    if (!codes.some((code) => TOLD.has(code))) {
      expect({ regions, codes }).toEqual(read(name, sound));
    }
  });
});
