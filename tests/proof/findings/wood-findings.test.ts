import type { JobInput } from '@pourproof/job';
import { describe, expect, test } from 'vitest';
import { CALM, CALM_ON_BOARD, findOnCalm, POCKET } from '../../support/calm-job.ts';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf } from '../../support/fix-of.ts';

describe('bleed-reaches-neighbour', () => {
  const bars = (gap: number) => drawingOf([rectangle(0, 0, 20, 10), rectangle(20 + gap, 0, 20, 10)]);
  // bare cherry: a median of 3 mm along the fibres
  const bare: JobInput = { wood: 'cherry', seal: 'none' };

  test('fires where the wood along the fibres is shorter than the median travel', () => {
    const finding = findOnCalm(bars(2.8), 'bleed-reaches-neighbour', bare);
    expect(finding?.measured.value).toBeCloseTo(2.8, 6);
    expect(finding?.limit.value).toBeCloseTo(3, 6);
    expect(finding?.where[0]?.atMm[0]).toBeCloseTo(21.4, 3);
    const widen = fixOf(finding, 'widen')?.byMm ?? 0;
    expect(findOnCalm(bars(2.8 + widen), 'bleed-reaches-neighbour', bare)).toBeUndefined();
  });

  test('is silent a little further apart, or across the fibres', () => {
    expect(findOnCalm(bars(3.1), 'bleed-reaches-neighbour', bare)).toBeUndefined();
    expect(findOnCalm(bars(2.8), 'bleed-reaches-neighbour', { ...bare, grain: '90deg' })).toBeUndefined();
  });

  test('is silent on an inner corner whose wood runs out to a point across the fibres', () => {
    const chevron = [0, 0, 10, 30, 20, 0, 30, 0, 15, 50, 5, 50, -10, 0];
    expect(findOnCalm(drawingOf([chevron]), 'bleed-reaches-neighbour', bare)).toBeUndefined();
  });

  test('is silent on a counter that ends bluntly, where the bars of a letter meet', () => {
    // an A without its foot: the wood between its legs is 0.1 mm wide at the top
    const legs = [0, 30, 9, 0, 11, 0, 20, 30, 16, 30, 10.05, 8, 9.95, 8, 4, 30];
    expect(findOnCalm(drawingOf([legs]), 'bleed-reaches-neighbour', bare)).toBeUndefined();
  });

  test('is silent where a glue line parts the strokes', () => {
    const job = { ...CALM, wood: undefined, seal: 'none' };
    const board = (square: string) => `checkerboard 300x300x20mm cherry cherry square:${square}`;
    // the gap's middle is the artwork's middle; with 150 mm squares it lies on a joint
    expect(findOnCalm(bars(2.8), 'bleed-reaches-neighbour', { board: board('150mm') }, job)).toBeUndefined();
    expect(findOnCalm(bars(2.8), 'bleed-reaches-neighbour', { board: board('300mm') }, job)).toBeDefined();
  });
});

describe('visible-bleed-likely', () => {
  const shellac: JobInput = { wood: 'maple', seal: 'shellac', sealHours: '24h' };

  test('cautions of a 0.7 mm streak by its honest chance: maple under shellac', () => {
    const finding = findOnCalm(POCKET, 'visible-bleed-likely', shellac);
    expect(finding?.severity).toBe('caution');
    // 1 − Φ((ln 0.45 − ln 0.7) / 0.860)
    expect(finding?.measured.value).toBeCloseTo(69.6, 0);
  });

  test('is silent where it is clean, where the graver finding speaks, and where the colour hides', () => {
    expect(findOnCalm(POCKET, 'visible-bleed-likely', { ...shellac, wood: 'walnut' })).toBeUndefined();
    expect(findOnCalm(POCKET, 'visible-bleed-likely', { ...shellac, seal: 'none' })).toBeUndefined();
    expect(findOnCalm(POCKET, 'visible-bleed-likely', { ...shellac, colour: 'white' })).toBeUndefined();
    expect(findOnCalm(POCKET, 'visible-bleed-likely', { ...shellac, colour: 'black' })).toBeDefined();
  });

  test('tells of slanted walls too, though square ones would be a matter for the graver finding', () => {
    // bare walnut: 1 mm from a square wall, 0.71 mm from one at 45°
    const diamond = drawingOf([rectangle(-20, -3, 40, 6)], { turnDeg: 45 });
    const bare: JobInput = { seal: 'none', bit: ['flat:0.5mm'] };
    expect(findOnCalm(diamond, 'high-bleed-wall', bare)).toBeUndefined();
    // 1 − Φ((ln 0.45 − ln 0.7071) / 0.860)
    expect(findOnCalm(diamond, 'visible-bleed-likely', bare)?.measured.value).toBeCloseTo(70.04, 1);
  });
});

