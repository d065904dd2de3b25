import { type JobInput, readMaterialsFile, settleJob } from '@pourproof/job';
import { type FindingCode, judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf } from '../../support/fix-of.ts';

/** A job in which nothing speaks against anything. */
const CALM: JobInput = {
  bit: ['flat:3mm'],
  depth: '3mm',
  wood: 'walnut',
  seal: 'epoxy',
  coats: 1,
  sealHours: '24h',
  // so that there is enough to weigh
  boards: 10,
};
const CALM_ON_BOARD: JobInput = { ...CALM, wood: undefined, board: 'plain 300x180x20mm walnut' };
const find = (
  drawing: ReturnType<typeof drawingOf>,
  code: FindingCode,
  job: JobInput = {},
  calm: JobInput = CALM,
) =>
  judgeDrawing(drawing, 'test', settleJob({ ...calm, ...job })).report.findings.find(
    (finding) => finding.code === code,
  );

const POCKET = drawingOf([rectangle(0, 0, 40, 20)]);

test('the calm job is clear', () => {
  expect(judgeDrawing(POCKET, 'test', settleJob(CALM)).report.verdict).toBe('clear');
});

describe('ghost-stroke', () => {
  // 3 coats of epoxy are 0.3 mm of film: half clear at 2·0.3·3 / (1.5 − 0.3) = 1.5 mm
  const coats = { coats: 3, bit: ['flat:0.5mm'] };

  test('fires on a stroke that three coats fill by half, and fewer coats clear it', () => {
    const finding = find(drawingOf([rectangle(0, 0, 40, 1.45)]), 'ghost-stroke', coats);
    expect(finding?.severity).toBe('caution');
    // t (w + 2 D) / (w D)
    expect(finding?.measured.value).toBeCloseTo((100 * 0.3 * (1.45 + 6)) / (1.45 * 3), 6);
    const fewer = fixOf(finding, 'fewer-coats')?.coats ?? 0;
    expect(
      find(drawingOf([rectangle(0, 0, 40, 1.45)]), 'ghost-stroke', { ...coats, coats: fewer }),
    ).toBeUndefined();
  });

  test('is a stop where the film alone fills the stroke', () => {
    // 2·0.3·3 / (3 − 0.3) = 0.667 mm
    expect(find(drawingOf([rectangle(0, 0, 40, 0.6)]), 'ghost-stroke', coats)?.severity).toBe('stop');
  });

  test('goes by the narrowest of several strokes, in whatever order they come', () => {
    const [wide, narrow] = [rectangle(0, 0, 40, 1.45), rectangle(0, 10, 40, 0.6)];
    for (const rings of [
      [wide, narrow],
      [narrow, wide],
    ]) {
      expect(find(drawingOf(rings), 'ghost-stroke', coats)?.severity).toBe('stop');
    }
  });

  test('is silent on a stroke a little wider', () => {
    expect(find(drawingOf([rectangle(0, 0, 40, 1.55)]), 'ghost-stroke', coats)).toBeUndefined();
  });
});

describe('sands-through', () => {
  test('offers no depth that a bit or the board does not have', () => {
    const deepens = (job: JobInput): boolean =>
      find(POCKET, 'sands-through', { depth: '1.2mm', level: '0.5mm', ...job })?.fix.options.some(
        (option) => option.do === 'deepen',
      ) ?? false;
    expect(deepens({ bit: ['flat:3mm'] })).toBe(true);
    expect(deepens({ bit: ['flat:3mm:length 1.3mm'] })).toBe(false);
  });

  test('fires where levelling leaves less than 1 mm of colour, and each way out clears it', () => {
    const shallow = { depth: '1.5mm', level: '0.6mm' };
    const finding = find(POCKET, 'sands-through', shallow);
    expect(finding?.severity).toBe('caution');
    // 1.5 − 0.6 − 2 % of 1.5 − 0.1·(20 + 3)/20
    expect(finding?.measured.value).toBeCloseTo(1.5 - 0.6 - 0.03 - 0.115, 6);
    expect(
      find(POCKET, 'sands-through', {
        ...shallow,
        depth: `${1.5 + (fixOf(finding, 'deepen')?.byMm ?? 0)}mm`,
      }),
    ).toBeUndefined();
    expect(
      find(POCKET, 'sands-through', {
        ...shallow,
        level: `${0.6 - (fixOf(finding, 'level-less')?.byMm ?? 0)}mm`,
      }),
    ).toBeUndefined();
  });

  test('offers another way of levelling that takes no more off at its upper end than there is', () => {
    const byPlaner = { depth: '1.5mm', level: '0.3mm', levelBy: 'planer' } as const;
    const finding = find(POCKET, 'sands-through', byPlaner);
    expect(fixOf(finding, 'level-by')).toEqual({ do: 'level-by', method: 'drum', clears: true });
    expect(find(POCKET, 'sands-through', { ...byPlaner, levelBy: 'drum' })).toBeUndefined();
    // a drum takes up to 1 mm off
    const shallower = find(POCKET, 'sands-through', { ...byPlaner, depth: '1.1mm' });
    expect(shallower).toBeDefined();
    expect(fixOf(shallower, 'level-by')).toBeUndefined();
  });

  test('is a stop when nothing is left', () => {
    const finding = find(POCKET, 'sands-through', { depth: '1.5mm', level: '1.5mm' });
    expect(finding?.severity).toBe('stop');
    expect(finding?.measured).toEqual({ value: 0, quantity: 'depth', unit: 'mm' });
  });

  test('is silent at the usual depth and levelling', () => {
    expect(find(POCKET, 'sands-through', { depth: '3mm', level: '1mm' })).toBeUndefined();
  });
});

