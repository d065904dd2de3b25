import { expect, test } from 'vitest';
import { limits } from './limits.ts';
import { opacityOf } from './opacity.ts';
import { resinColours } from './resin-colour.ts';

test('black hides best, white worst, other pastes and what is not known in between', () => {
  const depths = ([lab]: readonly [Parameters<typeof opacityOf>[0]]): readonly number[] => {
    const { opaque, faint } = opacityOf(lab);
    return [opaque.value, faint.value];
  };
  expect(depths([resinColours.black.value])).toEqual([0.3, 0.15]);
  expect(depths([resinColours.white.value])).toEqual([1.5, 0.75]);
  expect(depths([resinColours.blue.value])).toEqual([1, 0.3]);
  expect(depths([null])).toEqual(depths([resinColours.red.value]));
});

test('0.1 % of carbon black leaves a twentieth of the floor through about the limit', () => {
  // 5 m²/g in resin of 1.1 g/ml absorbs 5.5 per mm for each 0.1 %; light passes twice
  expect(Math.log(20) / (2 * 5.5)).toBeCloseTo(0.272, 3);
  expect(limits.opaqueDepthBlack.value).toBeGreaterThan(Math.log(20) / (2 * 5.5));
  // through half of the depth e^(−1.5) is left where e^(−3) was
  expect(Math.exp(-1.5)).toBeCloseTo(0.223, 3);
  expect(2 * limits.faintDepthBlack.value).toBe(limits.opaqueDepthBlack.value);
  expect(2 * limits.faintDepthPale.value).toBe(limits.opaqueDepthPale.value);
});

test('a dye is judged by its tint, whatever its colour: a twentieth of its own band is left through 0.24 mm of 0.02 %', () => {
  for (const lab of [null, resinColours.black.value, resinColours.white.value]) {
    expect(opacityOf(lab, 'dye')).toEqual({ opaque: limits.tintDepth, faint: limits.faintTintDepth });
  }
  // Beer's law, light passing twice: 5e4 l/(mol cm), 400 g/mol, resin of 1.1 g/ml, as absorbance per mm
  const absorbancePerMm = (5e4 * ((0.0002 * 1100) / 400)) / 10;
  expect(Math.log10(20) / (2 * absorbancePerMm)).toBeCloseTo(limits.tintDepth.low, 2);
  expect(2 * limits.faintTintDepth.value).toBe(limits.tintDepth.value);
});
