import { expect, test } from 'vitest';
import { isOpenLine } from './open-line.ts';

/** A chain as a ring begun at one of its points, so that its ends stand beside each other. */
function ring(
  chain: readonly (readonly [number, number])[],
  turnBy = 0,
): readonly [readonly number[], Parameters<typeof isOpenLine>[1]] {
  const [first, last] = [chain[0] as [number, number], chain.at(-1) as [number, number]];
  const turned = [...chain.slice(turnBy), ...chain.slice(0, turnBy)];
  const widthMm = Math.hypot(last[0] - first[0], last[1] - first[1]);
  return [turned.flat(), { fromMm: last, toMm: first, widthMm }];
}

const arc = (x: number, y: number, r: number, fromDeg: number, toDeg: number): [number, number][] =>
  Array.from({ length: 61 }, (_, k) => {
    const a = ((fromDeg + ((toDeg - fromDeg) * k) / 60) * Math.PI) / 180;
    return [x + r * Math.cos(a), y + r * Math.sin(a)];
  });

test.each<readonly [string, boolean, [number, number][]]>([
  ['a U', true, [[0, 30], ...arc(10, 10, 10, 180, 360), [20, 30]]],
  ['a narrow U', true, [[0, 60], ...arc(2, 10, 2, 180, 360), [4, 60]]],
  [
    'a V',
    true,
    [
      [0, 20],
      [10, 0],
      [20, 20],
    ],
  ],
  ['three quarters of a circle', true, arc(0, 0, 10, 45, 315)],
  [
    'a spiral that closing would cross',
    true,
    Array.from({ length: 120 }, (_, k) => [(2 + k / 10) * Math.cos(k / 10), (2 + k / 10) * Math.sin(k / 10)]),
  ],
  [
    'three sides of a square',
    false,
    [
      [0, 30],
      [0, 0],
      [30, 0],
      [30, 30],
    ],
  ],
  [
    'three sides of a long slot',
    false,
    [
      [0, 30],
      [0, 0],
      [6, 0],
      [6, 30],
    ],
  ],
  [
    'three sides with rounded corners',
    false,
    [[0, 30], ...arc(5, 5, 5, 180, 270), ...arc(25, 5, 5, 270, 360), [30, 30]],
  ],
  ['a circle open by 40°', false, arc(0, 0, 10, 20, 340)],
  [
    'a heart open at its tip by a slip',
    false,
    [[1, -10], ...arc(5, 0, 5, 0, 180), ...arc(-5, 0, 5, 0, 180), [-1, -10]],
  ],
])('%s', (_, isLine, chain) => {
  const [coords, gap] = ring(chain);
  expect(isOpenLine(coords, gap)).toBe(isLine);
  // begun anywhere, and gone through the other way
  const [turned] = ring(chain, 2);
  expect(isOpenLine(turned, gap)).toBe(isLine);
  const [back, backGap] = ring(chain.toReversed());
  expect(isOpenLine(back, backGap)).toBe(isLine);
  // anywhere on the sheet, turned by any angle
  expect(isOpenLine(...ring(placed(chain, 200, -90, 33)))).toBe(isLine);
  expect(isOpenLine(...ring(placed(chain, -70, 400, 140)))).toBe(isLine);
});

/** A chain moved, and turned about the origin before. */
const placed = (chain: readonly (readonly [number, number])[], x0: number, y0: number, deg: number) => {
  const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  return chain.map(([x, y]): [number, number] => [x0 + c * x - s * y, y0 + s * x + c * y]);
};

// the chain goes round one end of the line that would close it, (0,0) to (10,0), or crosses it
test.each<readonly [string, boolean, [number, number][]]>([
  [
    'crosses the closing line',
    true,
    [
      [10, 0],
      [10, 20],
      [2, 20],
      [6, -10],
      [0, -10],
      [0, 0],
    ],
  ],
  [
    'passes it on the left',
    false,
    [
      [10, 0],
      [10, 20],
      [-18, 20],
      [-20, -10],
      [0, -10],
      [0, 0],
    ],
  ],
  [
    'passes it on the right',
    false,
    [
      [10, 0],
      [10, 20],
      [28, 20],
      [30, -10],
      [0, -10],
      [0, 0],
    ],
  ],
])('a line that %s: %s, wherever it lies and however it is turned', (_what, expected, chain) => {
  for (const [x0, y0, deg] of [
    [0, 0, 0],
    [200, 90, 33],
    [-50, 300, 140],
    [70, -400, 251],
  ] as const) {
    expect(isOpenLine(...ring(placed(chain, x0, y0, deg))), `${deg}°`).toBe(expected);
  }
});