describe('high-bleed-wall goes by what is wide enough to be seen', () => {
  const disc = (radius: number) =>
    drawingOf([
      Array.from({ length: 256 }, (_, k) => (2 * Math.PI * k) / 256).flatMap((angle) => [
        radius * Math.cos(angle),
        radius * Math.sin(angle),
      ]),
    ]);
  const bare: JobInput = { seal: 'none', bit: ['flat:0.5mm'] };

  test('the reach that it tells is kept over half a millimetre and a stain of a square millimetre', () => {
    for (const [seal, medianMm] of [
      ['none', 3],
      ['sanding-sealer', 1.8],
    ] as const) {
      const finding = findOnCalm(disc(0.6), 'high-bleed-wall', { ...bare, seal, wood: 'cherry' });
      // the front with more reach goes from −θ to θ: it is 2 r sin θ wide, its stain is median r (θ + sin θ cos θ)
      const theta = Math.acos((finding?.measured.value ?? Number.NaN) / medianMm);
      const widthMm = 2 * 0.6 * Math.sin(theta);
      const stainMm2 = medianMm * 0.6 * (theta + Math.sin(theta) * Math.cos(theta));
      expect(Math.min(widthMm / 0.5, stainMm2)).toBeCloseTo(1, 1);
    }
  });

  test('a front of severe bleed too narrow to be seen is no stop, a wide one is', () => {
    const maple: JobInput = { seal: 'shellac', bit: ['flat:0.5mm'], wood: 'poplar' };
    expect(findOnCalm(disc(0.6), 'high-bleed-wall', maple)?.severity).toBe('caution');
    expect(findOnCalm(disc(4), 'high-bleed-wall', maple)?.severity).toBe('stop');
  });

  test('severe bleed that hides in the wood is no stop', () => {
    const maple: JobInput = { ...bare, wood: 'maple' };
    expect(findOnCalm(POCKET, 'high-bleed-wall', { ...maple, colour: 'black' })?.severity).toBe('stop');
    expect(findOnCalm(POCKET, 'high-bleed-wall', maple)?.severity).toBe('stop');
    expect(findOnCalm(POCKET, 'high-bleed-wall', { ...maple, colour: 'white' })?.severity).toBe('caution');
  });
});

describe('short-grain-will-break', () => {
  const rib = (width: number) => drawingOf([rectangle(0, 0, 20, 30), rectangle(20 + width, 0, 20, 30)]);

  test('fires on a rib of 1.4 mm with the fibres across it, and the wood asked for clears it', () => {
    const finding = findOnCalm(rib(1.4), 'short-grain-will-break', { grain: '0deg' });
    expect(finding?.measured).toEqual({ value: expect.closeTo(1.4, 6), quantity: 'width', unit: 'mm' });
    expect(finding?.acrossGrain).toBe(true);
    expect(finding?.limit.value).toBe(1.5);
    const widen = fixOf(finding, 'widen')?.byMm ?? 0;
    expect(findOnCalm(rib(1.4 + widen), 'short-grain-will-break', { grain: '0deg' })).toBeUndefined();
  });

  test('asks for half of the height across the fibres, for a third along them', () => {
    expect(findOnCalm(rib(1.4), 'short-grain-will-break', { depth: '6mm' })?.limit.value).toBe(3);
    expect(
      findOnCalm(rib(1.4), 'short-grain-will-break', { depth: '6mm', grain: '90deg' })?.limit.value,
    ).toBe(2);
  });

  test('offers the depth that a wall of this thickness stands, where there is one', () => {
    const thick = findOnCalm(rib(2), 'short-grain-will-break', { depth: '6mm', grain: '0deg' });
    expect(fixOf(thick, 'cut-shallower')).toEqual({ do: 'cut-shallower', toMm: 4, clears: true });
    expect(findOnCalm(rib(2), 'short-grain-will-break', { depth: '4mm', grain: '0deg' })).toBeUndefined();
  });

  test('is silent on the same rib along the fibres, and on inner corners that run out to a point', () => {
    expect(findOnCalm(rib(1.4), 'short-grain-will-break', { grain: '90deg' })).toBeUndefined();
    const chevron = [0, 0, 30, 20, 60, 0, 60, 10, 30, 30, 0, 10];
    expect(findOnCalm(drawingOf([chevron]), 'short-grain-will-break')).toBeUndefined();
  });
});

