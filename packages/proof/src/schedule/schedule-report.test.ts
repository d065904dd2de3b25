import { parseShopTime } from '@pourproof/job';
import { expect, test } from 'vitest';
import { scheduleReport } from './schedule-report.ts';

const START = parseShopTime('2026-12-01 09:00');
const step = (earliestHours: number, latestHours: number, isWindow: boolean) =>
  scheduleReport(
    [{ step: 'top-up', turn: 0, earliestHours, latestHours, isWindow, because: ['from-memory'] }],
    START,
  )[0];

test('dates are whole quarters of an hour, no earlier than a rule and no later than the end of a window', () => {
  expect(step(3.249, 38.985, true)).toMatchObject({
    earliest: '2026-12-01 12:15',
    latest: '2026-12-02 23:45',
  });
  expect(step(3.251, 38.985, false)).toMatchObject({
    earliest: '2026-12-01 12:30',
    latest: '2026-12-03 00:00',
  });
  // sums of hours miss a whole quarter by rounding
  expect(step(0.1 + 0.2 + 0.7, 2.1 + 0.9, true)).toMatchObject({
    earliest: '2026-12-01 10:00',
    latest: '2026-12-01 12:00',
  });
});

test('a window shorter than its rounding does not end before it begins, and hours stay exact', () => {
  const short = step(1.01, 1.1, true);
  expect(short).toMatchObject({ earliest: '2026-12-01 10:15', latest: '2026-12-01 10:15' });
  expect([short?.earliestHours, short?.latestHours]).toEqual([1.01, 1.1]);
});
