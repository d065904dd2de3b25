import { type BitInput, type JobInput, settleJob, type TypedJob, typedJob } from '@pourproof/job';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

/** All that was settled; what was typed differs by intent. */
const settled = (job: JobInput) => settleJob({ units: 'mm', ...job });

describe('a text and a structure of the same mean the same', () => {
  test.each<readonly [typed: TypedJob, structured: JobInput]>([
    [{ depth: '1/8in' }, { depth: { in: 0.125 } }],
    [{ depth: '3.2mm' }, { depth: { mm: 3.2 } }],
    [{ grain: '45deg' }, { grain: { deg: 45 } }],
    [{ sealHours: '90min' }, { sealHours: { min: 90 } }],
    [{ sealHours: '2d' }, { sealHours: { d: 2 } }],
    [{ shopTemp: '70F' }, { shopTemp: { fahrenheit: 70 } }],
    [{ feed: '40in/min' }, { feed: { inPerMin: 40 } }],
    [{ rapid: '50mm/s' }, { rapid: { mmPerS: 50 } }],
    [{ bit: ['flat:3mm'] }, { bit: [{ kind: 'flat', diameterMm: 3 }] }],
    [
      { bit: ['vee:60deg:1/2in:tip 0.1mm:length 9mm'] },
      { bit: [{ kind: 'vee', angleDeg: 60, diameterMm: 12.7, tipMm: 0.1, cuttingLengthMm: 9 }] },
    ],
    [
      { board: 'stripes 300x180x20mm maple/sap:60mm walnut:20mm' },
      {
        board: {
          pattern: 'stripes',
          widthMm: 300,
          heightMm: 180,
          thicknessMm: 20,
          woods: [
            { wood: 'maple', part: 'sap', widthMm: 60 },
            { wood: 'walnut', widthMm: 20 },
          ],
        },
      },
    ],
    [
      {
        board: 'plain 300x180x20mm maple',
        place: '150mm,90mm',
        keepClear: ['hole 20mm,30mm 8mm', 'groove 0mm,160mm 300mm,160mm 6mm'],
      },
      {
        board: { pattern: 'plain', widthMm: 300, heightMm: 180, thicknessMm: 20, woods: [{ wood: 'maple' }] },
        place: { atMm: [150, 90] },
        keepClear: [
          { kind: 'hole', atMm: [20, 30], diameterMm: 8 },
          { kind: 'groove', fromMm: [0, 160], toMm: [300, 160], widthMm: 6 },
        ],
      },
    ],
    [
      { rounds: 'red, blue+white:2mm' },
      { rounds: [{ colours: ['red'] }, { colours: ['blue', 'white'], depth: { mm: 2 } }] },
    ],
    [{ colourOf: 'red=black, Frame=#FFFFFF' }, { colourOf: { red: 'black', Frame: '#fff' } }],
    [
      { arc: '80mm under', axis: ['wght=600'] },
      { arc: { radiusMm: 80, side: 'under' }, axis: [{ tag: 'wght', value: 600 }] },
    ],
    [
      { coupons: [{ slots: ['1.2mm', 'none below 0.45mm', 'severe'], sealHours: '9h', temp: '21C' }] },
      {
        coupons: [
          {
            slots: [
              { kind: 'streak', lengthMm: 1.2, stepMm: 0.1 },
              { kind: 'none-visible', belowMm: 0.45 },
              { kind: 'class', class: 'severe' },
            ],
            sealHours: { h: 9 },
            temp: { celsius: 21 },
          },
        ],
      },
    ],
  ])('%j', (typed, structured) => {
    expect({ ...settled(structured), given: [], input: {} }).toEqual({
      ...settled(typed),
      given: [],
      input: {},
    });
  });

  // a sum with 0 makes 0 of -0, whose sign a text drops
  const size = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
  const edge: fc.Arbitrary<number | null> = fc.option(size(0.1, 60));
  const kinds: readonly fc.Arbitrary<BitInput>[] = [
    fc.record({ kind: fc.constantFrom('flat', 'ball'), diameterMm: size(0.05, 50) }),
    size(0.05, 50).chain((diameterMm) =>
      fc.record({
        kind: fc.constant('bull'),
        diameterMm: fc.constant(diameterMm),
        cornerMm: size(0.001, diameterMm / 2),
      }),
    ),
    fc.record({
      kind: fc.constant('vee'),
      angleDeg: size(1, 179),
      diameterMm: size(1, 50),
      tipMm: size(0, 0.9),
      cuttingLengthMm: edge,
    }),
    fc.record({
      kind: fc.constant('taper'),
      tipDiameterMm: size(0.05, 1),
      sideDeg: size(0.1, 89),
      diameterMm: size(1, 50),
    }),
  ];
  const point = fc.tuple(size(-500, 500), size(-500, 500));
  const jobs: fc.Arbitrary<JobInput> = fc.record(
    {
      bit: fc.array(fc.oneof(...kinds), { minLength: 1, maxLength: 4 }),
      depth: fc.record({ mm: size(0.01, 19) }),
      sealHours: fc.record({ h: size(0, 100) }),
      shopTemp: fc.record({ celsius: size(5, 45) }),
      feed: fc.record({ mmPerMin: size(1, 9000) }),
      turn: fc.record({ deg: size(-180, 180) }),
      margin: fc.record({ mm: size(0, 20) }),
      place: fc.record({ atMm: point }),
      board: fc.constant({
        pattern: 'polygons',
        widthMm: 300,
        heightMm: 180,
        thicknessMm: 20,
      } as const),
      block: fc.array(
        fc.record({
          wood: fc.constantFrom('maple', 'walnut'),
          part: fc.constantFrom('heart', 'sap', null),
          grainDeg: size(-180, 180),
          diveDeg: size(0, 90),
          outlineMm: fc.array(point, { minLength: 3, maxLength: 6 }),
        }),
        { minLength: 1, maxLength: 3 },
      ),
      keepClear: fc.array(
        fc.oneof(
          fc.record({ kind: fc.constant('hole'), atMm: point, diameterMm: size(0.1, 50) }),
          fc.record({ kind: fc.constant('groove'), fromMm: point, toMm: point, widthMm: size(0.1, 50) }),
          fc.record({
            kind: fc.constant('clamp'),
            atMm: point,
            sizeMm: fc.tuple(size(0.1, 50), size(0.1, 50)),
          }),
          fc.record({ kind: fc.constant('hold-down'), atMm: point, diameterMm: size(0.1, 50) }),
        ),
        { minLength: 1, maxLength: 3 },
      ),
      reading: fc.array(fc.record({ atMm: point, heightMm: size(0, 50) }), { minLength: 5, maxLength: 9 }),
      arc: fc.record({ radiusMm: size(0.1, 999), side: fc.constantFrom('over', 'under') }),
    },
    { requiredKeys: ['board', 'block'] },
  ) as fc.Arbitrary<JobInput>;

  test('for any structure and the text that a form shows for it', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const typed = typedJob(job);
        expect(
          Object.values(typed)
            .flat()
            .map((value) => typeof value),
        ).not.toContain('object');
        expect({ ...settleJob(typed), input: {} }).toEqual({ ...settleJob(job), input: {} });
      }),
      { seed: 20261129, numRuns: 200 },
    );
  });
});

test('a settled bit, obstacle or reading can be given again as it is', () => {
  const first = settled({
    bit: ['vee:60deg:1/2in:tip 0.1mm', 'flat:3mm', 'profile:1mm@0mm,3mm@2mm'],
    board: 'plain 300x180x20mm maple',
    keepClear: ['hole 20mm,30mm 8mm'],
  });
  const again = settled({
    bit: first.bits,
    board: 'plain 300x180x20mm maple',
    keepClear: first.obstacles,
  });
  expect({ ...again, input: {} }).toEqual({ ...first, input: {} });
});

test('an answer comes in the unit of the depth before that of the bits, typed or structured', () => {
  expect(settleJob({ depth: { in: 0.125 } }).units).toBe('in');
  expect(settleJob({ bit: [{ kind: 'flat', diameterMm: 3 }], depth: '1/8in' }).units).toBe('in');
  expect(settleJob({ tolerance: { in: 0.0005 } }).units).toBe('mm');
});
