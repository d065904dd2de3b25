import { applyTransform } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { parseTransformList } from './transform-list.ts';

const BOX = { width: 200, height: 100 };

test.each<[string, [number, number], [number, number]]>([
  ['', [3, 4], [3, 4]],
  ['none', [3, 4], [3, 4]],
  ['translate(10)', [3, 4], [13, 4]],
  ['translate(10,20)', [3, 4], [13, 24]],
  ['translate(10-20)', [3, 4], [13, -16]],
  ['translate(.5.5)', [3, 4], [3.5, 4.5]],
  ['translate(10px 5%)', [3, 4], [13, 9]],
  ['translateX(50%)', [3, 4], [103, 4]],
  ['translateY(1e1)', [3, 4], [3, 14]],
  ['scale(2)', [3, 4], [6, 8]],
  ['scale(2 -3)', [3, 4], [6, -12]],
  ['scaleX(2)', [3, 4], [6, 4]],
  ['scaleY(50%)', [3, 4], [3, 2]],
  ['rotate(90)', [3, 4], [-4, 3]],
  ['rotate(0.25turn)', [3, 4], [-4, 3]],
  ['rotate(100grad)', [3, 4], [-4, 3]],
  ['rotate(90 1 1)', [3, 4], [-2, 3]],
  ['skewX(45)', [3, 4], [7, 4]],
  ['skewY(45)', [3, 4], [3, 7]],
  ['matrix(1 2 3 4 5 6)', [3, 4], [20, 28]],
  ['translate(10 0) , scale(2)', [3, 4], [16, 8]],
  ['scale(2)translate(10 0)', [3, 4], [26, 8]],
])('%s', (text, point, expected) => {
  const [x, y] = applyTransform(parseTransformList(text, BOX)!, point);
  expect(x).toBeCloseTo(expected[0], 12);
  expect(y).toBeCloseTo(expected[1], 12);
});

test.each([
  'rotate(45',
  'translate()',
  'translate(1 2 3)',
  'scale(1 2 3)',
  'rotate(1 2)',
  'matrix(1 2 3 4 5)',
  'skewX(1 2)',
  'turn(45)',
  'rotate3d(1,0,0,45deg)',
  'translate(1,,2)',
  'scale(2) nonsense',
  'translate(1e999)',
])('%s is not understood as a whole', (text) => {
  expect(parseTransformList(text, BOX)).toBeUndefined();
});
