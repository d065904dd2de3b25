import { describe, expect, test } from 'vitest';
import { nearestWord } from './nearest-word.ts';

const WORDS = ['depth', 'width', 'height', 'wood', 'seal', 'seal-hours'];

describe('the nearest word', () => {
  test.each([
    ['a dropped letter', 'dept', 'depth'],
    ['a doubled letter', 'woood', 'wood'],
    ['a wrong letter', 'widht', 'width'],
    ['two slips in a long word', 'seel-huors', 'seal-hours'],
    ['capitals', 'DEPTH', 'depth'],
  ])('with %s: %s is %s', (_, typed, expected) => {
    expect(nearestWord(typed, WORDS)).toBe(expected);
  });

  test('is none when nothing is near, and for an empty word', () => {
    expect(nearestWord('frobnicate', WORDS)).toBeNull();
    expect(nearestWord('', WORDS)).toBeNull();
    expect(nearestWord('depth', [])).toBeNull();
  });

  test('one swap of neighbours counts as one slip', () => {
    expect(nearestWord('sela', WORDS)).toBe('seal');
  });
});

test('what begins a word stands for it where nothing is near', () => {
  const known = ['bit-cannot-enter', 'bleed-reaches-edge', 'purpleheart'];
  expect(nearestWord('bit-cannot', known)).toBe('bit-cannot-enter');
  expect(nearestWord('Purple', known)).toBe('purpleheart');
  expect(nearestWord('bit', known)).toBeNull();
  expect(nearestWord('cannot', known)).toBeNull();
});
