import { resolveRegions } from '@pourproof/arrangement';
import { readSvg } from '@pourproof/artwork';
import { leftStanding, medialAxis } from '@pourproof/geometry';
import { packRings, parseMeasure } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { cleanRegionFaults } from '../support/oracles/clean-region-faults.ts';
import { cleanFrom } from '../support/shapes/clean-from.ts';
import { checkDrawing } from './check-drawing.ts';
import { checkNumbers } from './fuzz-target.ts';

const svg = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80">${body}</svg>`;

describe('what the campaign found', () => {
  test.each([
    ['1e308cm', 'length'],
    ['1e308lb', 'mass'],
    ['1e308d', 'time'],
    ['1e308mm/s', 'speed'],
  ] as const)('%s is refused: it overflows in our unit', (text, quantity) => {
    expect(() => parseMeasure(text, quantity)).toThrow('the number is not finite');
  });

  test.each([
    ['a curve whose area overflows', '<path d="M0 0c0 0 0 0 1e308 0a0 0 0 0 0 0 -1.8h0"/>'],
    ['points whose area overflows', '<polyline points="0 0 1.7e308 0 0 2"/>'],
    ['a place that overflows', '<path d="M0 0h9v9" transform="scale(1.8) matrix(0,-0.1,-0.1,0,1e308,0)"/>'],
  ])('%s leaves no number in the drawing that is not finite', (_, body) => {
    const drawing = readSvg(svg(body));
    checkDrawing(drawing);
    expect(drawing.open).toBeUndefined();
    expect(drawing.notices.map(({ code }) => code)).toContain('number-too-large');
  });

  test('a piece beyond a waist has a branch of finite reach', () => {
    const ring = [
      2.932281494140625, 9.131755828857422, 1.6610908508300781, 9.243917465209961, 1.9954109191894531,
      5.001430511474609, 2.3422718048095703, 2.655506134033203, 3.659524917602539, 6.173906326293945,
      5.1528167724609375, 0.10149955749511719, 8.244485855102539, 4.717235565185547, 9.494924545288086,
      9.60958480834961, 2.9573535919189453, 9.030628204345703,
    ];
    const { pieces } = leftStanding(medialAxis(cleanFrom([ring])), 1.474216413497925, 0.005);
    checkNumbers(pieces);
    expect(pieces.length).toBeGreaterThan(3);
  });

  test('the validator tells edges apart whose places differ in the last digit only', () => {
    const rings = [
      [-1, 1, 0.9999999999999999, 1, 1, 2, -1, 2],
      [1, -1, 2, -1, 2, 0, 1, 0],
      [-1, -1, 1, -0.9999999999999981, 1, 0.9999998642547124, -0.9999989564192072, 1],
    ];
    const shapes = rings.map((ring) => ({ ...packRings([ring]), fillRule: 'nonzero' as const }));
    expect(cleanRegionFaults(resolveRegions(shapes).region)).toEqual([]);
  });
});