describe('floor-drinks', () => {
  test('fires on an unsealed end-grain floor, and the seal that it names clears it', () => {
    const finding = findOnCalm(POCKET, 'floor-drinks', { wood: 'maple', seal: 'none', dive: '90deg' });
    expect(finding?.severity).toBe('caution');
    expect(fixOf(finding, 'change-seal')?.seal).toBe('epoxy');
    expect(findOnCalm(POCKET, 'floor-drinks', { wood: 'maple', dive: '90deg' })).toBeUndefined();
  });

  test('is silent on a face-grain board with a little dive', () => {
    expect(
      findOnCalm(POCKET, 'floor-drinks', { wood: 'maple', seal: 'none', dive: '10deg' }),
    ).toBeUndefined();
  });
});

describe('board-not-flat', () => {
  /** A board that is cupped: the middle is higher than the edges by `cup` at its full height. */
  const cupped = (cup: number): JobInput => ({
    reading: [
      '0mm,0mm 20mm',
      '300mm,0mm 20mm',
      '0mm,180mm 20mm',
      '300mm,180mm 20mm',
      `0mm,90mm ${20 + cup}mm`,
      `300mm,90mm ${20 + cup}mm`,
    ],
  });
  const tall = drawingOf([rectangle(0, 0, 20, 180)]);

  test('fires when the face falls by more than levelling takes', () => {
    const finding = findOnCalm(tall, 'board-not-flat', cupped(0.8), CALM_ON_BOARD);
    expect(finding?.measured.value).toBeCloseTo(0.8, 6);
    expect(finding?.where).toHaveLength(2);
    expect(
      findOnCalm(tall, 'board-not-flat', cupped(0.8), { ...CALM_ON_BOARD, level: '0.85mm' }),
    ).toBeUndefined();
  });

  test('is silent on a board that is flat enough, and on a small artwork in its middle', () => {
    expect(findOnCalm(tall, 'board-not-flat', cupped(0.4), CALM_ON_BOARD)).toBeUndefined();
    expect(
      findOnCalm(drawingOf([rectangle(0, 0, 20, 40)]), 'board-not-flat', cupped(0.8), CALM_ON_BOARD),
    ).toBeUndefined();
  });
});

describe('off-the-board', () => {
  test('fires where the cut comes into the margin, and the move that it names clears it', () => {
    const job = { margin: '10mm', place: '25mm,90mm' };
    const finding = findOnCalm(POCKET, 'off-the-board', job, CALM_ON_BOARD);
    // 40 mm wide round x = 25: 5 mm of it lie within 10 mm of the edge, 20 mm high
    // arcs are flattened within 5 µm over 4.7 mm of arc
    expect(finding?.measured.value).toBeCloseTo(5 * 20 - 2 * (1 - Math.PI / 4) * 1.5 ** 2, 1);
    expect(finding?.fix.options).toEqual([{ do: 'move', rightMm: 5, downMm: 0, clears: true }]);
    expect(
      findOnCalm(POCKET, 'off-the-board', { ...job, place: '30.01mm,90mm' }, CALM_ON_BOARD),
    ).toBeUndefined();
  });

  test('fires on a hole and on a groove, and is silent beside them', () => {
    const hole = (x: number) => ({ keepClear: [`hole ${x}mm,90mm 8mm`] });
    // the pocket reaches from x = 130 to 170
    expect(findOnCalm(POCKET, 'off-the-board', hole(172), CALM_ON_BOARD)?.severity).toBe('stop');
    expect(findOnCalm(POCKET, 'off-the-board', hole(175), CALM_ON_BOARD)).toBeUndefined();
    const groove = (y: number) => ({ keepClear: [`groove 0mm,${y}mm 300mm,${y}mm 6mm`] });
    // and from y = 80 to 100
    expect(findOnCalm(POCKET, 'off-the-board', groove(102), CALM_ON_BOARD)).toBeDefined();
    expect(findOnCalm(POCKET, 'off-the-board', groove(103.5), CALM_ON_BOARD)).toBeUndefined();
  });
});

describe('oil-in-wood', () => {
  test('is a stop with the cleaning steps on a treated board, a caution in an oily wood', () => {
    const treated = findOnCalm(POCKET, 'oil-in-wood', { oiled: true });
    expect(treated?.severity).toBe('stop');
    expect(treated?.fix.options.length).toBeGreaterThanOrEqual(3);
    expect(findOnCalm(POCKET, 'oil-in-wood', { wood: 'teak' })?.severity).toBe('caution');
  });

  test('is silent on a clean walnut board', () => {
    expect(findOnCalm(POCKET, 'oil-in-wood')).toBeUndefined();
  });
});
