import { readSvg } from '@pourproof/artwork';
import { signedArea } from '@pourproof/plane';
import { expect, test } from 'vitest';

test('x', () => {
  for (const r of [0.1, 0.3, 0.5, 0.53, 0.54, 0.56, 0.6, 1, 2, 5]) {
    const d = readSvg(
      `<svg xmlns="http://www.w3.org/2000/svg" width="9000px" height="9000px"><circle r="${r}"/></svg>`,
    );
    const w = Math.PI * ((r * 25.4) / 96) ** 2;
    console.log(r, d.shapes[0].region.coords.length / 2, signedArea(d.shapes[0].region) / w - 1);
  }
  expect(1).toBe(1);
});
