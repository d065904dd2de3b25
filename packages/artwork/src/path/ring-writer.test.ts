import { describe, expect, test } from 'vitest';
import { CoordArena } from './coord-arena.ts';
import { RingWriter } from './ring-writer.ts';

/** What a writer makes of rings of points, with its size told before or not. */
function written(rings: readonly (readonly number[])[], isExpected: boolean, writer = new RingWriter()) {
  if (isExpected) {
    writer.expect(rings.flat().length);
  }
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      writer.push(ring[i], ring[i + 1]);
    }
    writer.closeRing();
  }
  const { coords, ringEnds, fillRule } = writer.takeRegion(new CoordArena(), 'evenodd');
  return { coords: Array.from(coords), ringEnds: Array.from(ringEnds), fillRule };
}

const TRIANGLE = [0, 0, 10, 0, 0, 10];

describe.each([false, true])('rings written with their size told before: %s', (isExpected) => {
  test('keep their points, three at least', () => {
    expect(written([TRIANGLE, [5, 5], [6, 6, 7, 7], [0, 0, 9, 0, 9, 9, 0, 9]], isExpected)).toEqual({
      coords: [...TRIANGLE, 0, 0, 9, 0, 9, 9, 0, 9],
      ringEnds: [3, 7],
      fillRule: 'evenodd',
    });
  });

  test('end where they began without repeating that point', () => {
    expect(written([[...TRIANGLE, 0, 0, 0, 0]], isExpected).coords).toEqual(TRIANGLE);
    expect(written([[0, 0, 10, 0, 0, 0]], isExpected)).toMatchObject({ coords: [], ringEnds: [] });
  });

  test('are whole when they fill many blocks, and again when the writer is used anew', () => {
    const writer = new RingWriter();
    const long = Array.from({ length: 20_000 }, (_, i) => i);
    expect(written([long, TRIANGLE], isExpected, writer).coords).toEqual([...long, ...TRIANGLE]);
    expect(written([TRIANGLE], isExpected, writer)).toMatchObject({ coords: TRIANGLE, ringEnds: [3] });
    expect(written([long], isExpected, writer).coords).toEqual(long);
  });
});

test('a point taken back leaves no trace', () => {
  const writer = new RingWriter();
  for (const [x, y] of [
    [0, 0],
    [10, 0],
    [99, 99],
  ] as const) {
    writer.push(x, y);
  }
  writer.pop();
  writer.push(0, 10);
  writer.closeRing();
  expect(Array.from(writer.takeRegion(new CoordArena(), 'nonzero').coords)).toEqual(TRIANGLE);
});
