import { endGrainLength } from '@pourproof/geometry';
import { type JobFile, type JobInput, settleJob } from '@pourproof/job';
import { radians } from '@pourproof/plane';
import { judgeDrawing } from '@pourproof/proof';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { glueUps, places } from '../arbitraries.ts';
import { drawingOf, rectangle } from '../support/drawing-of.ts';
import { cases } from '../support/lane.ts';

const FLAT: JobInput = { bit: ['flat:1mm'], depth: '3mm', seal: 'none' };
const report = (drawing: ReturnType<typeof drawingOf>, job: JobInput) =>
  judgeDrawing(drawing, 'test', settleJob({ ...FLAT, ...job })).report;
/** A 40 × 4 mm bar; the 1 mm bit rounds its corners by (4 − π)/4 mm² in all, and no stretch of wall is lost across or along. */
const BAR = drawingOf([rectangle(0, 0, 40, 4)]);

describe('a cut over two blocks', () => {
  const halves: JobInput = {
    board: 'alternating-checkerboard 80x40x20mm poplar walnut square:40mm',
    place: '40mm,20mm',
  };

  test('opens in each block the end grain that its own fibres meet', () => {
    // left half in poplar, fibres along the bar: its end is 4 mm; right half in walnut, fibres across: two sides of 20 mm
    const { endGrain } = report(BAR, halves);
    const [poplar, walnut] = endGrain.byBlock;
    expect(poplar).toMatchObject({ species: 'yellow-poplar', grainDeg: 0 });
    expect(walnut).toMatchObject({ species: 'black walnut', grainDeg: 90 });
    expect(poplar?.wallExposedMm2).toBeCloseTo(4 * 3, 6);
    expect(walnut?.wallExposedMm2).toBeCloseTo(2 * 20 * 3, 6);
    expect(endGrain.wallExposedMm2).toBeCloseTo(132, 6);
  });

  test('lets colour run along each block’s fibres, and not past the glue line', () => {
    const { bleed } = report(BAR, halves);
    const [poplar, walnut] = bleed.blocks;
    // a swept area is the exposed length times the travel where nothing overlaps (parallel sets)
    expect(poplar?.areaMm2).toBeCloseTo(4 * (poplar?.travelMm.median ?? 0), 2);
    expect(walnut?.areaMm2).toBeCloseTo(40 * (walnut?.travelMm.median ?? 0), 2);
    // poplar’s high end reaches past its 20 mm of wood at the left and stops at the edge of the board
    expect(poplar?.travelMm.high).toBeGreaterThan(20);
    // with the wood that the round bit left in two corners, less what flattened arcs miss of it
    const corners = 2 * (1 - Math.PI / 4) * 0.5 ** 2;
    expect(poplar?.areaHighMm2).toBeGreaterThanOrEqual(4 * 20 + corners);
    expect(poplar?.areaHighMm2).toBeLessThan(4 * 20 + corners + 0.01);
  });

  test('is turned counter-clockwise as seen: a quarter turn brings the bar across the poplar’s fibres', () => {
    const plain: JobInput = { board: 'plain 300x180x20mm poplar' };
    expect(report(BAR, plain).endGrain.wallExposedMm2).toBeCloseTo(2 * 4 * 3, 6);
    expect(report(BAR, { ...plain, turn: '90deg' }).endGrain.wallExposedMm2).toBeCloseTo(2 * 40 * 3, 6);
    // 30°: 2·(40·sin 30° + 4·cos 30°), less what four corner arcs of 0.5 mm change: nothing, extents stay
    const slanted = report(drawingOf([[0, 0, 40, 0, 40, 20, 0, 4]]), { ...plain, turn: '30deg' });
    const mirrored = report(drawingOf([[0, 0, 40, 0, 40, 20, 0, 4]]), { grain: '-30deg', wood: 'poplar' });
    expect(slanted.endGrain.wallExposedMm2).toBeCloseTo(mirrored.endGrain.wallExposedMm2, 6);
  });

  test('drinks at floors, not at walls, of an end-grain board', () => {
    const { endGrain, cut } = report(BAR, {
      board: 'end-grain-checkerboard 80x40x20mm maple walnut square:40mm',
      place: '40mm,20mm',
    });
    expect(endGrain.wallExposedMm2).toBe(0);
    expect(endGrain.floorExposedMm2).toBeCloseTo(cut.areaMm2, 6);
  });
});

