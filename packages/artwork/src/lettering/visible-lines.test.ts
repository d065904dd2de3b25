import { expect, test } from 'vitest';
import { visibleLines } from './visible-lines.ts';

test.each([
  ['Oak', 1],
  ['Oak\nElm', 2],
  ['Oak\r\n\r\nElm\n', 2],
  ['\nOak', 1],
  [' \n\t', 0],
  ['', 0],
])('%j has %i visible lines', (text, count) => {
  expect(visibleLines(text)).toBe(count);
});
