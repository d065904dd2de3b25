import { expect, test } from 'vitest';
import { isUnloaded, workerFault } from './worker-fault.ts';

test('a worker that did not load is told by its file and how often it was tried', () => {
  expect(isUnloaded({})).toBe(true);
  expect(isUnloaded({ message: '' })).toBe(true);
  expect(workerFault({}, 'assets/worker.js', 1)).toMatch(
    /did not load: assets\/worker\.js; load the page again/u,
  );
  expect(workerFault({ message: '' }, 'assets/worker.js', 2)).toContain('assets/worker.js, tried 2 times;');
});

test('a fault in its code is told in its words, with its line where that is known', () => {
  const event = { message: 'x is not a function', filename: 'assets/worker.js', lineno: 7 };
  expect(isUnloaded(event)).toBe(false);
  expect(workerFault(event, 'assets/worker.js', 1)).toBe('x is not a function (assets/worker.js, line 7)');
  expect(workerFault({ message: 'x is not a function' }, 'assets/worker.js', 1)).toBe('x is not a function');
});