describe('bleed-reaches-neighbour', () => {
  const bars = (gap: number) => drawingOf([rectangle(0, 0, 20, 10), rectangle(20 + gap, 0, 20, 10)]);
  // bare cherry: a median of 3 mm along the fibres
  const bare: JobInput = { wood: 'cherry', seal: 'none' };

  test('fires where the wood along the fibres is shorter than the median travel', () => {
    const finding = find(bars(2.8), 'bleed-reaches-neighbour', bare);
    expect(finding?.measured.value).toBeCloseTo(2.8, 6);
    expect(finding?.limit.value).toBeCloseTo(3, 6);
    expect(finding?.where[0]?.atMm[0]).toBeCloseTo(21.4, 3);
    const widen = fixOf(finding, 'widen')?.byMm ?? 0;
    expect(find(bars(2.8 + widen), 'bleed-reaches-neighbour', bare)).toBeUndefined();
  });

  test('is silent a little further apart, or across the fibres', () => {
    expect(find(bars(3.1), 'bleed-reaches-neighbour', bare)).toBeUndefined();
    expect(find(bars(2.8), 'bleed-reaches-neighbour', { ...bare, grain: '90deg' })).toBeUndefined();
  });

  test('is silent on an inner corner whose wood runs out to a point across the fibres', () => {
    const chevron = [0, 0, 10, 30, 20, 0, 30, 0, 15, 50, 5, 50, -10, 0];
    expect(find(drawingOf([chevron]), 'bleed-reaches-neighbour', bare)).toBeUndefined();
  });

  test('is silent on a counter that ends bluntly, where the bars of a letter meet', () => {
    // an A without its foot: the wood between its legs is 0.1 mm wide at the top
    const legs = [0, 30, 9, 0, 11, 0, 20, 30, 16, 30, 10.05, 8, 9.95, 8, 4, 30];
    expect(find(drawingOf([legs]), 'bleed-reaches-neighbour', bare)).toBeUndefined();
  });

  test('is silent where a glue line parts the strokes', () => {
    const job = { ...CALM, wood: undefined, seal: 'none' };
    const board = (square: string) => `checkerboard 300x300x20mm cherry cherry square:${square}`;
    // the gap's middle is the artwork's middle; with 150 mm squares it lies on a joint
    expect(find(bars(2.8), 'bleed-reaches-neighbour', { board: board('150mm') }, job)).toBeUndefined();
    expect(find(bars(2.8), 'bleed-reaches-neighbour', { board: board('300mm') }, job)).toBeDefined();
  });
});

