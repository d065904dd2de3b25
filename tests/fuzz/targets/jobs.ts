import {
  readCouponsFile,
  readJobFile,
  readMaterialsFile,
  SETTING_KEYS,
  SETTINGS,
  type SettingKey,
  settleJob,
} from '@pourproof/job';
import { defaultMaterials } from '@pourproof/materials';
import fc from 'fast-check';
import { answerOf, checkNumbers, type FuzzTarget, fuzzTarget } from '../fuzz-target.ts';
import { someNumber } from '../hostile-text.ts';

const hostile: fc.Arbitrary<unknown> = fc.constantFrom<unknown[]>(
  null,
  true,
  -1,
  0,
  1e308,
  0.5,
  3,
  1e-300,
  '',
  ' ',
  [],
  {},
  [[]],
  'toString',
  '__proto__',
  'NaN',
  { mm: 3 },
  { mm: -1e308 },
  { in: 1 },
  ['a', 'a'],
  [null],
  '\ud800',
  'none',
  '1e999mm',
  { __proto__: null, kind: 'flat' },
);

const typed = fc
  .tuple(someNumber, fc.constantFrom('mm', 'in', 'deg', 'h', 'min', 'C', 'F', 'mm/min', '', ' mm', '"'))
  .map(([n, unit]) => n + unit);

/** Words, of which some are ids of tables or parts of the forms of structures. */
const words = fc
  .array(
    fc.oneof(
      typed,
      fc.constantFrom(
        'maple',
        'walnut',
        'cherry',
        'shellac',
        'epoxy',
        'heart',
        'sap',
        'black',
        'white',
        'stripes',
        'checkerboard',
        'brick',
        '320x320x20mm',
        'square:20mm',
        'maple:20mm',
        'row:9mm',
        'length:20mm',
        ':',
        ',',
        '=',
        '@',
        '-',
        'flat:2mm',
        'vee:60deg:1/2in',
        '2027-01-02',
        '08:00',
        'Mo-Fr',
      ),
    ),
    { minLength: 1, maxLength: 4 },
  )
  .map((all) => all.join(' '));

function given(key: SettingKey): fc.Arbitrary<unknown> {
  const { holds } = SETTINGS[key];
  const examples = [...holds.form.matchAll(/"([^"]+)"/gu)].map((match) => match[1]!);
  const good: fc.Arbitrary<unknown>[] = [
    ...(examples.length > 0 ? [fc.constantFrom(...examples)] : []),
    ...(holds.choices === undefined ? [] : [fc.constantFrom(...holds.choices)]),
    ...(holds.table === undefined ? [] : [fc.constantFrom(...Object.keys(defaultMaterials[holds.table]))]),
    ...(holds.control === 'number'
      ? [fc.double({ min: 0, max: 20, noNaN: true }), fc.integer({ min: 0, max: 12 })]
      : []),
    ...(holds.control === 'tick' ? [fc.boolean()] : []),
    ...(holds.quantity === undefined ? [] : [typed]),
  ];
  const one = fc.oneof(
    { weight: 12, arbitrary: good.length > 0 ? fc.oneof(...good) : words },
    { weight: 2, arbitrary: words },
    { weight: 1, arbitrary: hostile },
  );
  return holds.isList === true
    ? fc.oneof(
        { weight: 9, arbitrary: fc.array(one, { minLength: 1, maxLength: 3 }) },
        { weight: 1, arbitrary: one },
      )
    : one;
}

const GIVEN: Readonly<Record<string, fc.Arbitrary<unknown>>> = Object.fromEntries(
  SETTING_KEYS.map((key) => [key, given(key)]),
);

/** Jobs of a few settings, most of each good. */
export const jobInput: fc.Arbitrary<Record<string, unknown>> = fc
  .array(
    fc.constantFrom(...SETTING_KEYS).chain((key) => fc.tuple(fc.constant(key), GIVEN[key]!)),
    { maxLength: 5 },
  )
  .map((pairs) => Object.fromEntries(pairs) as Record<string, unknown>);

/** Jobs of any settings: settled with finite numbers, or refused with what is wrong and what to do. */
export const jobValues: FuzzTarget = fuzzTarget('jobs', { limitMs: 500, quick: 600 }, jobInput, (input) => {
  const job = answerOf(() => settleJob(input));
  if (job !== null) {
    const { materials: _, rows: __, input: ___, ...settled } = job;
    checkNumbers(settled);
  }
  answerOf(() => readJobFile({ schema: 'pourproof/job@1', ...input }, 'job.json'));
});

