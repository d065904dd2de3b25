import { resolveRegions } from '@pourproof/arrangement';
import { readSvg } from '@pourproof/artwork';
import { carve, veeCutter } from '@pourproof/cutting';
import { leftStanding, medialAxis } from '@pourproof/geometry';
import { settleJob } from '@pourproof/job';
import { packRings, parseMeasure, signedArea } from '@pourproof/plane';
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

  // both in the seeds of 30 November, see docs/method/fuzzing.md
  test('a V in bands a micrometre wide is measured without end of halving, and nothing cut is less than nothing', () => {
    const bands = cleanFrom([
      [
        19.83057786678244, 3.323431194820348, 15.47696453228677, 6.7472770936932704, 15.476116834734517,
        6.746607316279453, 19.82840060626423, 3.323431194820348, 23.698154062081493, -2.6435998682154684,
        17.74500996983848, -6.910347726304177, 17.746118689222392, -6.910949544593002, 23.700756241461388,
        -2.6435998682154684,
      ],
      [
        11.27491709109666, 3.4271820191946327, 15.476116834734517, 6.746607316279453, 15.475265268450674,
        6.7472770936932704, 11.273679183054167, 3.4271820191946327, 6.290649075950739, -1.3502939571620358,
        12.633602363681884, -4.13660374699993, 17.744170287928537, -6.910949544593002, 17.74500996983848,
        -6.910347726304177, 12.63498959829427, -4.13660374699993, 6.291339821621001, -1.3502939571620358,
      ],
    ]);
    const wide = 0.7390668474026514;
    const vee = veeCutter({
      includedRad: 2 * Math.atan2(2.29692964553833 - wide, 1.394880030103101 - 0.2434773251837852),
      diameterMm: 4.59385929107666,
      tipRadiusMm: 1.24344435842494,
    });
    const cut = carve(medialAxis(bands), [{ cutter: vee, way: 'follow' }], { depthMm: 6.43 });
    expect(cut.volumeMm3).toBeGreaterThanOrEqual(0);
    expect(cut.volumeMm3).toBeLessThanOrEqual(cut.areaMm2 * cut.maxDepthMm + cut.volumeErrorMm3);
    const frames = resolveRegions([
      {
        ...packRings([
          [-4, -4, 4, -4, 4, 4, -4, 4],
          [-3.99, -3.99, 3.99, -3.99, 3.99, 3.99, -3.99, 3.99],
        ]),
        fillRule: 'evenodd',
      },
    ]).region;
    for (const diameterMm of [1.4724200248718264, 0.9, 3]) {
      const blunt = veeCutter({ includedRad: 1e-3, diameterMm, tipFlatMm: 0.9 * diameterMm });
      expect(
        carve(medialAxis(frames), [{ cutter: blunt, way: 'follow' }], { depthMm: 3 }).volumeMm3,
      ).toBeGreaterThanOrEqual(0);
    }
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

  test.each([
    [
      'a map that overflows with a mask',
      '<g transform="scale(1e200) scale(1e200)"><mask id="b"/><polygon mask="url(#b)" points=""/></g>',
    ],
    [
      'words that every object has',
      '<rect width="9" height="9" clip-path="circle(1px at constructor toString)"/><rect width="9" height="9" clip-path="constructor(1px)"/>',
    ],
    [
      'a clip that overflows',
      '<rect width="9" height="9" clip-path="circle(1e308px)" transform="scale(99)"/>',
    ],
    [
      'a mask that overflows',
      '<mask id="k" x="1e308" width="1e308"/><rect width="9" height="9" mask="url(#k)" transform="scale(99)"/>',
    ],
    [
      'a viewport that overflows',
      '<svg width="1e-300" height="1e300" viewBox="0 0 1e300 1e-300"><rect width="9" height="9"/></svg>',
    ],
  ])('%s ends in a drawing', (_, body) => {
    const drawing = readSvg(svg(body));
    checkDrawing(drawing);
    expect(drawing.notices.length).toBeGreaterThan(0);
  });

  test('a page whose height overflows has none', () => {
    const drawing = readSvg('<svg xmlns="http://www.w3.org/2000/svg" height="1.7e308in" width="1"/>');
    checkDrawing(drawing);
    expect(drawing.notices.map(({ code }) => code)).toContain('length-unreadable');
  });

  test.each([0.539, 0.5404724409448819])(
    'a circle of %f px has its area, though few chords keep the tolerance',
    (r) => {
      const [shape] = readSvg(svg(`<circle r="${r}"/>`)).shapes;
      expect(signedArea(shape!.region) / (Math.PI * r * r)).toBeCloseTo(1, 9);
    },
  );

  test.each([
    [{ overpour: '1e15in' }],
    [{ level: '1e9m' }],
    [{ sealHours: '1e200d' }],
    [{ feed: '1e-300mm/min' }],
    [{ passDepth: '1e-300mm' }],
    [{ thickness: '1e300mm' }],
  ])('%o is out of range', (input) => {
    expect(() => settleJob({ bit: ['flat:2mm'], ...input })).toThrow(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});