describe('visible-bleed-likely', () => {
  const shellac: JobInput = { wood: 'maple', seal: 'shellac', sealHours: '24h' };

  test('cautions of a 0.7 mm streak by its honest chance: maple under shellac', () => {
    const finding = find(POCKET, 'visible-bleed-likely', shellac);
    expect(finding?.severity).toBe('caution');
    // 1 − Φ((ln 0.45 − ln 0.7) / 0.860)
    expect(finding?.measured.value).toBeCloseTo(69.6, 0);
  });

  test('is silent where it is clean, where the graver finding speaks, and where the colour hides', () => {
    expect(find(POCKET, 'visible-bleed-likely', { ...shellac, wood: 'walnut' })).toBeUndefined();
    expect(find(POCKET, 'visible-bleed-likely', { ...shellac, seal: 'none' })).toBeUndefined();
    expect(find(POCKET, 'visible-bleed-likely', { ...shellac, colour: 'white' })).toBeUndefined();
    expect(find(POCKET, 'visible-bleed-likely', { ...shellac, colour: 'black' })).toBeDefined();
  });

  test('tells of slanted walls too, though square ones would be a matter for the graver finding', () => {
    // bare walnut: 1 mm from a square wall, 0.71 mm from one at 45°
    const diamond = drawingOf([rectangle(-20, -3, 40, 6)], { turnDeg: 45 });
    const bare: JobInput = { seal: 'none', bit: ['flat:0.5mm'] };
    expect(find(diamond, 'high-bleed-wall', bare)).toBeUndefined();
    // 1 − Φ((ln 0.45 − ln 0.7071) / 0.860)
    expect(find(diamond, 'visible-bleed-likely', bare)?.measured.value).toBeCloseTo(70.04, 1);
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
      const finding = find(disc(0.6), 'high-bleed-wall', { ...bare, seal, wood: 'cherry' });
      // the front with more reach goes from −θ to θ: it is 2 r sin θ wide, its stain is median r (θ + sin θ cos θ)
      const theta = Math.acos((finding?.measured.value ?? Number.NaN) / medianMm);
      const widthMm = 2 * 0.6 * Math.sin(theta);
      const stainMm2 = medianMm * 0.6 * (theta + Math.sin(theta) * Math.cos(theta));
      expect(Math.min(widthMm / 0.5, stainMm2)).toBeCloseTo(1, 1);
    }
  });

  test('a front of severe bleed too narrow to be seen is no stop, a wide one is', () => {
    const maple: JobInput = { seal: 'shellac', bit: ['flat:0.5mm'], wood: 'poplar' };
    expect(find(disc(0.6), 'high-bleed-wall', maple)?.severity).toBe('caution');
    expect(find(disc(4), 'high-bleed-wall', maple)?.severity).toBe('stop');
  });

  test('severe bleed that hides in the wood is no stop', () => {
    const maple: JobInput = { ...bare, wood: 'maple' };
    expect(find(POCKET, 'high-bleed-wall', { ...maple, colour: 'black' })?.severity).toBe('stop');
    expect(find(POCKET, 'high-bleed-wall', maple)?.severity).toBe('stop');
    expect(find(POCKET, 'high-bleed-wall', { ...maple, colour: 'white' })?.severity).toBe('caution');
  });
});

describe('a number inside its own doubt', () => {
  test('asks for a coupon of the job’s depth before anything else', () => {
    for (const [code, job] of [
      ['high-bleed-wall', { wood: 'cherry', seal: 'none' }],
      ['visible-bleed-likely', { wood: 'maple', seal: 'shellac' }],
      ['floor-drinks', { wood: 'walnut', seal: 'none', dive: '90deg' }],
    ] as const) {
      expect(find(POCKET, code, job)?.fix.options[0]).toEqual({
        do: 'test-coupon',
        slots: 3,
        lengthMm: 30,
        depthMm: 3,
        clears: false,
      });
    }
  });

  test('but not where the travel is far beyond every limit', () => {
    const drinks = { schema: 'pourproof/materials@1', woods: { walnut: { bleedPriorMm: 20 } } };
    const settled = settleJob(
      { ...CALM, seal: 'none' },
      { materials: readMaterialsFile(drinks, 'materials.json') },
    );
    const far = judgeDrawing(POCKET, 'test', settled).report.findings.find(
      ({ code }) => code === 'high-bleed-wall',
    );
    expect(far?.severity).toBe('stop');
    expect(fixOf(far, 'test-coupon')).toBeUndefined();
  });

  test('asks for slots near the board’s end and far from it where viscosity and trapped air differ', () => {
    const slow = { wood: 'cherry', seal: 'shellac', resin: 'deep-pour' } as const;
    const tells = (job: JobInput) => fixOf(find(POCKET, 'high-bleed-wall', job), 'test-coupon');
    expect(tells(slow)).toMatchObject({ slots: 6, tellsApart: { nearEndMm: 20, farMm: 100 } });
    expect(tells({ ...slow, resin: 'coating' })?.tellsApart).toBeUndefined();
    // no air is trapped in red oak
    expect(tells({ ...slow, wood: 'red-oak' })?.tellsApart).toBeUndefined();
  });
});

