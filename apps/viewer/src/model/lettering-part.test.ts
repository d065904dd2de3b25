import { expect, test } from 'vitest';
import { letteringPart } from './lettering-part.ts';

const form = (fields: Readonly<Record<string, string>>): FormData => {
  const data = new FormData();
  for (const [name, value] of Object.entries(fields)) {
    data.set(name, value);
  }
  return data;
};

test('what is typed becomes the keys of a job file', () => {
  const part = letteringPart(
    form({
      capHeight: '20mm',
      align: 'right',
      tracking: '0.5mm',
      lineSpacing: '1,2',
      radius: '80mm',
      side: 'under',
      axis: 'wght=600, wdth=90',
    }),
    false,
  );
  expect(part).toEqual({
    capHeight: '20mm',
    align: 'right',
    tracking: '0.5mm',
    lineSpacing: 1.2,
    arc: '80mm under',
    axis: ['wght=600', 'wdth=90'],
  });
});

test('what is left empty stays as usual', () => {
  const straight = letteringPart(form({ capHeight: '15mm', align: '', tracking: ' ' }), false);
  expect(straight).toEqual({ capHeight: '15mm' });
  const bent = letteringPart(form({ capHeight: '15mm', align: '', radius: '80mm', side: 'over' }), false);
  expect(bent).toEqual({ capHeight: '15mm', arc: '80mm' });
});

test('single strokes have no axes', () => {
  expect(letteringPart(form({ capHeight: '9mm', axis: 'wght=600' }), true)).toEqual({
    capHeight: '9mm',
    singleLine: true,
  });
});