const rowNumber = fc.oneof(
  { weight: 9, arbitrary: fc.double({ min: 0, max: 100, noNaN: true }) },
  { weight: 1, arbitrary: hostile },
);
const materialRow = fc
  .array(
    fc.tuple(
      fc.constantFrom(
        'like',
        'name',
        'lab',
        'bleedPriorMm',
        'heartFactor',
        'oily',
        'curve',
        'solids',
        'densityGPerMl',
        'wetFilmMm',
        'readyHours',
        'viscosityPaS',
        'potLifeMin',
        'gelMin',
        'hardHours',
        'ratioByVolume',
        'ratioByWeight',
        'densityAGPerMl',
        'densityMixedGPerMl',
        'deepestPourMm',
        'minTempC',
        'maxTempC',
        'shrinkagePct',
        'resolutionG',
        'shape',
        'label',
        'diameterMm',
        'angleDeg',
        'junk',
      ),
      fc.oneof(
        { weight: 4, arbitrary: rowNumber },
        {
          weight: 1,
          arbitrary: fc.constantFrom<unknown[]>(
            'maple',
            'epoxy',
            'shellac',
            'x',
            true,
            [50, 3, 4],
            { a: 2, b: 1 },
            [
              { hours: 1, factor: 0.5 },
              { hours: 24, factor: 0.1 },
            ],
            [
              { hours: 9, factor: 1 },
              { hours: 1, factor: 1 },
            ],
            'flat',
            null,
          ),
        },
      ),
    ),
    { maxLength: 6 },
  )
  .map((pairs) => Object.fromEntries(pairs));
const materialIds = ['maple', 'walnut', 'shellac', 'epoxy', 'own', 'toString', '__proto__', ''];
const tables = fc
  .array(
    fc.tuple(
      fc.constantFrom('woods', 'sealers', 'resins', 'scales', 'cutters', 'junk'),
      fc.oneof(
        { weight: 6, arbitrary: fc.dictionary(fc.constantFrom(...materialIds), materialRow, { maxKeys: 2 }) },
        { weight: 1, arbitrary: fc.array(materialRow, { maxLength: 2 }) },
        { weight: 1, arbitrary: hostile },
      ),
    ),
    { maxLength: 3 },
  )
  .map((pairs) => Object.fromEntries(pairs));

/** Files of own materials: a book of finite numbers, or a refusal. */
export const materialsFiles: FuzzTarget = fuzzTarget(
  'materials-files',
  { limitMs: 500, quick: 400 },
  tables,
  (file) => {
    const book = answerOf(() =>
      readMaterialsFile({ schema: 'pourproof/materials@1', ...file }, 'materials.json'),
    );
    checkNumbers(book);
  },
);

const slot: fc.Arbitrary<unknown> = fc.oneof(
  { weight: 4, arbitrary: typed },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      'clean',
      'slight',
      'moderate',
      'severe',
      'none below 0.45mm',
      'between 1mm and 2mm',
      'between 2mm and 1mm',
    ),
  },
  { weight: 1, arbitrary: fc.tuple(typed, typed).map(([a, b]) => `between ${a} and ${b}`) },
  {
    weight: 1,
    arbitrary: fc.record(
      {
        kind: fc.constantFrom('streak', 'none-visible', 'between', 'class', 'x'),
        lengthMm: rowNumber,
        fromMm: rowNumber,
        toMm: rowNumber,
        class: fc.constant('clean'),
      },
      { requiredKeys: ['kind'] },
    ),
  },
  { weight: 1, arbitrary: hostile },
);
const couponRow = fc.record(
  {
    board: fc.constantFrom<unknown[]>('a', 'b', ''),
    wood: fc.constantFrom<unknown[]>('maple', 'walnut', 'junk', 3),
    part: fc.constantFrom<unknown[]>('heart', 'sap', 'x'),
    seal: fc.constantFrom<unknown[]>('shellac', 'none', 'junk'),
    coats: fc.oneof(fc.integer({ min: 0, max: 4 }), hostile),
    sealHours: fc.oneof(typed, fc.constantFrom<unknown[]>('24h', { h: 3 })),
    resin: fc.constantFrom<unknown[]>('epoxy', 'junk'),
    temp: typed,
    rule: typed,
    slots: fc.array(slot, { maxLength: 5 }),
  },
  { requiredKeys: ['slots'] },
);

/** Files of coupons, and the jobs settled with them: finite numbers, or a refusal. */
export const couponsFiles: FuzzTarget = fuzzTarget(
  'coupons-files',
  { limitMs: 1000, quick: 300 },
  fc.array(fc.oneof({ weight: 9, arbitrary: couponRow }, { weight: 1, arbitrary: hostile }), {
    maxLength: 4,
  }),
  (rows) => {
    const read = answerOf(() =>
      readCouponsFile({ schema: 'pourproof/coupons@1', coupons: rows }, 'coupons.json'),
    );
    if (read !== null) {
      const job = answerOf(() => settleJob({ bit: ['flat:2mm'], wood: 'maple' }, { coupons: read }));
      checkNumbers(job?.coupons ?? null);
    }
  },
);
