import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { composeMaps, type DxfMap, mapPoint, objectMap } from './dxf-map.ts';
import type { DxfRecord } from './dxf-record.ts';

const part = fc.double({ min: -5, max: 5, noNaN: true });

function withNormal(x: number, y: number, z: number): DxfRecord {
  return { type: 'CIRCLE', line: 1, codes: [210, 220, 230], values: [x, y, z], parts: [] };
}

describe('the object plane of an entity', () => {
  test('is a turn of space that brings z to the normal and keeps x level, by the rule of the DXF reference', () => {
    fc.assert(
      fc.property(part, part, part, (x, y, z) => {
        const length = Math.hypot(x, y, z);
        fc.pre(length > 0.01);
        const m = objectMap(withNormal(x, y, z)) ?? [1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0];
        const [a, b, n] = [m.slice(0, 3), m.slice(3, 6), m.slice(6, 9)];
        const dot = (u: number[], v: number[]): number => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
        for (const [u, v, value] of [
          [a, a, 1],
          [b, b, 1],
          [n, n, 1],
          [a, b, 0],
          [a, n, 0],
          [b, n, 0],
        ] as const) {
          expect(dot(u, v)).toBeCloseTo(value, 12);
        }
        const cross = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
        expect(dot(cross, n)).toBeCloseTo(1, 12);
        expect(dot(n, [x, y, z])).toBeCloseTo(length, 9);
        // near the z axis x is square to world y, elsewhere to world z
        const near = Math.abs(x / length) < 1 / 64 && Math.abs(y / length) < 1 / 64;
        expect(near ? a[1] : a[2]).toBeCloseTo(0, 12);
      }),
    );
  });

  test('straight down mirrors: x runs to the left', () => {
    const m = objectMap(withNormal(0, 0, -1)) as DxfMap;
    expect(mapPoint(m, 3, 4, 0)).toEqual([-3, 4]);
  });

  test('straight up, or no direction at all, is the world', () => {
    expect(objectMap(withNormal(0, 0, 2))).toBeUndefined();
    expect(objectMap(withNormal(0, 0, 0))).toBeUndefined();
  });
});

test('composing maps is doing one after the other', () => {
  const map = fc.tuple(part, part, part, part, part, part, part, part, part, part, part, part);
  fc.assert(
    fc.property(map, map, part, part, part, (outer, inner, x, y, z) => {
      const whole = composeMaps(outer, inner);
      const [a, b, c] = [0, 1, 2].map(
        (k) => inner[k] * x + inner[3 + k] * y + inner[6 + k] * z + inner[9 + k],
      );
      const step = mapPoint(outer, a, b, c);
      const once = mapPoint(whole, x, y, z);
      expect(once[0]).toBeCloseTo(step[0], 9);
      expect(once[1]).toBeCloseTo(step[1], 9);
    }),
  );
});
