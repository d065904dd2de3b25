import { expect, test } from 'vitest';
import { JobError } from '../refusals/job-error.ts';
import { parseShopTime, shopTimeText } from './shop-time.ts';

test('a day and time comes back as it was typed, leap days included', () => {
  for (const text of ['2026-12-01 09:00', '2028-02-29 23:59', '2026-03-29 02:30']) {
    expect(shopTimeText(parseShopTime(text))).toBe(text);
  }
  expect(shopTimeText(parseShopTime('2026-12-01T9:05'))).toBe('2026-12-01 09:05');
});

test('a clock without zones has no summer time: a day is 24 hours', () => {
  expect(parseShopTime('2026-03-30 00:00') - parseShopTime('2026-03-29 00:00')).toBe(24 * 3_600_000);
});

test.each([
  'tomorrow',
  '2026-02-30 09:00',
  '2026-13-01 09:00',
  '2026-12-01',
  '2026-12-01 24:30',
  '2026-12-01 09:75',
])('%s is refused with an example', (text) => {
  expect(() => parseShopTime(text)).toThrow(JobError);
  expect(() => parseShopTime(text)).toThrow('2026-12-01 09:00');
});
