import { packRings, rotation, transformRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { boundaryOf } from './boundary.ts';

test('coordinates are told from the centre of the box, within its half size, wherever the artwork lies', () => {
  const { originX, originY, extent, x, y } = boundaryOf(
    packRings([[1000, -3000, 1040, -3000, 1040, -2980, 1000, -2980]]),
  );
  expect([originX, originY, extent]).toEqual([1020, -2990, 20]);
  expect([Math.max(...x.map(Math.abs)), Math.max(...y.map(Math.abs))]).toEqual([20, 10]);
});

test('a point on a side is a site, however the side lies and whichever side of it rounding puts the point', () => {
  for (const off of [-1e-15, 0, 1e-15]) {
    for (let quarter = 0; quarter < 8; quarter++) {
      const ring = packRings([[0, 0, 0.5, off, 1, 0, 1, 1, 0, 1]]);
      const { isReflex } = boundaryOf(transformRings(rotation((quarter * Math.PI) / 4), ring));
      expect([...isReflex]).toEqual([0, 1, 0, 0, 0]);
    }
  }
});