describe('short-grain-will-break', () => {
  const rib = (width: number) => drawingOf([rectangle(0, 0, 20, 30), rectangle(20 + width, 0, 20, 30)]);

  test('fires on a rib of 1.4 mm with the fibres across it, and the wood asked for clears it', () => {
    const finding = find(rib(1.4), 'short-grain-will-break', { grain: '0deg' });
    expect(finding?.measured).toEqual({ value: expect.closeTo(1.4, 6), quantity: 'width', unit: 'mm' });
    expect(finding?.acrossGrain).toBe(true);
    expect(finding?.limit.value).toBe(1.5);
    const widen = fixOf(finding, 'widen')?.byMm ?? 0;
    expect(find(rib(1.4 + widen), 'short-grain-will-break', { grain: '0deg' })).toBeUndefined();
  });

  test('asks for half of the height across the fibres, for a third along them', () => {
    expect(find(rib(1.4), 'short-grain-will-break', { depth: '6mm' })?.limit.value).toBe(3);
    expect(find(rib(1.4), 'short-grain-will-break', { depth: '6mm', grain: '90deg' })?.limit.value).toBe(2);
  });

  test('offers the depth that a wall of this thickness stands, where there is one', () => {
    const thick = find(rib(2), 'short-grain-will-break', { depth: '6mm', grain: '0deg' });
    expect(fixOf(thick, 'cut-shallower')).toEqual({ do: 'cut-shallower', toMm: 4, clears: true });
    expect(find(rib(2), 'short-grain-will-break', { depth: '4mm', grain: '0deg' })).toBeUndefined();
  });

  test('is silent on the same rib along the fibres, and on inner corners that run out to a point', () => {
    expect(find(rib(1.4), 'short-grain-will-break', { grain: '90deg' })).toBeUndefined();
    const chevron = [0, 0, 30, 20, 60, 0, 60, 10, 30, 30, 0, 10];
    expect(find(drawingOf([chevron]), 'short-grain-will-break')).toBeUndefined();
  });
});

describe('floor-drinks', () => {
  test('fires on an unsealed end-grain floor, and the seal that it names clears it', () => {
    const finding = find(POCKET, 'floor-drinks', { wood: 'maple', seal: 'none', dive: '90deg' });
    expect(finding?.severity).toBe('caution');
    expect(fixOf(finding, 'change-seal')?.seal).toBe('epoxy');
    expect(find(POCKET, 'floor-drinks', { wood: 'maple', dive: '90deg' })).toBeUndefined();
  });

  test('is silent on a face-grain board with a little dive', () => {
    expect(find(POCKET, 'floor-drinks', { wood: 'maple', seal: 'none', dive: '10deg' })).toBeUndefined();
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
    const finding = find(tall, 'board-not-flat', cupped(0.8), CALM_ON_BOARD);
    expect(finding?.measured.value).toBeCloseTo(0.8, 6);
    expect(finding?.where).toHaveLength(2);
    expect(find(tall, 'board-not-flat', cupped(0.8), { ...CALM_ON_BOARD, level: '0.85mm' })).toBeUndefined();
  });

  test('is silent on a board that is flat enough, and on a small artwork in its middle', () => {
    expect(find(tall, 'board-not-flat', cupped(0.4), CALM_ON_BOARD)).toBeUndefined();
    expect(
      find(drawingOf([rectangle(0, 0, 20, 40)]), 'board-not-flat', cupped(0.8), CALM_ON_BOARD),
    ).toBeUndefined();
  });
});

