import { readDxf } from '@pourproof/artwork';
import { type Drawing, signedArea } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { dxfText, MM } from './dxf-text.ts';

/** Area by the raw rings, which is the drawn area as long as rings nest and do not overlap; sign by nesting is not known here. */
function areas(drawing: Drawing): number[] {
  return drawing.shapes.map((s) => signedArea(s.region));
}

const line = (x0: number, y0: number, x1: number, y1: number) => [0, 'LINE', 8, 'A', 10, x0, 20, y0, 11, x1, 21, y1];

test('four lines become a square', () => {
  const d = readDxf(dxfText([...line(0, 0, 10, 0), ...line(10, 10, 10, 0), ...line(10, 10, 0, 10), ...line(0, 10, 0, 0)], { header: MM }));
  expect(d.notices).toEqual([]);
  expect(areas(d).map(Math.abs)).toEqual([100]);
  expect([...d.shapes[0].region.coords]).toContain(-10);
});

test('circle', () => {
  const d = readDxf(dxfText([0, 'CIRCLE', 8, 'A', 10, 5, 20, 5, 40, 5], { header: MM }));
  expect(Math.abs(areas(d)[0])).toBeCloseTo(Math.PI * 25, 9);
});

test('doubled and shared', () => {
  const sq = (x: number) => [...line(x, 0, x + 10, 0), ...line(x + 10, 10, x + 10, 0), ...line(x + 10, 10, x, 10), ...line(x, 10, x, 0)];
  const d = readDxf(dxfText([...sq(0), ...sq(0), ...sq(10)], { header: MM }));
  console.log(JSON.stringify(d.notices), areas(d), d.shapes[0].region.ringEnds);
});
