import { settleJob } from '@pourproof/job';
import {
  type CleanRegion,
  type Drawing,
  packRings,
  rotation,
  textInUnits,
  transformRings,
} from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { type MeasuredJob, prove } from '../fixes/prove.ts';
import type { Measured } from '../measured.ts';
import type { BalanceId } from './balance.ts';
import { seedOf, selfCheck } from './self-check.ts';
import { SelfCheckError } from './self-check-error.ts';

const square = (x: number, y: number, side: number): number[] => [
  ...[x, y, x + side, y, x + side, y + side, x, y + side],
];

const drawing: Drawing = {
  format: 'svg',
  scaleSource: textInUnits('made by a test'),
  toleranceMm: 0.005,
  notices: [],
  shapes: [square(0, 0, 20), square(40, 0, 8), [0, 30, 30, 40, 0, 50]].map((ring, k) => ({
    region: { ...packRings([ring]), fillRule: 'nonzero' },
    layer: '',
    colour: k === 1 ? '#ff0000' : '#000000',
    source: `shape ${k}`,
  })),
};

function measured(job: Parameters<typeof settleJob>[0] = {}): Measured {
  const proved = prove(
    drawing,
    settleJob({ bit: ['flat:2mm'], depth: '3mm', seal: 'epoxy', boards: 7, ...job }),
  );
  if (proved.measured.is !== 'at-once') {
    throw new Error('the job has one round');
  }
  return proved.measured.all;
}

const idsOf = (all: Measured): readonly BalanceId[] => [
  ...new Set(selfCheck({ is: 'at-once', all }).map(({ id }) => id)),
];

describe.each([
  ['flat', {}],
  ['two flats', { bit: ['flat:3mm', 'flat:1mm'] }],
  ['ball', { bit: ['ball:2mm'] }],
  ['V', { bit: ['vee:60deg:1/2in'] }],
  ['V with a flat', { bit: ['vee:90deg:1/4in', 'flat:1mm'] }],
  ['a bit that fits nowhere', { bit: ['flat:60mm'] }],
] as const)('%s', (_, job) => {
  test('a sound proof balances, wherever its widths are measured', () => {
    const all = measured({ ...job, bit: [...('bit' in job ? job.bit : ['flat:2mm'])] });
    for (let seed = 0; seed < 20; seed++) {
      expect(selfCheck({ is: 'at-once', all }, seed)).toEqual([]);
    }
  });
});

test.each([
  ['nothing', []],
  ['a line without area', [[0, 0, 10, 0, 20, 0]]],
  ['a speck', [[0, 0, 1e-6, 0, 0, 1e-6]]],
] as const)('a drawing of %s balances', (_, rings) => {
  const shapes = rings.map((ring) => ({
    ...drawing.shapes[0],
    region: { ...packRings([[...ring]]), fillRule: 'nonzero' as const },
    layer: '',
    colour: '#000000',
    source: '',
  }));
  for (const bit of ['flat:2mm', 'vee:60deg:1/2in']) {
    const proved = prove({ ...drawing, shapes }, settleJob({ bit: [bit], depth: '3mm' }));
    expect(selfCheck(proved.measured)).toEqual([]);
  }
});

const sound = measured();
const { carving, pour } = sound;
const [first, second] = pour.colours;
if (first === undefined || second === undefined) {
  throw new Error('the drawing has two colours');
}
const withColour = (changes: Partial<typeof first>): Partial<Measured> => ({
  pour: { ...pour, colours: [{ ...first, ...changes }, second] },
});