describe('off-the-board', () => {
  test('fires where the cut comes into the margin, and the move that it names clears it', () => {
    const job = { margin: '10mm', place: '25mm,90mm' };
    const finding = find(POCKET, 'off-the-board', job, CALM_ON_BOARD);
    // 40 mm wide round x = 25: 5 mm of it lie within 10 mm of the edge, 20 mm high
    // arcs are flattened within 5 µm over 4.7 mm of arc
    expect(finding?.measured.value).toBeCloseTo(5 * 20 - 2 * (1 - Math.PI / 4) * 1.5 ** 2, 1);
    expect(finding?.fix.options).toEqual([{ do: 'move', rightMm: 5, downMm: 0, clears: true }]);
    expect(find(POCKET, 'off-the-board', { ...job, place: '30.01mm,90mm' }, CALM_ON_BOARD)).toBeUndefined();
  });

  test('fires on a hole and on a groove, and is silent beside them', () => {
    const hole = (x: number) => ({ keepClear: [`hole ${x}mm,90mm 8mm`] });
    // the pocket reaches from x = 130 to 170
    expect(find(POCKET, 'off-the-board', hole(172), CALM_ON_BOARD)?.severity).toBe('stop');
    expect(find(POCKET, 'off-the-board', hole(175), CALM_ON_BOARD)).toBeUndefined();
    const groove = (y: number) => ({ keepClear: [`groove 0mm,${y}mm 300mm,${y}mm 6mm`] });
    // and from y = 80 to 100
    expect(find(POCKET, 'off-the-board', groove(102), CALM_ON_BOARD)).toBeDefined();
    expect(find(POCKET, 'off-the-board', groove(103.5), CALM_ON_BOARD)).toBeUndefined();
  });
});

describe('batch-too-small', () => {
  test('fires on a mix that a kitchen scale cannot split, and a finer scale clears it', () => {
    const finding = find(POCKET, 'batch-too-small', { weigh: 'kitchen', boards: 1 });
    expect(finding?.severity).toBe('caution');
    expect(finding?.fix.options.map((option) => option.do)).toContain('use-scale');
    expect(find(POCKET, 'batch-too-small', { weigh: 'fine', boards: 1 })).toBeUndefined();
  });

  test('is only a note where no scale is named and none is fine enough, and where zeroing between the parts is enough', () => {
    // 40 × 20 mm, 3 mm deep: about 3 g, and a 0.1 g scale needs 5.9 g zeroed, 8.6 g on a running total
    expect(find(POCKET, 'batch-too-small', { boards: 1 })).toBeUndefined();
    // 0.2 g is too little for the finest scale of the list too
    const slot = drawingOf([rectangle(0, 0, 12, 3.5)]);
    expect(find(slot, 'batch-too-small', { boards: 1 })?.severity).toBe('note');
    expect(find(POCKET, 'batch-too-small', { boards: 1, weigh: 'tenth' })?.severity).toBe('caution');
    const zeroed = find(POCKET, 'batch-too-small', { boards: 2, weigh: 'tenth' });
    expect(zeroed?.severity).toBe('note');
    expect(zeroed?.fix.options[0]?.do).toBe('zero-between');
  });

  test('is silent when enough boards are mixed at once', () => {
    expect(find(POCKET, 'batch-too-small', { weigh: 'kitchen', boards: 60 })).toBeUndefined();
  });
});

describe('mix-too-small', () => {
  test('is a note below the smallest true mix, a caution well below it, and mixing that much is the way out', () => {
    const slot = (length: number) => drawingOf([rectangle(0, 0, length, 3.5)]);
    const one: JobInput = { boards: 1, weigh: 'fine' };
    // 1.18 g at 5 % of the ratio, 0.55 g at 10 %
    expect(find(slot(60), 'mix-too-small', one)?.severity).toBe('note');
    const grave = find(slot(25), 'mix-too-small', one);
    expect(grave?.severity).toBe('caution');
    expect(fixOf(grave, 'mix-more')?.massG).toBe(1.2);
    expect(find(slot(60), 'mix-too-small', { ...one, boards: 2 })).toBeUndefined();
  });
});

describe('ratio-mistaken', () => {
  const mixed = (entry: object) =>
    judgeDrawing(
      POCKET,
      'test',
      settleJob(
        { ...CALM, resin: 'mine' },
        {
          materials: readMaterialsFile(
            { schema: 'pourproof/materials@1', resins: { mine: { like: 'coating', ...entry } } },
            'materials.json',
          ),
        },
      ),
    ).report.findings.find(({ code }) => code === 'ratio-mistaken');

  test('is a stop where two to one by volume was entered as by weight', () => {
    const finding = mixed({ ratioByWeight: { a: 2, b: 1 } });
    expect(finding?.severity).toBe('stop');
    expect(finding?.measured.value).toBeCloseTo(19.79, 2);
    expect(fixOf(finding, 'read-label')?.ratio).toBe('by-volume');
  });

  test('is silent on the label’s own ratios, and once both are given', () => {
    expect(mixed({ ratioByWeight: { a: 100, b: 42 } })).toBeUndefined();
    expect(mixed({ ratioByVolume: { a: 2, b: 1 } })).toBeUndefined();
    expect(mixed({ ratioByWeight: { a: 2, b: 1 }, ratioByVolume: { a: 2, b: 1 } })).toBeUndefined();
  });
});

