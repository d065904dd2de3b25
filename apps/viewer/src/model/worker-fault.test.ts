import { expect, test } from 'vitest';
import { isUnloaded, workerFault } from './worker-fault.ts';

test('a worker that did not load says nothing, and is told from one that failed', () => {
  expect(isUnloaded({})).toBe(true);
  expect(isUnloaded({ message: '' })).toBe(true);
});

test('a fault in its code is told in its words, with its line where that is known', () => {
  const event = { message: 'x is not a function', filename: 'assets/worker.js', lineno: 7 };
  expect(isUnloaded(event)).toBe(false);
  expect(workerFault(event)).toBe('x is not a function (assets/worker.js, line 7)');
  expect(workerFault({ message: 'x is not a function' })).toBe('x is not a function');
});