test('blocks share out walls and floor without rest, wherever the artwork lies on the board', () => {
  const art = drawingOf([
    [0, 0, 30, 0, 30, 3, 50, 3, 50, 5, 30, 5, 30, 8, 0, 8],
    rectangle(10, 12, 33, 21),
    rectangle(60, 0, 7, 40),
  ]);
  fc.assert(
    fc.property(glueUps, places, (board, place) => {
      const { endGrain, cut } = report(art, { board, ...place });
      const sum = (key: 'wallLengthMm' | 'floorAreaMm2' | 'wallExposedMm2'): number =>
        endGrain.byBlock.reduce((total, each) => total + each[key], 0);
      expect(sum('wallLengthMm')).toBeCloseTo(cut.wallLengthMm, 4);
      // booleans join points nearer than the resolve grid: areas hold to it times the length of all joints
      expect(sum('floorAreaMm2')).toBeCloseTo(cut.areaMm2, 2);
      expect(sum('wallExposedMm2')).toBeCloseTo(endGrain.wallExposedMm2, 6);
    }),
    cases(25),
  );
});

test('a streak of black in bare walnut ranks below one in bare poplar, by length and by colour', () => {
  const streaks = (wood: string, colour?: JobFile['colour']) =>
    report(BAR, { wood, ...(colour === undefined ? {} : { colour }) }).bleed.blocks[0]?.streak;
  // ΔE00 of 20 % tint, and 1 − exp(−m V / 2) with V = ΔE00 / 9
  for (const [wood, medianMm] of [
    ['walnut', 1],
    ['poplar', 6],
  ] as const) {
    const streak = streaks(wood, 'black');
    expect(streak?.index).toBeCloseTo(
      1 - Math.exp((-medianMm * Math.min(1, (streak?.deltaE00 ?? 0) / 9)) / 2),
      9,
    );
  }
  expect(streaks('walnut', 'black')?.deltaE00).toBeLessThan(streaks('poplar', 'black')?.deltaE00 ?? 0);
  expect(streaks('walnut')).toBeUndefined();
  expect(streaks('ash', 'black')).toBeUndefined();
});

test('exposure over the blocks is that of all wall elements in three dimensions, at any azimuth and dive', () => {
  const art = drawingOf([
    [0, 0, 30, 0, 30, 3, 50, 3, 50, 5, 30, 5, 30, 8, 0, 8],
    [10, 12, 33, 17, 28, 33, 4, 29],
  ]);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 359 }), fc.integer({ min: 0, max: 90 }), (grainDeg, diveDeg) => {
      const job = settleJob({ ...FLAT, grain: `${grainDeg}deg`, dive: `${diveDeg}deg` });
      const { report: told, picture } = judgeDrawing(art, 'test', job);
      // upright walls: their normals lie in the face, so the dive takes its cosine off all of them, and the floor meets its sine
      const across = endGrainLength(picture.cut, radians(grainDeg));
      expect(told.endGrain.wallExposedMm2).toBeCloseTo(3 * across * Math.cos(radians(diveDeg)), 6);
      expect(told.endGrain.floorExposedMm2).toBeCloseTo(told.cut.areaMm2 * Math.sin(radians(diveDeg)), 6);
    }),
    cases(60),
  );
});

test('the mean exposed length over a full turn of the grain is 2/π of the wall (Cauchy)', () => {
  // 360 evenly spaced angles: the mean of |cos| over them is 2/π to 3e-5
  let sum = 0;
  let wall = 0;
  for (let deg = 0; deg < 360; deg++) {
    const { endGrain } = report(BAR, { grain: `${deg}deg` });
    sum += endGrain.wallExposedMm2;
    // of the flattened outline, as the exposure is
    wall = endGrain.byBlock[0]?.wallAreaMm2 ?? Number.NaN;
  }
  expect(sum / 360 / wall).toBeCloseTo(2 / Math.PI, 4);
});

test('a place of a finding about a wall over two blocks lies in the block that it speaks of', () => {
  // under shellac maple may show a short streak and walnut none; the joint lies 10 mm from the left end of the bar
  const { findings } = report(BAR, {
    board: 'polygons 80x40x20mm',
    block: [
      'maple grain:90deg 0mm,0mm 30mm,0mm 30mm,40mm 0mm,40mm',
      'walnut grain:90deg 30mm,0mm 80mm,0mm 80mm,40mm 30mm,40mm',
    ],
    place: '40mm,20mm',
    seal: 'shellac',
    coats: 1,
    sealHours: '2h',
  });
  const places = findings.find(({ code }) => code === 'visible-bleed-likely')?.where ?? [];
  expect(places).toHaveLength(2);
  for (const { atMm, outline } of places) {
    expect(atMm[0]).toBeLessThan(10);
    expect(Math.max(...outline.flat().map(([x]) => x))).toBeCloseTo(10, 6);
  }
});
