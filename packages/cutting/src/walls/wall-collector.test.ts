import { expect, test } from 'vitest';
import { WallCollector } from './wall-collector.ts';

test('an element whose turn is lost to rounding has the exposure of its one direction', () => {
  const collector = new WallCollector({ grainRad: Math.PI / 6 });
  collector.turning(1, 2, 0.3, 0.3, 0, 1e-16);
  // y runs down and the grain counter-clockwise as seen, so the fibre lies at −30°
  expect(collector.collected().exposures[0]).toBeCloseTo(Math.cos(0.3 + Math.PI / 6), 12);
});
