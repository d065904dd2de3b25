import { readSvg } from '@pourproof/artwork';
import fc from 'fast-check';
import { checkDrawing } from '../check-drawing.ts';
import { answerOf, type FuzzTarget, fuzzTarget } from '../fuzz-target.ts';
import { damaged, someNumber } from '../hostile-text.ts';

const COUNTS: Readonly<Record<string, number>> = {
  m: 2,
  l: 2,
  h: 1,
  v: 1,
  c: 6,
  s: 4,
  q: 4,
  t: 2,
  a: 7,
  z: 0,
};

const small = fc.integer({ min: -500, max: 500 }).map((n) => String(n / 10));
const number = fc.oneof({ weight: 30, arbitrary: small }, { weight: 1, arbitrary: someNumber });
const command = fc
  .tuple(
    fc.constantFrom(...'mMlLhHvVcCsSqQtTaAzZ'),
    fc.array(number, { minLength: 7, maxLength: 7 }),
    fc.boolean(),
    fc.boolean(),
  )
  .map(([letter, numbers, large, sweep]) => {
    const values = numbers.slice(0, COUNTS[letter.toLowerCase()]);
    if (/a/i.test(letter)) {
      values.splice(3, 2, large ? '1' : '0', sweep ? '1' : '0');
    }
    return letter + values.join(' ');
  });

/** Path data, damaged now and then. */
export const pathData: fc.Arbitrary<string> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc
      .tuple(number, number, fc.array(command, { minLength: 1, maxLength: 8 }))
      .map(([x, y, all]) => `M${x} ${y}${all.join('')}`),
  },
  {
    weight: 1,
    arbitrary: damaged(
      fc.constantFrom(
        'M0 0h10v10h-10z',
        'M5 5a5 5 0 1 0 10 0a5 5 0 1 0-10 0z',
        'M0 0C1 9 9 9 10 0S20-9 20 0T5 5z',
      ),
    ),
  },
);

const one = (name: string, least: number, most: number): fc.Arbitrary<string> =>
  fc.array(number, { minLength: least, maxLength: most }).map((all) => `${name}(${all.join(',')})`);

/** Lists of transforms. */
export const transforms: fc.Arbitrary<string> = fc
  .array(
    fc.oneof(
      one('translate', 1, 2),
      one('scale', 1, 2),
      one('rotate', 1, 3),
      one('skewX', 1, 1),
      one('skewY', 1, 1),
      one('matrix', 6, 6),
      fc.constantFrom(
        'scale(0)',
        'scale(1e-9)',
        'rotate(1e300)',
        'scale(-1)',
        'matrix(0 0 0 0 0 0)',
        'translate(50%)',
        'rotate(.25turn)',
        'scale(1e200) scale(1e200)',
        'rotate3d(1)',
      ),
    ),
    { maxLength: 3 },
  )
  .map((all) => all.join(' '));

/** One path with any data, transform and stroke: its coordinates are finite and it resolves. */
export const svgPaths: FuzzTarget = fuzzTarget(
  'svg-paths',
  { limitMs: 2000, quick: 150 },
  fc.record({
    data: pathData,
    transform: fc.oneof({ weight: 2, arbitrary: fc.constant('') }, { weight: 1, arbitrary: transforms }),
    paint: fc.constantFrom(
      '',
      'fill-rule="evenodd"',
      'fill="none" stroke="red"',
      'stroke="red" stroke-width="3"',
      'fill="none" stroke="red" stroke-linejoin="round" stroke-linecap="square"',
    ),
    dash: fc.oneof(
      { weight: 5, arbitrary: fc.constant('') },
      { weight: 1, arbitrary: fc.array(someNumber, { maxLength: 4 }).map((all) => all.join(' ')) },
    ),
  }),
  ({ data, transform, paint, dash }) => {
    const attributes = `${transform === '' ? '' : ` transform="${transform}"`}${dash === '' ? '' : ` stroke-dasharray="${dash}"`} ${paint}`;
    const source = `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm"><path d="${data.replaceAll(/[<&"\0]/gu, '')}"${attributes}/></svg>`;
    const drawing = answerOf(() => readSvg(source));
    if (drawing !== null) {
      checkDrawing(drawing);
    }
  },
);
