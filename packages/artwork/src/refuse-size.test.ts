import {
  type Bounds,
  type Drawing,
  EMPTY_BOUNDS,
  packRings,
  type TextInUnits,
  textInUnits,
} from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { ArtworkError } from './artwork-error.ts';
import { readArtwork } from './read.ts';
import { refuseSize, sizeGuard } from './refuse-size.ts';

const wide = (widthMm: number): Drawing => ({
  format: 'svg',
  scaleSource: textInUnits('width="1m"'),
  notices: [],
  toleranceMm: 0.005,
  shapes: [
    {
      region: {
        ...packRings([[0, 0, widthMm, 0, widthMm, widthMm / 2, 0, widthMm / 2]]),
        fillRule: 'nonzero',
      },
      colour: null,
      layer: null,
    } as unknown as Drawing['shapes'][number],
  ],
});
const refusal = (widthMm: number): string => {
  try {
    refuseSize(wide(widthMm), 'sign.svg');
    return '';
  } catch (error) {
    expect(error).toBeInstanceOf(ArtworkError);
    return `${(error as ArtworkError).code}: ${(error as ArtworkError).message}`;
  }
};

test('artwork longer than any board is refused with what it would be in other units', () => {
  const text = refusal(224_000);
  expect(text).toMatch(
    /^size-of-no-board: sign\.svg is 224000 mm × 112000 mm \(width="1m"\), and no board is longer than 10 m/u,
  );
  expect(text).toContain('22400 mm × 11200 mm if millimetres were read as centimetres');
  // 224 000 / 25.4 and / 1000
  expect(text).toContain('8819 mm × 4409 mm if millimetres were read as inches');
  expect(text).toContain('224 mm × 112 mm if millimetres were read as metres');
});

test('artwork too small for any bit is refused the other way round', () => {
  const text = refusal(0.05);
  expect(text).toContain('no bit cuts less than 0.1 mm');
  expect(text).toContain('0.5 mm × 0.25 mm if centimetres were read as millimetres');
  expect(text).toContain('50 mm × 25 mm if metres were read as millimetres');
});

test('sizes at the ends are taken', () => {
  expect([10_000, 0.1, 120].map(refusal)).toEqual(['', '', '']);
  expect(refusal(10_001)).not.toBe('');
  expect(refusal(0.099)).not.toBe('');
});

describe('before anything is flattened', () => {
  const svg = (body: string, size = '100mm'): string =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}" viewBox="0 0 100 100">${body}</svg>`;
  const dxf = (...pairs: (string | number)[]): string =>
    `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${pairs.join('\n')}\n0\nENDSEC\n0\nEOF\n`;
  /** Boxes that the guard was asked about, and what the reader threw. */
  const asked = (source: string, options = {}): { boxes: Bounds[]; error: unknown } => {
    const boxes: Bounds[] = [];
    const guard = sizeGuard('sign');
    const refuseBounds = (box: Bounds, from: TextInUnits): void => {
      boxes.push(box);
      guard(box, from);
    };
    try {
      readArtwork(new TextEncoder().encode(source), 'sign', { ...options, refuseBounds });
      return { boxes, error: null };
    } catch (error) {
      return { boxes, error };
    }
  };
  const refused = expect.objectContaining({ code: 'size-of-no-board' });

  test('a file in which nothing is drawn has no size to refuse', () => {
    expect(() => sizeGuard('sign')(EMPTY_BOUNDS, textInUnits('nothing'))).not.toThrow();
    // a block that is never placed, and one that is and holds nothing
    expect(asked(dxf(0, 'INSERT', 2, 'gone', 10, 1e9, 20, 0)).error).toBeNull();
  });

  test.each([
    ['a circle', svg('<circle r="30000"/><circle r="30000"/>')],
    ['a page in the wrong unit', svg('<path d="M0 0C50 90 90 50 90 0z"/>', '300m'.replace('m', '00cm'))],
    ['a circle of a DXF file', dxf(0, 'CIRCLE', 10, 0, 20, 0, 40, 112_000)],
    ['an arc', dxf(0, 'LWPOLYLINE', 90, 2, 70, 1, 10, 0, 20, 0, 42, 1, 10, 90_000, 20, 0, 42, 1)],
  ])('%s beyond any board is refused at the first box', (_, source) => {
    const { boxes, error } = asked(source);
    expect(boxes).toHaveLength(1);
    expect(error).toEqual(refused);
  });

  test.each([
    [
      'what a clip hides',
      svg(
        '<clipPath id="c"><rect width="50" height="50"/></clipPath><circle r="30000" clip-path="url(#c)"/>',
      ),
    ],
    [
      'the light of a mask',
      svg(
        '<mask id="k" x="-9" y="-9" width="20" height="20"><circle r="30000" fill="#fff"/></mask><rect width="50" height="50" mask="url(#k)"/>',
      ),
    ],
    ['what is not painted', svg('<circle r="30000" fill="none"/><rect width="50" height="50"/>')],
    ['a small drawing far out', svg('<circle cx="30000" r="30"/>')],
    ['a small drawing of a DXF file far out', dxf(0, 'CIRCLE', 10, 90_000, 20, 0, 40, 30)],
  ])('%s is not', (_, source) => {
    expect(asked(source).error).toBeNull();
  });

  test.each([
    ['an SVG', svg('<circle r="30000"/>')],
    ['a DXF', dxf(0, 'CIRCLE', 10, 0, 20, 0, 40, 112_000)],
  ])('%s that is brought to a size is not', (_, source) => {
    expect(asked(source, { widthMm: 300 }).error).toBeNull();
  });
});
