import { G_PER_LB, G_PER_OZ, ML_PER_US_FL_OZ, MM_PER_INCH } from '@pourproof/plane';
import { expect, test } from 'vitest';

test('a US fluid ounce is 1/128 of a gallon of 231 cubic inches, exactly', () => {
  // in whole ten-thousandths of a mm³, where nothing rounds: 231 × 254³ / 128
  const tenThousandths = (231n * 254n ** 3n * 10_000_000n) / 128n;
  expect(ML_PER_US_FL_OZ).toBe(Number(tenThousandths) / 1e13);
});

test('a pound is 16 ounces and an inch 25.4 mm, exactly', () => {
  expect(16 * G_PER_OZ).toBe(G_PER_LB);
  expect(G_PER_LB).toBe(453.59237);
  expect(MM_PER_INCH * 10).toBe(254);
});
