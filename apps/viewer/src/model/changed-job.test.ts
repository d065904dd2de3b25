import { expect, test } from 'vitest';
import { changedJob } from './changed-job.ts';

test('a size replaces every other size, because two may disagree', () => {
  expect(changedJob({ scale: 1.5, depth: '3mm' }, { width: '40mm' })).toEqual({
    width: '40mm',
    depth: '3mm',
  });
  expect(changedJob({ width: '40mm' }, { capHeight: '9mm' })).toEqual({ capHeight: '9mm' });
  expect(changedJob({ width: '40mm' }, { depth: '3mm' })).toEqual({ width: '40mm', depth: '3mm' });
});

test('a described board speaks for wood and fibres, and takes what lies on it along when it goes', () => {
  const board = 'plain 300x180x20mm walnut';
  const laid = changedJob({ wood: 'maple', grain: '30deg', dive: '5deg' }, { board });
  expect(laid).toEqual({ board });
  expect(changedJob({ ...laid, turn: '15deg', margin: '5mm', seal: 'epoxy' }, { board: undefined })).toEqual({
    seal: 'epoxy',
  });
});

test('a value put back to its default is gone', () => {
  expect(changedJob({ level: '1mm' }, { level: undefined })).toEqual({});
});

test('coats and their hours go with the seal', () => {
  expect(changedJob({ seal: 'epoxy', coats: 2, sealHours: '9h' }, { seal: 'none' })).toEqual({
    seal: 'none',
  });
  expect(changedJob({ seal: 'epoxy', coats: 2 }, { seal: 'shellac' })).toEqual({ seal: 'shellac', coats: 2 });
});
