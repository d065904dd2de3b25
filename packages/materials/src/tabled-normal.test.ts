import { expect, test } from 'vitest';
import { normalCdf } from './normal.ts';
import { tabledNormalCdf } from './tabled-normal.ts';

test('the table is within 3e-10 of the function it stands for, at its points, between them and beyond', () => {
  let most = 0;
  for (let z = -10; z <= 10; z += 0.0037) {
    most = Math.max(most, Math.abs(tabledNormalCdf(z) - normalCdf(z)));
  }
  expect(most).toBeLessThan(3e-10);
  expect(tabledNormalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
  expect(tabledNormalCdf(Number.POSITIVE_INFINITY)).toBe(1);
});
