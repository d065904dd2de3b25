import { packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { boundaryOf } from './boundary.ts';
import { GroupBox } from './group-box.ts';
import { obbTree } from './obb-tree.ts';
import { BOX_STRIDE } from './obb-tree-layout.ts';

/**
 * A strip of 40 by 2 in four runs: the bottom's left and right half, then right side and top, then top and
 * left side.
 */
const strip = obbTree(
  boundaryOf(
    packRings([
      [
        [0, 0, 5, 0, 10, 0, 15, 0],
        [20, 0, 25, 0, 30, 0, 35, 0],
        [40, 0, 40, 2, 30, 2, 25, 2],
        [20, 2, 14, 2, 7, 2, 0, 2],
      ].flat(),
    ]),
  ),
);
const leaves = [...strip.leafOfRun];

test('runs that lie side by side share a node, though they stand far apart in the outline', () => {
  expect(leaves[0] >> 1).toBe(leaves[3] >> 1);
  expect(leaves[1] >> 1).toBe(leaves[2] >> 1);
});

test('a group box sees the runs that it may meet, those nearer to its middle first', () => {
  const box = new GroupBox(strip);
  box.turnTo(leaves[0]);
  expect([box.ux, box.uy]).toEqual([1, 0]);
  // coordinates are relative to the middle of the strip: x from -20 to 20, y from -1 to 1
  box.take(-21, -1, -2, -0.5, 0);
  expect(leaves.map((leaf) => box.sees(leaf))).toEqual([true, false, false, true]);
  box.take(-18, -1, 0.5, 2, 0);
  const stack = new Int32Array(4);
  const left = leaves[0] >> 1;
  expect(box.pushSeen(left, stack, 0)).toBe(1);
  expect(stack[0]).toBe(leaves[3]);
  box.take(-18, -1, -2, 0.5, 0);
  expect(box.pushSeen(left, stack, 0)).toBe(2);
  expect([...stack.subarray(0, 2)]).toEqual([leaves[3], leaves[0]]);
  expect(box.pushSeen(left ^ 1, stack, 2)).toBe(2);
  // one around the very middle of either run still meets both
  for (const leaf of [leaves[0], leaves[3]]) {
    const [x, y] = strip.boxes.slice(leaf * BOX_STRIDE, leaf * BOX_STRIDE + 2);
    box.take(x - 1, x + 1, y - 3, y + 3, 0);
    expect(box.pushSeen(left, stack, 0)).toBe(2);
    expect([...stack.subarray(0, 2)].sort()).toEqual([leaves[0], leaves[3]].sort());
    expect(stack[1]).toBe(leaf);
  }
});

test('a segment lies beyond a group box when it is on the outside of one side', () => {
  const box = new GroupBox(strip);
  box.turnTo(leaves[0]);
  box.take(-1, 1, -2, 2, 0.5);
  expect(box.isBeyond(2, -3, 0, 1, 6)).toBe(true);
  expect(box.isBeyond(1, -3, 0, 1, 6)).toBe(false);
  expect(box.isBeyond(-3, 2.6, 1, 0, 9)).toBe(true);
  expect(box.isBeyond(-3, 2.4, 1, 0, 9)).toBe(false);
  // past a corner, but across two sides: not told apart
  expect(box.isBeyond(1, 3.5, Math.SQRT1_2, -Math.SQRT1_2, 3)).toBe(false);
});

test('spikes that run together at one end are fitted by slanted sides', () => {
  const spikes = Array.from({ length: 60 }, (_, i) => {
    const turn = (Math.PI * i) / 60;
    const r = i % 2 === 0 ? 100 : 1;
    return [r * Math.cos(turn), r * Math.sin(turn)];
  });
  const tree = obbTree(boundaryOf(packRings([[...spikes.flat(), -0.9, -0.1, 0.9, -0.1]])));
  const box = new GroupBox(tree);
  box.turnTo(1);
  // beside the roots of the spikes at a right angle, far within the box around them
  const [x, y] = [1.5 + 0.05, 1 - 50];
  const upright = tree.leafOfRun[Math.floor(tree.runs.count / 2)];
  expect(tree.isSlanted[upright]).toBe(1);
  const { ux, uy } = box;
  box.take(x * ux + y * uy, x * ux + y * uy, y * ux - x * uy, y * ux - x * uy, 0.01);
  expect(box.sees(upright)).toBe(false);
});
