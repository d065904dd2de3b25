import { expect, test } from 'vitest';
import { bleedTravel } from './bleed-travel.ts';
import { defaultFields } from './default-fields.ts';
import { defaultMaterials } from './materials-book.ts';
import { MaterialsError } from './materials-error.ts';
import type { MaterialsOverrides } from './materials-overrides.ts';
import { mergeMaterials } from './merge-materials.ts';
import { mixByMass } from './mix-by-mass.ts';

const merge = (overrides: MaterialsOverrides) => mergeMaterials(defaultMaterials, overrides);

function refusal(overrides: MaterialsOverrides): MaterialsError {
  try {
    merge(overrides);
  } catch (error) {
    if (error instanceof MaterialsError) {
      return error;
    }
    throw error;
  }
  throw new Error('was accepted');
}

test('no entries leave every row as it was', () => {
  expect(merge({})).toEqual(defaultMaterials);
});

test('a label replaces class defaults, and only those it names', () => {
  const book = merge({
    resins: { coating: { gelMin: 60, ratioByWeight: { a: 100, b: 43 }, densityMixedGPerMl: 1.1 } },
  });
  const resin = book.resins.coating!;
  expect(resin.gelMin).toEqual({ value: 60, low: 60, high: 60, status: 'entered', because: ['maker-entry'] });
  expect(resin.ratioByVolume).toBeNull();
  expect(resin.viscosityPaS).toBe(defaultMaterials.resins.coating!.viscosityPaS);
  expect(mixByMass({ volumeMl: 100, wastePct: 0 }, resin).partBG).toBeCloseTo((110 * 43) / 143, 12);
  expect(defaultFields(resin)).not.toContain('gelMin');
  expect(defaultFields(resin)).toContain('viscosityPaS');
  expect(defaultMaterials.resins.coating!.gelMin.value).toBe(100);
});

test('a new wood starts from another and takes part in the travel', () => {
  const book = merge({ woods: { 'attic walnut': { like: 'walnut', bleedPriorMm: 0.5, lab: [40, 6, 14] } } });
  const wood = book.woods['attic walnut']!;
  expect(wood.name).toBe('attic walnut');
  expect(wood.pores).toEqual(defaultMaterials.woods.walnut!.pores);
  const travel = bleedTravel({ wood, seal: 'none', coats: 0, sealHours: 0 });
  expect(travel.medianMm).toBeCloseTo(0.5, 12);
  expect(travel.sources).toContain('maker-entry');
});

test('an own sealer brings its own curve of cure', () => {
  const book = merge({
    sealers: {
      lacquer: { like: 'sanding-sealer', name: 'brushing lacquer', curve: [{ hours: 2, factor: 0.4 }] },
    },
  });
  expect(book.sealers.lacquer!.name).toBe('brushing lacquer');
  const travel = bleedTravel({ wood: 'maple', seal: book.sealers.lacquer!, coats: 1, sealHours: 5 });
  expect(travel.medianMm).toBeCloseTo(0.8, 12);
});

test('scales are added, cutters replace the list', () => {
  const book = merge({
    scales: { pocket: { name: 'pocket scale', resolutionG: 0.05 } },
    cutters: [{ shape: 'flat', label: '2mm', diameterMm: 2, angleDeg: null }],
  });
  expect(Object.keys(book.scales)).toEqual([...Object.keys(defaultMaterials.scales), 'pocket']);
  expect(book.cutters).toMatchObject({ status: 'entered', value: [{ label: '2mm' }] });
});

test.each<[string, MaterialsOverrides, string, string]>([
  ['a new id without a start', { resins: { mine: { gelMin: 30 } } }, 'new-needs-like', 'resins.mine'],
  ['an unknown start', { woods: { mine: { like: 'nut' } } }, 'unknown-like', 'woods.mine.like'],
  ['a negative time', { resins: { coating: { gelMin: -3 } } }, 'out-of-range', 'resins.coating.gelMin'],
  [
    'a ratio with a zero',
    { resins: { coating: { ratioByVolume: { a: 1, b: 0 } } } },
    'out-of-range',
    'resins.coating.ratioByVolume.b',
  ],
  [
    'gel before the pot life ends',
    { resins: { coating: { gelMin: 10, potLifeMin: 30 } } },
    'conflict',
    'resins.coating.gelMin',
  ],
  ['solids above 1', { sealers: { shellac: { solids: 17.5 } } }, 'out-of-range', 'sealers.shellac.solids'],
  [
    'a curve that turns back',
    {
      sealers: {
        epoxy: {
          curve: [
            { hours: 2, factor: 0.2 },
            { hours: 1, factor: 0.1 },
          ],
        },
      },
    },
    'curve-order',
    'sealers.epoxy.curve[1]',
  ],
  [
    'a curve that rises',
    { sealers: { epoxy: { curve: [{ hours: 2, factor: 1.2 }] } } },
    'curve-order',
    'sealers.epoxy.curve[0]',
  ],
  [
    'a scale without steps',
    { scales: { s: { name: 's', resolutionG: 0 } } },
    'out-of-range',
    'scales.s.resolutionG',
  ],
  [
    'a V without an angle',
    { cutters: [{ shape: 'vee', label: 'v', diameterMm: 6, angleDeg: null }] },
    'out-of-range',
    'cutters[0].angleDeg',
  ],
  ['lightness above 100', { woods: { maple: { lab: [120, 0, 0] } } }, 'out-of-range', 'woods.maple.lab'],
])('%s is refused with its place and a remedy', (_name, overrides, code, place) => {
  const error = refusal(overrides);
  expect(error.code).toBe(code);
  expect(error.place).toBe(place);
  expect(error.remedy.length).toBeGreaterThan(10);
});

test('names such as __proto__ are ids like any other', () => {
  const entries = JSON.parse(
    '{"woods": {"__proto__": {"like": "maple", "bleedPriorMm": 3}}}',
  ) as MaterialsOverrides;
  const book = merge(entries);
  expect(Object.keys(book.woods)).toContain('__proto__');
  expect(({} as { bleedPriorMm?: unknown }).bleedPriorMm).toBeUndefined();
});
