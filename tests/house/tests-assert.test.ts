import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const files = spawnSync('git', ['ls-files', '*.test.ts'], { encoding: 'utf8' }).stdout.trim().split('\n');

/** What leaves tests out or lets them fail; in pieces, so that this file does not hold it. */
const LEFT_OUT = new RegExp(`\\b(?:test|it|describe)\\.(?:${['only', 'skip', 'todo'].join('|')})\\b`, 'u');

test('no test is left out, and none runs alone', () => {
  expect(files.length).toBeGreaterThan(150);
  expect(files.filter((file) => LEFT_OUT.test(readFileSync(file, 'utf8')))).toEqual([]);
});

test('every file of tests asserts something', () => {
  expect(files.filter((file) => !/\bexpect[A-Z]?\w*\(/u.test(readFileSync(file, 'utf8')))).toEqual([]);
});

// the set-up of all tests asks each for an assertion
test.fails('a test that asserts nothing fails', () => {
  files.toSorted();
});
