import { mmFromInches } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { noLess, noMore } from './way-length.ts';

test('a way out holds as printed in thousandths of an inch', () => {
  // 0.02 mm are 0.00079 in, 0.26 mm are 0.01024 in
  expect(noLess(0.02, 'in')).toBe('0.001 in');
  expect(noLess(0.26, 'in')).toBe('0.011 in');
  expect(noMore(5.19, 'in')).toBe('0.204 in');
  expect(noMore(5.31, 'in')).toBe('0.209 in');
  for (let thousandths = 1; thousandths < 400; thousandths += 7) {
    const mm = mmFromInches(thousandths / 1000);
    expect(noLess(mm, 'in')).toBe(noMore(mm, 'in'));
  }
  expect(noLess(0.26, 'mm')).toBe('0.26 mm');
});
