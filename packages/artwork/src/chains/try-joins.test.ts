import { expect, test } from 'vitest';
import { type ChainPiece, joinChains } from './join-chains.ts';
import { openOutlines } from './open-outlines.ts';
import { bestJoin, type OpenGroup } from './try-joins.ts';

const NOW_MM = 0.05;
const piece = (...coords: number[]): ChainPiece => ({ coords });
/** A square of 20 mm with a gap in its upper side. */
const square = (x: number, gapMm: number): ChainPiece =>
  piece(x + 10 + gapMm, 0, x + 20, 0, x + 20, 20, x, 20, x, 0, x + 10, 0);
const group = (...pieces: ChainPiece[]): OpenGroup => ({
  pieces,
  outlines: openOutlines(pieces, joinChains(pieces, NOW_MM), NOW_MM),
});
const best = (...groups: OpenGroup[]) => bestJoin(groups, NOW_MM);

test('the least tolerance that closes the most is offered, up to a hundredth', () => {
  expect(best(group(square(0, 0.3)))).toEqual({
    ...{ toleranceMm: 0.3, closes: 1 },
    areaMm2: expect.closeTo(400, 9),
  });
  expect(best(group(square(0, 0.123)))?.toleranceMm).toBe(0.13);
  expect(best(group(square(0, 0.3), square(40, 0.2)))).toMatchObject({ toleranceMm: 0.3, closes: 2 });
  expect(best(group(square(0, 0.3)), group(square(40, 0.7), square(80, 0.4)))).toEqual({
    ...{ toleranceMm: 0.7, closes: 3 },
    areaMm2: expect.closeTo(1200, 9),
  });
});

test('one that also joins lines which make no outline is of no use', () => {
  // two lines of a hatch whose ends are 0.5 mm apart
  const hatch = [piece(0, 50, 40, 50), piece(0, 50.5, 40, 50.5), piece(0, 51, 40, 51)];
  expect(best(group(square(0, 0.3), square(40, 0.7), ...hatch))).toMatchObject({
    toleranceMm: 0.3,
    closes: 1,
  });
  expect(best(group(square(0, 0.7), ...hatch))).toBeNull();
  expect(best(group(...hatch))).toBeNull();
});