describe('another resin', () => {
  test('is offered only where it stains no worse, suits the shop and takes no more layers', () => {
    const deep = (job: JobInput) =>
      fixOf(find(POCKET, 'pour-too-deep', { depth: '6mm', ...job }), 'use-resin');
    expect(deep({})?.resin).toBe('deep-pour');
    // moderate under shellac, severe with a resin that runs twice as far
    expect(deep({ wood: 'cherry', seal: 'shellac' })).toBeUndefined();
    expect(deep({ shopTemp: '16C' })).toBeUndefined();
  });
});

describe('pour-too-deep', () => {
  test('fires when depth and overpour pass one pour of coating resin, 6 mm', () => {
    const finding = find(POCKET, 'pour-too-deep', { depth: '6mm' });
    expect(finding?.measured.value).toBeCloseTo(6.5, 9);
    expect(finding?.fix.options).toEqual([
      { do: 'pour-in-layers', layers: 2, clears: true },
      { do: 'use-resin', resin: 'deep-pour', clears: true },
    ]);
  });

  test('is silent at 5.5 mm, and for a resin made for depth or labelled so', () => {
    expect(find(POCKET, 'pour-too-deep', { depth: '5.5mm' })).toBeUndefined();
    expect(find(POCKET, 'pour-too-deep', { depth: '6mm', resin: 'deep-pour' })).toBeUndefined();
    const book = readMaterialsFile(
      { schema: 'pourproof/materials@1', resins: { coating: { deepestPourMm: 10 } } },
      'materials.json',
    );
    const { findings } = judgeDrawing(
      POCKET,
      'test',
      settleJob({ ...CALM, depth: '6mm' }, { materials: book }),
    ).report;
    expect(findings.map((finding) => finding.code)).not.toContain('pour-too-deep');
  });
});

describe('oil-in-wood', () => {
  test('is a stop with the cleaning steps on a treated board, a caution in an oily wood', () => {
    const treated = find(POCKET, 'oil-in-wood', { oiled: true });
    expect(treated?.severity).toBe('stop');
    expect(treated?.fix.options.length).toBeGreaterThanOrEqual(3);
    expect(find(POCKET, 'oil-in-wood', { wood: 'teak' })?.severity).toBe('caution');
  });

  test('is silent on a clean walnut board', () => {
    expect(find(POCKET, 'oil-in-wood')).toBeUndefined();
  });
});

describe('seal-not-cured', () => {
  test('fires on epoxy poured over after an hour, and the wait it asks for clears it', () => {
    const finding = find(POCKET, 'seal-not-cured', { sealHours: '1h' });
    expect(finding).toMatchObject({ severity: 'caution', limit: { value: 2, quantity: 'time', unit: 'h' } });
    expect(fixOf(finding, 'wait')).toEqual({ do: 'wait', hours: 1, warmthHelps: true, clears: true });
    expect(find(POCKET, 'seal-not-cured', { sealHours: '2h' })).toBeUndefined();
  });

  test('is silent from the tacky window on, though the coat has not cured', () => {
    for (const sealHours of ['5h', '10h', '24h']) {
      expect(find(POCKET, 'seal-not-cured', { sealHours })).toBeUndefined();
    }
  });

  test('follows the temperature of the shop: 2 h at 25 °C are 4 h at 15 °C', () => {
    const cold = (sealHours: string) => find(POCKET, 'seal-not-cured', { sealHours, shopTemp: '15C' });
    expect(cold('3h')?.limit.value).toBeCloseTo(4, 9);
    expect(cold('4h')).toBeUndefined();
  });

  test('speaks of warmth only where a seal cures by reaction, the resin stands it and no solvent is about', () => {
    const helps = (job: JobInput) =>
      fixOf(find(POCKET, 'seal-not-cured', { sealHours: '0h', ...job }), 'wait')?.warmthHelps;
    expect(helps({})).toBe(true);
    expect(helps({ seal: 'shellac' })).toBe(false);
    expect(helps({ seal: 'sanding-sealer' })).toBe(false);
    expect(helps({ shopTemp: '27C' })).toBe(false);
    expect(helps({ wood: 'teak' })).toBe(false);
    expect(helps({ oiled: true })).toBe(false);
  });

  test('is silent at the ready time of a seal that dries, and on bare wood', () => {
    expect(find(POCKET, 'seal-not-cured', { seal: 'shellac', sealHours: '1h' })).toBeUndefined();
    expect(find(POCKET, 'seal-not-cured', { sealHours: '0h', seal: 'none' })).toBeUndefined();
  });
});

