import { settleJob } from '@pourproof/job';
import { type CleanRegion, type Drawing, ringCoords, transformRings, translation } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyPolygon } from '../../../../tests/arbitraries.ts';
import { drawingOf } from '../../../../tests/support/drawing-of.ts';
import { cases } from '../../../../tests/support/lane.ts';
import { lettered } from '../../../../tests/support/shapes/lettered.ts';
import { scaledDrawing } from '../fixes/changed-drawing.ts';
import { type Measured, measure } from '../measured.ts';
import { type Losses, lossesOf } from './losses.ts';
import { LossesByPart } from './losses-by-part.ts';

/** A drawing of regions as they are, far from each other. */
function sideBySide(regions: readonly CleanRegion[]): Drawing {
  const drawing = drawingOf(regions.map((region) => [...ringCoords(region, 0)]));
  return {
    ...drawing,
    shapes: drawing.shapes.map((shape, k) => ({
      ...shape,
      region: { ...transformRings(translation(1000 * k, 0), regions[k] as CleanRegion), fillRule: 'nonzero' },
    })),
  };
}

function measured(drawing: Drawing, bitMm: number): Measured {
  return measure(drawing, settleJob({ bit: [`flat:${bitMm}mm`], depth: '1mm', seal: 'epoxy' }));
}

/** How grave losses are: equal for equal ones in other places. */
function told({ lost, ends }: Losses): readonly string[] {
  return [
    ...lost.map(({ kind }) => kind),
    ...ends.map(({ severity, shortMm }) => `${severity} ${shortMm.toFixed(4)}`),
  ];
}

test('parts by themselves lose what they lose together, equal ones alike', () => {
  fc.assert(
    fc.property(anyPolygon, anyPolygon, fc.integer({ min: 3, max: 30 }), (one, other, tenths) => {
      const whole = measured(sideBySide([one, other, one]), tenths / 10);
      const byPart = new LossesByPart(whole).of({ diameterMm: tenths / 10, factor: 1 });
      expect(new Set(byPart.flatMap(told))).toEqual(new Set(told(lossesOf(whole))));
    }),
    cases(10),
  );
});

test('what a search finds for the parts that bind will do for all, and a step less will not', async () => {
  const regions = await Promise.all([...'Age'].map((letter) => lettered(letter, 'lora-400.ttf', 15, 0.005)));
  const drawing = sideBySide(regions);
  const all = measured(drawing, 1.2);
  const willDo = ({ lost }: Losses): boolean => lost.length === 0;
  const holds = (hundredths: number): boolean =>
    willDo(lossesOf(measured(scaledDrawing(drawing, hundredths / 100), 1.2)));
  const found = new LossesByPart(all).found((isEnough) => {
    for (let hundredths = 100; hundredths < 500; hundredths++) {
      const bit = { diameterMm: 1.2, factor: hundredths / 100 };
      if (isEnough(bit)) {
        return bit;
      }
    }
    return null;
  }, willDo);
  const hundredths = Math.round(100 * (found?.factor ?? 0));
  expect(hundredths).toBeGreaterThan(100);
  expect(holds(hundredths)).toBe(true);
  expect(holds(hundredths - 1)).toBe(false);
});

test('nothing is found where one part binds whatever is tried', () => {
  const drawing = drawingOf([
    [0, 0, 20, 0, 20, 6, 0, 6],
    [0, 40, 20, 40, 20, 40.1, 0, 40.1],
  ]);
  const left = new LossesByPart(measured(drawing, 2));
  const bits = [1.5, 1, 0.5].map((diameterMm) => ({ diameterMm, factor: 1 }));
  expect(
    left.found(
      (isEnough) => bits.find(isEnough) ?? null,
      ({ lost }) => lost.length === 0,
    ),
  ).toBeNull();
});
