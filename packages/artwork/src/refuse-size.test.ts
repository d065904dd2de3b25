import { type Drawing, packRings } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { ArtworkError } from './artwork-error.ts';
import { refuseSize } from './refuse-size.ts';

const wide = (widthMm: number): Drawing => ({
  format: 'svg',
  scaleSource: 'width="1m"',
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
