import { readDxf } from '@pourproof/artwork';
import { sizeGuard } from '@pourproof/artwork/format';
import fc from 'fast-check';
import { checkDrawing } from '../check-drawing.ts';
import { answerOf, type FuzzTarget, fuzzTarget } from '../fuzz-target.ts';
import { damaged, someNumber } from '../hostile-text.ts';

type Pairs = readonly (readonly [code: number, value: string])[];

const small = fc.integer({ min: -500, max: 500 }).map((n) => String(n / 10));
const number = fc.oneof({ weight: 40, arbitrary: small }, { weight: 1, arbitrary: someNumber });
const flag = fc.oneof(
  { weight: 60, arbitrary: fc.constantFrom('0', '1', '2', '4', '8', '9', '16', '64', '-1') },
  // as rows and columns of a block it is seconds of copies
  { weight: 1, arbitrary: fc.constant('70000') },
);
const count = fc.constantFrom('0', '1', '2', '3', '4', '5', '-1', '1000000000', '2.5', '');
const name = fc.constantFrom('A', 'B', 'C', '0', '*U1', 'gone');

/** From 2 on a bulge is nearly a full circle; larger ones are rings of tens of thousands of points, which say nothing new. */
const bulge = fc.oneof(
  { weight: 40, arbitrary: fc.integer({ min: -80, max: 80 }).map((n) => String(n / 40)) },
  { weight: 1, arbitrary: number },
);

const value = (code: number): fc.Arbitrary<string> =>
  code >= 60 && code < 80
    ? flag
    : code > 90 && code < 100
      ? count
      : code === 42
        ? bulge
        : code < 10 || code === 1000
          ? name
          : number;

/** Pairs of the given codes in their order, each once. */
const fields = (...codes: number[]): fc.Arbitrary<Pairs> =>
  fc.tuple(...codes.map(value)).map((values) => values.map((v, i) => [codes[i]!, v] as const));

/** The group repeated, as vertices and knots are. */
const several = (group: fc.Arbitrary<Pairs>, most: number): fc.Arbitrary<Pairs> =>
  fc.array(group, { maxLength: most }).map((all) => all.flat());

const joined = (...parts: fc.Arbitrary<Pairs>[]): fc.Arbitrary<Pairs> =>
  fc.tuple(...parts).map((all) => all.flat());

const point = fields(10, 20);
const knots = fc.oneof(
  fc
    .integer({ min: 0, max: 3 })
    .map((degree): Pairs => [...'0'.repeat(degree + 1), '1', ...'2'.repeat(degree + 1)].map((k) => [40, k])),
  several(fields(40), 9),
);
const path = fc.oneof(
  joined(
    fc.constant<Pairs>([
      [92, '2'],
      [72, '1'],
      [73, '1'],
    ]),
    fields(93),
    several(fields(10, 20, 42), 5),
  ),
  joined(
    fc.constant<Pairs>([[92, '1']]),
    fields(93),
    several(
      fc.oneof(
        joined(fc.constant<Pairs>([[72, '1']]), fields(10, 20, 11, 21)),
        joined(fc.constant<Pairs>([[72, '2']]), fields(10, 20, 40, 50, 51, 73)),
        joined(fc.constant<Pairs>([[72, '3']]), fields(10, 20, 11, 21, 40, 50, 51, 73)),
        joined(
          fc.constant<Pairs>([[72, '4']]),
          fields(94, 73, 74, 95, 96),
          several(fields(40), 6),
          several(point, 5),
        ),
      ),
      4,
    ),
  ),
);

const ENTITIES: Readonly<Record<string, fc.Arbitrary<Pairs>>> = {
  LINE: fields(10, 20, 11, 21),
  CIRCLE: fields(10, 20, 40),
  ARC: fields(10, 20, 40, 50, 51),
  ELLIPSE: fields(10, 20, 11, 21, 40, 41, 42),
  LWPOLYLINE: joined(fields(90, 70), several(fields(10, 20, 42, 40, 41), 7)),
  SPLINE: joined(
    fields(70, 71, 72, 73, 74),
    knots,
    several(fields(10, 20, 41), 6),
    several(fields(11, 21), 3),
  ),
  SOLID: fields(10, 20, 11, 21, 12, 22, 13, 23),
  TRACE: fields(10, 20, 11, 21, 12, 22, 13, 23),
  HATCH: joined(fields(2, 70, 71, 91), several(path, 3), fields(75, 76)),
  INSERT: fields(2, 10, 20, 41, 42, 43, 50, 70, 71, 44, 45),
  TEXT: fields(1, 10, 20, 40, 41, 50, 72, 73),
  MTEXT: fields(1, 10, 20, 40, 41, 71),
  POINT: point,
  '3DFACE': fields(10, 20, 30, 11, 21, 31),
  POLYLINE: fields(66, 70, 40, 41, 71, 72),
  VERTEX: fields(10, 20, 42, 40, 41, 70),
  SEQEND: fc.constant<Pairs>([]),
  DIMENSION: fields(2, 10, 20),
  UNHEARD: fields(10),
};
const common: fc.Arbitrary<Pairs> = fc.oneof(
  { weight: 4, arbitrary: fc.constant<Pairs>([]) },
  {
    weight: 1,
    arbitrary: fc.oneof(fields(8, 62), fields(210, 220, 230), fields(67), fields(60), fields(48)),
  },
);
const entity = fc
  .constantFrom(...Object.keys(ENTITIES))
  .chain((kind) => joined(fc.constant<Pairs>([[0, kind]]), common, ENTITIES[kind]!));
