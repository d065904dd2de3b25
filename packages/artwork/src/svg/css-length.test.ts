import { CSS_PX_PER_INCH, MM_PER_INCH } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthList, parseAlpha, parseLength, userUnits } from './css-length.ts';

const context = { viewportWidth: 200, viewportHeight: 100, fontSize: 10, rootFontSize: 20 };
const px = (text: string, axis: 'x' | 'y' | 'other' = 'x'): number => userUnits(text, axis, context, -1);
const mm = CSS_PX_PER_INCH / MM_PER_INCH;

describe('math functions', () => {
  test.each([
    ['calc(1mm + 2px)', mm + 2],
    ['calc(50% - 2px)', 98],
    ['min(10%, 1in)', 20],
    ['max(2em, 1rem, 3px)', 20],
    ['clamp(1px, 5mm, 1in)', 5 * mm],
    ['calc((1px + 2px) * -3)', -9],
    ['calc(2 * 5)', 10],
    ['calc(10vw + 10vh + 1ex)', 35],
    ['calc(1e1px + .5E1px)', 15],
    ['sqrt(16)', 4],
    ['CALC( 1PX + 1PX )', 2],
    ['hypot(3px, 4px)', 5],
    ['calc(1px', 1],
  ])('%s is %f px', (text, want) => {
    expect(px(text)).toBeCloseTo(want, 9);
    expect(parseLength(text)).toBeDefined();
  });

  test.each([
    ['calc(1px + 2)'],
    ['calc(1px * 1px)'],
    ['calc(1/0 * 1px)'],
    ['calc(0/0)'],
    ['calc(1furlong)'],
    ['calc()'],
    ['min()'],
    ['calc(1px 2px)'],
    ['calc(1,5px)'],
    ['random(1px, 2px)'],
    [`${'calc('.repeat(9000)}1px${')'.repeat(9000)}`],
    ['translate(1px)'],
    ['1px + 2px'],
  ])('%s is no length', (text) => {
    expect(parseLength(text)).toBeUndefined();
    expect(px(text)).toBe(-1);
  });

  test('without relative units they are lengths like any other, physical where all of it is', () => {
    expect(parseLength('calc(1in + 4.6mm)')).toMatchObject({ unit: 'mm', value: expect.closeTo(30, 9) });
    expect(parseLength('calc(1in + 4px)')).toMatchObject({ unit: 'px', value: 100 });
    expect(parseLength('calc(3 + 4)')).toMatchObject({ unit: '', value: 7 });
    expect(parseLength('calc(3% + 4px)')).toMatchObject({ unit: 'math', value: 0 });
  });

  test('sums and products of any lengths are those of their values', () => {
    const length = fc
      .tuple(
        fc.integer({ min: -9999, max: 9999 }),
        fc.constantFrom('px', 'mm', 'in', 'pt', 'pc', 'cm', 'q', '%', 'em', 'rem', 'vw'),
      )
      .map(([n, unit]) => `${n / 100}${unit}`);
    fc.assert(
      fc.property(
        length,
        length,
        fc.integer({ min: -9, max: 9 }),
        fc.constantFrom('x', 'y', 'other'),
        (a, b, n, axis) => {
          const want = n * (px(a, axis) - px(b, axis));
          expect(px(`calc(${n} * (${a} - ${b}))`, axis)).toBeCloseTo(want, 6);
          expect(px(`min(${a}, ${b})`, axis)).toBeCloseTo(Math.min(px(a, axis), px(b, axis)), 6);
        },
      ),
    );
  });

  test('of numbers they stand for shares', () => {
    expect(['calc(1 - .25)', '50%', 'calc(50% / 2)', '.5', 'calc(1px)', 'half'].map(parseAlpha)).toEqual([
      0.75,
      0.5,
      0.25,
      0.5,
      undefined,
      undefined,
    ]);
  });
});

test('a list is parted outside of brackets', () => {
  expect(lengthList(' 1px, calc(2px + 3px)\n min(1px, 2px) ')).toEqual([
    '1px',
    'calc(2px + 3px)',
    'min(1px, 2px)',
  ]);
  expect(lengthList('1px,2px 3px', /\s/u)).toEqual(['1px,2px', '3px']);
});

test('lengths that overflow in px are none', () => {
  expect(parseLength('1e308in')).toBeUndefined();
  expect(parseLength('1e309')).toBeUndefined();
});
