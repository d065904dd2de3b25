import { CrossingsError } from '@pourproof/arrangement';
import { ArtworkError } from '@pourproof/artwork/format';
import { mergeMaterials } from '@pourproof/materials';
import { parseLengthMm } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { defaultMaterials } from './index.ts';
import { refusalOf, refusalText } from './refusal.ts';

const source = { kind: 'file', name: 'sign.svg', bytes: new Uint8Array() } as const;
const broken = new ArtworkError(
  'svg-broken',
  { tag: 'g' },
  () => ({ what: 'A tag is not closed.', remedy: 'Close it.' }),
  { line: 3, column: 7 },
);

const thrown = (act: () => unknown): unknown => {
  try {
    act();
  } catch (error) {
    return error;
  }
  throw new Error('nothing was thrown');
};

test('a file that cannot be read: its name, the line and the column', () => {
  const refusal = refusalOf(broken, source);
  expect(refusal).toEqual({
    code: 'svg-broken',
    what: 'A tag is not closed.',
    where: 'sign.svg, line 3, column 7',
    remedy: 'Close it.',
  });
  expect(refusal && refusalText(refusal)).toBe(
    'sign.svg, line 3, column 7: A tag is not closed.\n  What to do: Close it.',
  );
});

test('lettering is named by its words on one line', () => {
  expect(refusalOf(broken, { kind: 'lettering', text: 'Elm\\n Ash', font: null })?.where).toBe(
    '"Elm / Ash", line 3, column 7',
  );
});

test('a name that the message begins with is not said twice', () => {
  const error = new ArtworkError('artwork-empty', { name: 'sign.svg' }, () => ({
    what: 'sign.svg is empty.',
    remedy: 'Export it again.',
  }));
  const refusal = refusalOf(error, source);
  expect(refusal?.where).toBe('sign.svg');
  expect(refusal && refusalText(refusal)).toBe('sign.svg is empty.\n  What to do: Export it again.');
});

test('a drawing that crosses itself too often: its name, the count and what to do', () => {
  const refusal = refusalOf(new CrossingsError(1001, 1000, [2.5, 7]), source);
  expect(refusal?.code).toBe('too-many-crossings');
  expect(refusal?.where).toBe('sign.svg');
  expect(refusal?.what).toContain('1,001 crossings were found by x = 2.5 mm');
  expect(refusal?.remedy).toMatch(/^Join shapes/u);
});

test('materials and measures are refused too, with a code', () => {
  const merging = thrown(() =>
    mergeMaterials(defaultMaterials, { woods: { mine: { like: 'no such wood' } } }),
  );
  expect(refusalOf(merging)?.code).toBe('unknown-like');
  expect(refusalOf(merging)?.where).toBe('woods.mine.like');
  expect(refusalOf(thrown(() => parseLengthMm('3')))?.code).toMatch(/^[a-z-]+$/u);
});

test('whatever else is thrown is no refusal', () => {
  expect(refusalOf(new TypeError('x is not a function'))).toBeNull();
  expect(refusalOf('just words')).toBeNull();
});
