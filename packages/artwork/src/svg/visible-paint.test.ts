import { signedArea } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { readSvg } from './read-svg.ts';

const page = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="300mm" viewBox="0 0 300 300">${body}</svg>`;
const colour = (i: number): string => ['#a22', '#2a2', '#22a'][i % 3]!;
const square = (at: number, side: number, fill: string): string =>
  `<rect x="${at}" y="${at}" width="${side}" height="${side}" fill="${fill}"/>`;

// 5 to 1 beyond the number from which shapes above one another are put together
test.each([5, 160])('of %i squares within one another each shows its frame', (count) => {
  const body = Array.from({ length: count }, (_, i) => square(i * 0.5, 200 - i, colour(i))).join('');
  const { shapes } = readSvg(page(body), { carve: 'visible' });
  expect(shapes).toHaveLength(count);
  shapes.forEach(({ region }, i) => {
    const side = 200 - i;
    const exact = i === count - 1 ? side * side : side * side - (side - 1) ** 2;
    // the grid of the booleans is 15 nm there, along a frame of at most 1600 mm
    expect(Math.abs(signedArea(region) - exact)).toBeLessThan(1600 * 15e-6);
  });
});

test.each([5, 160])('of %i squares pushed along a slope each shows its corner', (count) => {
  const body = Array.from({ length: count }, (_, i) => square(i * 0.5, 100, colour(i))).join('');
  const { shapes } = readSvg(page(body), { carve: 'visible' });
  const areas = shapes.map(({ region }) => signedArea(region));
  areas.forEach((area, i) => {
    expect(Math.abs(area - (i === count - 1 ? 100 ** 2 : 100 ** 2 - 99.5 ** 2))).toBeLessThan(0.01);
  });
});

test('translucent shapes in a pile hide nothing', () => {
  const squares = Array.from({ length: 120 }, (_, i) => square(i * 0.5, 100, colour(i))).join('');
  const { shapes } = readSvg(page(`${square(0, 250, '#ccc')}<g opacity=".5">${squares}</g>`), {
    carve: 'visible',
  });
  expect(shapes).toHaveLength(121);
  for (const [i, { region }] of shapes.entries()) {
    expect(signedArea(region)).toBeCloseTo(i === 0 ? 250 ** 2 : 100 ** 2, 3);
  }
});
