import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../../../../tests/support/lane.ts';
import { type Path, PathBuilder } from '../path/path.ts';
import { cutDashes } from './cut-dashes.ts';
import { measureSegment } from './segment-length.ts';

function wave(close: boolean): Path {
  const out = new PathBuilder();
  out.moveTo(0, 0);
  out.cubicTo(10, -20, 20, 20, 30, 0);
  out.lineTo(40, 30);
  if (close) {
    out.close();
  }
  return out.path();
}

const lengthOf = (path: Path): number =>
  path.flatMap((sub) => Array.from(sub.segments)).reduce((sum, s) => sum + measureSegment(s).total, 0);

/** Length of 0…total that the dashes of a pattern cover, by counting over each turn of it. */
function covered(pattern: readonly number[], offset: number, total: number): number {
  const period = pattern.reduce((a, b) => a + b, 0);
  let sum = 0;
  for (let at = -offset - Math.ceil((period - offset) / period) * period; at < total; at += period) {
    let pos = at;
    pattern.forEach((length, i) => {
      sum += i % 2 === 0 ? Math.max(0, Math.min(total, pos + length) - Math.max(0, pos)) : 0;
      pos += length;
    });
  }
  return sum;
}

test('dashes have the lengths of the pattern along curves and lines', () => {
  const lengths = fc.double({ min: 0.5, max: 9, noNaN: true });
  fc.assert(
    fc.property(
      fc.boolean(),
      fc.tuple(lengths, lengths, lengths, lengths),
      fc.double({ min: -50, max: 50, noNaN: true }),
      (close, pattern, offset) => {
        const path = wave(close);
        const total = lengthOf(path);
        const dashes = cutDashes(path, pattern, offset)!;
        expect(dashes.every((dash) => dash.segments.length > 0)).toBe(true);
        // quadrature and root finding each to far better than 1e-6
        expect(Math.abs(lengthOf(dashes) - covered(pattern, offset, total))).toBeLessThan(1e-6 * total);
      },
    ),
    cases(100),
  );
});

test('a dash over the start of a closed path is one dash, on an open path two', () => {
  const total = lengthOf(wave(true));
  const closed = cutDashes(wave(true), [10, total / 2 - 10], 5)!;
  expect(closed).toHaveLength(2);
  const open = lengthOf(wave(false));
  expect(cutDashes(wave(false), [10, open / 2 - 10], 5)!).toHaveLength(3);
});

test('one dash as long as a closed path leaves it closed', () => {
  expect(cutDashes(wave(true), [1000, 1], 0)).toMatchObject([{ closed: true }]);
});

test('more dashes than anyone draws give none', () => {
  expect(cutDashes(wave(true), [1e-5, 1e-5], 0)).toBeUndefined();
});
