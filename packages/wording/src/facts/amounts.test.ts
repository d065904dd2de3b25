import { expect, test } from 'vitest';
import { formatMass, formatPercent, formatShare } from './amounts.ts';

test('mass has the digits of the scale', () => {
  expect([
    formatMass(12.34, 0.1),
    formatMass(12.34, 0.01),
    formatMass(12.34, 1),
    formatMass(0.5, 0.5),
  ]).toEqual(['12.3 g', '12.34 g', '12 g', '0.5 g']);
});

test('a mass that the scale does not show is under its step, never nothing', () => {
  expect([
    formatMass(0.004, 0.01),
    formatMass(0, 0.1),
    formatMass(0.4, 1),
    formatMass(0.01, 0.01),
    formatMass(0.2, 0.5),
  ]).toEqual(['under 0.01 g', 'under 0.1 g', 'under 1 g', '0.01 g', '0.2 g']);
});

test('percent never rounds something to nothing or not quite all to all', () => {
  expect([0, 0.01, 0.05, 50, 99.94, 99.97, 100].map(formatPercent)).toEqual([
    '0.0 %',
    'under 0.1 %',
    '0.1 %',
    '50.0 %',
    '99.9 %',
    'over 99.9 %',
    '100.0 %',
  ]);
  expect(formatShare(1, 0)).toBe('0.0 %');
  expect(formatShare(1, 4)).toBe('25.0 %');
});