const polyline = joined(
  fc.constant<Pairs>([[0, 'POLYLINE']]),
  ENTITIES.POLYLINE!,
  several(joined(fc.constant<Pairs>([[0, 'VERTEX']]), ENTITIES.VERTEX!), 6),
  fc.constant<Pairs>([[0, 'SEQEND']]),
);
const square = fc.tuple(small, small, small).map(([x, y, side]): Pairs => {
  const [u, v] = [String(Number(x) + Number(side)), String(Number(y) + Number(side))];
  return [
    [0, 'LWPOLYLINE'],
    [90, '4'],
    [70, '1'],
    [10, x],
    [20, y],
    [10, u],
    [20, y],
    [10, u],
    [20, v],
    [10, x],
    [20, v],
  ];
});
const entities = several(
  fc.oneof(
    { weight: 6, arbitrary: entity },
    { weight: 1, arbitrary: polyline },
    { weight: 2, arbitrary: square },
  ),
  6,
);

const header = joined(
  fc.constant<Pairs>([
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1015'],
    [9, '$INSUNITS'],
  ]),
  // most in mm: in a larger unit most files are refused for their size
  fc.oneof(
    { weight: 5, arbitrary: fc.constantFrom<Pairs>([[70, '4']], [[70, '1']], [[70, '0']]) },
    { weight: 1, arbitrary: fields(70) },
  ),
  fc.constantFrom<Pairs>(
    [],
    [
      [9, '$MEASUREMENT'],
      [70, '0'],
    ],
    [
      [9, '$DWGCODEPAGE'],
      [3, 'ANSI_1252'],
    ],
  ),
  fc.constant<Pairs>([[0, 'ENDSEC']]),
);
const layers: Pairs = [
  [0, 'SECTION'],
  [2, 'TABLES'],
  [0, 'TABLE'],
  [2, 'LAYER'],
  [0, 'LAYER'],
  [2, 'A'],
  [62, '-5'],
  [0, 'LAYER'],
  [2, 'B'],
  [70, '1'],
  [62, '3'],
  [0, 'ENDTAB'],
  [0, 'ENDSEC'],
];
const block = joined(
  fc.constant<Pairs>([[0, 'BLOCK']]),
  fields(2, 10, 20, 70),
  entities,
  fc.constant<Pairs>([[0, 'ENDBLK']]),
);
const blocks = joined(
  fc.constant<Pairs>([
    [0, 'SECTION'],
    [2, 'BLOCKS'],
  ]),
  several(block, 2),
  fc.constant<Pairs>([[0, 'ENDSEC']]),
);

const file = joined(
  header,
  fc.constantFrom<Pairs>([], layers),
  fc.oneof({ weight: 2, arbitrary: fc.constant<Pairs>([]) }, { weight: 1, arbitrary: blocks }),
  fc.constant<Pairs>([
    [0, 'SECTION'],
    [2, 'ENTITIES'],
  ]),
  entities,
  fc.constantFrom<Pairs>(
    [
      [0, 'ENDSEC'],
      [0, 'EOF'],
    ],
    [],
  ),
).map((pairs) => pairs.map(([code, text]) => `${code}\n${text}\n`).join(''));

/** Whole DXF files of every entity, damaged now and then: a drawing that holds together, or a refusal. */
export const dxfFiles: FuzzTarget = fuzzTarget(
  'dxf-files',
  { limitMs: 5000, quick: 60 },
  fc.record({
    source: fc.oneof({ weight: 8, arbitrary: file }, { weight: 1, arbitrary: damaged(file) }),
    options: fc.oneof(
      { weight: 4, arbitrary: fc.constant({}) },
      {
        weight: 1,
        arbitrary: fc.constantFrom(
          { unit: 'in' } as const,
          { joinToleranceMm: 0 },
          { joinToleranceMm: 5 },
          { widthMm: 100 },
          { scale: 0.001 },
        ),
      },
    ),
  }),
  ({ source, options }) => {
    // as the front door reads it: what is larger than any board is refused before it is flattened
    const drawing = answerOf(() => readDxf(source, { ...options, refuseBounds: sizeGuard('fuzz.dxf') }));
    if (drawing !== null) {
      checkDrawing(drawing);
    }
  },
);