describe('seal-past-bond', () => {
  const slot = drawingOf([rectangle(0, 0, 40, 3.5)]);

  test('is a caution in a slot that nobody can abrade, and pouring as soon as it says clears it', () => {
    const finding = find(slot, 'seal-past-bond', { sealHours: '48h' });
    expect(finding).toMatchObject({ severity: 'caution', limit: { value: 24 } });
    const { hours = 0 } = fixOf(finding, 'pour-sooner') ?? {};
    expect(find(slot, 'seal-past-bond', { sealHours: `${hours}h` })).toBeUndefined();
    expect(fixOf(finding, 'abrade')).toBeUndefined();
  });

  test('is a note in a wide pocket, which can be washed and abraded', () => {
    const finding = find(POCKET, 'seal-past-bond', { sealHours: '48h' });
    expect(finding?.severity).toBe('note');
    expect(fixOf(finding, 'abrade')).toBeDefined();
  });

  test('comes sooner in a warm shop, and not at all for what dries', () => {
    expect(find(slot, 'seal-past-bond', { sealHours: '24h', shopTemp: '35C' })?.limit.value).toBeCloseTo(
      12,
      9,
    );
    expect(find(slot, 'seal-past-bond', { sealHours: '24h', shopTemp: '27C' })).toBeUndefined();
    expect(find(slot, 'seal-past-bond', { sealHours: '99h', seal: 'shellac' })).toBeUndefined();
  });
});

describe('colour-hides-or-shows', () => {
  const bare: JobInput = { seal: 'none' };

  test('says that black shows in bare maple, even figured', () => {
    const finding = find(POCKET, 'colour-hides-or-shows', { ...bare, wood: 'maple', colour: 'black' });
    expect(finding?.severity).toBe('note');
    expect(finding?.measured.value).toBeGreaterThanOrEqual(finding?.limit.value ?? Number.NaN);
  });

  test('is silent between hiding and showing, without a colour, for a wood of unknown colour, under a seal that holds', () => {
    expect(find(POCKET, 'colour-hides-or-shows', { ...bare, wood: 'cherry', colour: 'red' })).toBeUndefined();
    expect(find(POCKET, 'colour-hides-or-shows', { ...bare, wood: 'maple' })).toBeUndefined();
    expect(find(POCKET, 'colour-hides-or-shows', { ...bare, wood: 'ash', colour: 'black' })).toBeUndefined();
    expect(find(POCKET, 'colour-hides-or-shows', { wood: 'maple', colour: 'black' })).toBeUndefined();
  });

  test('of the tables black hides in walnut and white in pale woods, and each shows in the other', () => {
    const says = (wood: string, colour: 'black' | 'white') => {
      const finding = find(POCKET, 'colour-hides-or-shows', { ...bare, wood, colour });
      return finding && (finding.measured.value >= finding.limit.value ? 'shows' : 'hides');
    };
    expect(says('walnut', 'black')).toBe('hides');
    expect(says('walnut', 'white')).toBe('shows');
    for (const pale of ['poplar', 'cherry', 'maple']) {
      expect([pale, says(pale, 'white'), says(pale, 'black')]).toEqual([pale, 'hides', 'shows']);
    }
  });

  test('says that a colour near to the wood hides in it', () => {
    const book = readMaterialsFile(
      { schema: 'pourproof/materials@1', woods: { walnut: { lab: [30, 3, 3] } } },
      'materials.json',
    );
    const { findings } = judgeDrawing(
      POCKET,
      'test',
      settleJob({ ...CALM, ...bare, colour: 'black' }, { materials: book }),
    ).report;
    const finding = findings.find(({ code }) => code === 'colour-hides-or-shows');
    expect(finding?.measured.value).toBeLessThan(5);
  });
});