const BROKEN: readonly (readonly [BalanceId, Partial<Measured>])[] = [
  ['artwork-is-cut-and-left', { standingAreaMm2: sound.standingAreaMm2 + 0.01 }],
  ['artwork-is-cut-and-left', { artworkArea: sound.artworkArea * 1.0001 }],
  ['cut-is-its-outline', { cutRegion: sound.artwork }],
  [
    'bits-add-up-to-cut',
    { carving: { ...carving, perCutter: [...carving.perCutter, ...carving.perCutter] } },
  ],
  ['colours-add-up-to-cut', { colourCuts: sound.colourCuts.slice(1) }],
  ['blocks-lie-in-cut', { blocks: [...sound.blocks, ...sound.blocks] }],
  ['floor-lies-in-cut', { carving: { ...carving, floorAreaMm2: 1.01 * carving.floorAreaMm2 } }],
  ['volume-lies-between-slices', { carving: { ...carving, volumeMm3: 1.001 * carving.volumeMm3 } }],
  ['volume-lies-between-slices', { carving: { ...carving, volumeMm3: Number.NaN } }],
  ['depth-is-within-limit', { maxDepth: 3.001 }],
  ['fills-add-up-to-volume', withColour({ budget: { ...first.budget, cutMl: 1.2 * first.budget.cutMl } })],
  [
    'fill-fits-its-colour',
    {
      pour: {
        ...pour,
        colours: [
          { ...first, budget: second.budget },
          { ...second, budget: first.budget },
        ],
      },
    },
  ],
  ['mix-is-its-fill', withColour({ volumeMl: 1.001 * first.volumeMl })],
  [
    'grams-are-volume-by-density',
    withColour({ massG: 1.001 * first.massG, partAG: 1.001 * first.partAG, partBG: 1.001 * first.partBG }),
  ],
  ['parts-keep-the-ratio', withColour({ partAG: first.partAG + 0.1, partBG: first.partBG - 0.1 })],
  ['cups-add-up-to-mix', withColour({ cup: { ...first.cup, totalG: first.cup.totalG + 1 } })],
  [
    'width-is-distance-to-outline',
    { axis: { ...sound.axis, nodeR: sound.axis.nodeR.map((r) => 1.0001 * r) } },
  ],
  [
    'width-is-distance-to-outline',
    { strokes: { ...sound.strokes, narrowestMm: 1.0001 * (sound.strokes.narrowestMm ?? 0) } },
  ],
  ['width-lies-in-artwork', { artwork: transformRings(rotation(1), sound.artwork) as CleanRegion }],
];

test.each(BROKEN)('a figure that breaks %s is found', (id, changes) => {
  expect(idsOf({ ...sound, ...changes })).toContain(id);
});

test('of several rounds each is checked, and none may cut more than the artwork', () => {
  const { measured: rounds } = prove(
    drawing,
    settleJob({ bit: ['flat:2mm'], depth: '3mm', rounds: 'black, red' }),
  );
  if (rounds.is !== 'in-rounds') {
    throw new Error('the job has two rounds');
  }
  expect(selfCheck(rounds)).toEqual([]);
  const narrow: MeasuredJob = { is: 'in-rounds', all: { ...rounds.all, artworkArea: 100 } };
  expect(selfCheck(narrow).map(({ id }) => id)).toEqual(['rounds-lie-in-artwork']);
});

test('the error tells what does not balance, with figures and by how much', () => {
  const all = { ...sound, maxDepth: 3.25 };
  const misses = selfCheck({ is: 'at-once', all });
  const { message, misses: told, seed } = new SelfCheckError(misses, seedOf({ is: 'at-once', all }));
  expect(message).toContain('the cut is no deeper than its limit, but it is 3.25 where 0 to 3 mm is due');
  expect(told.find(({ id }) => id === 'depth-is-within-limit')?.by).toBeCloseTo(0.25, 5);
  expect(seed).toBe(seedOf({ is: 'at-once', all: sound }));
});

test.each([
  ['mm', 'mm'],
  ['mm2', 'mm²'],
  ['mm3', 'mm³'],
  ['ml', 'ml'],
  ['g', 'g'],
] as const)('a figure in %s is told in %s', (unit, symbol) => {
  const miss = { id: 'cut-is-its-outline', unit, got: 7.5, least: 8, most: 9, by: 0.5, index: 1 } as const;
  expect(new SelfCheckError([miss], 1).message).toContain(
    `the cut has the area of its outline (no. 2), but it is 7.5 where 8 to 9 ${symbol} is due`,
  );
});
