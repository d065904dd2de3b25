import { packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { boundaryOf } from './boundary.ts';
import { GroupBox } from './group-box.ts';
import { obbTree } from './obb-tree.ts';

/** A square of side 10 with four edges to a side: each leaf holds one side, the leaves are nodes 4 … 7. */
const square = boundaryOf(
  packRings([
    [
      [0, 0, 2, 0, 5, 0, 8, 0],
      [10, 0, 10, 2, 10, 5, 10, 8],
      [10, 10, 8, 10, 5, 10, 2, 10],
      [0, 10, 0, 8, 0, 5, 0, 2],
    ].flat(),
  ]),
);

test('a group box sees the runs that it may meet, those nearer to its middle first', () => {
  const box = new GroupBox(obbTree(square));
  box.turnTo(4);
  expect([box.ux, box.uy]).toEqual([1, 0]);
  // coordinates are relative to the middle of the square: x from -6 to 4.5, y from -5 to -4
  box.take(-6, 4.5, -5, -4, 0);
  expect([4, 5, 6, 7].map((leaf) => box.sees(leaf))).toEqual([true, false, false, true]);
  const stack = new Int32Array(4);
  expect(box.pushSeen(2, stack, 0)).toBe(1);
  expect(stack[0]).toBe(4);
  box.take(-6, 4.5, -5, -4, 0.6);
  expect(box.pushSeen(2, stack, 0)).toBe(2);
  expect([...stack.subarray(0, 2)]).toEqual([5, 4]);
  expect(box.pushSeen(3, stack, 2)).toBe(3);
  expect(stack[2]).toBe(7);
});

test('a segment lies beyond a group box when it is on the outside of one side', () => {
  const box = new GroupBox(obbTree(square));
  box.turnTo(4);
  box.take(-1, 1, -2, 2, 0.5);
  expect(box.isBeyond(2, -3, 0, 1, 6)).toBe(true);
  expect(box.isBeyond(1, -3, 0, 1, 6)).toBe(false);
  expect(box.isBeyond(-3, 2.6, 1, 0, 9)).toBe(true);
  expect(box.isBeyond(-3, 2.4, 1, 0, 9)).toBe(false);
  // past a corner, but across two sides: not told apart
  expect(box.isBeyond(1, 3.5, Math.SQRT1_2, -Math.SQRT1_2, 3)).toBe(false);
});
