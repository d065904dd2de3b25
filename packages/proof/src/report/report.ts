import { z } from 'zod';
import { FINDING_CODES } from '../codes.ts';
import { pourSchema } from './pour-schema.ts';

const mm = (what: string): z.ZodNumber => z.number().meta({ description: `${what}, mm` });
const mm2 = (what: string): z.ZodNumber =>
  z
    .number()
    .nonnegative()
    .meta({ description: `${what}, mm²` });
const mm3 = (what: string): z.ZodNumber =>
  z
    .number()
    .nonnegative()
    .meta({ description: `${what}, mm³` });
const gram = (what: string): z.ZodNumber =>
  z
    .number()
    .nonnegative()
    .meta({ description: `${what}, g` });

const point = z
  .tuple([z.number(), z.number()])
  .readonly()
  .meta({ description: 'A place on the artwork: x to the right, y down, mm' });

const quantity = z.object({ value: z.number(), unit: z.string() }).readonly();

const notice = z
  .object({
    code: z.string(),
    text: z.string(),
    severity: z.enum(['caution', 'note']),
    where: z.array(
      z.object({
        atMm: point.optional(),
        line: z.number().int().optional(),
        column: z.number().int().optional(),
        element: z.string().optional(),
        gapMm: mm('Gap that is open or was closed').optional(),
      }),
    ),
  })
  .meta({ description: 'What the reader skipped, closed, merged, scaled or assumed' });

const artwork = z.object({
  file: z.string().meta({ description: 'File name, or the text that was set' }),
  format: z.enum(['svg', 'dxf', 'lettering']),
  scaleSource: z.string().meta({ description: 'How file units became mm' }),
  areaMm2: mm2('Area covered by everything painted'),
  perimeterMm: mm('Length of its outline'),
  boundsMm: z.tuple([z.number(), z.number(), z.number(), z.number()]).readonly(),
  regions: z.number().int().nonnegative().meta({ description: 'Separate painted regions after union' }),
  holes: z.number().int().nonnegative(),
  layers: z.array(
    z.object({ name: z.string(), colour: z.string(), areaMm2: mm2('Area of this layer alone') }),
  ),
  notices: z.array(notice),
});

const cut = z.object({
  areaMm2: mm2('Cut region as seen from above'),
  leftStandingMm2: mm2('Artwork that no bit of the job reaches'),
  volumeMm3: mm3('Integral of depth over the cut'),
  floorAreaMm2: mm2('Floor'),
  wallAreaMm2: mm2('Walls'),
  wallLengthMm: mm('Length of wall, seen from above'),
  maxDepthMm: mm('Deepest point'),
  ridgedFloorMm2: mm2('Level floor that only the tip of a V goes over, which leaves it ridged').optional(),
  errorBound: z
    .object({ areaMm2: mm2('Bound of the error of areas'), volumeMm3: mm3('Bound of the error of volume') })
    .meta({ description: 'From the flattening of curves; the geometry itself is exact to rounding' }),
  perCutter: z.array(
    z.object({
      cutter: z.string(),
      depthMm: mm('How deep it goes: to the depth of the job, or as far as its edge or its flanks reach'),
      areaMm2: mm2('What this cutter adds at the face to those before it'),
      volumeMm3: mm3('What it adds to their volume'),
      floorMm2: mm2('Level floor at the deepest that its flat bottom goes over and no bit before did'),
      places: z
        .number()
        .int()
        .nonnegative()
        .meta({ description: 'In how many separate places it adds area' }),
      outlineMm: mm('Length of the artwork’s outline that is reached now and was not before'),
      pathMm: mm('Length of its moves in the wood, over all passes'),
      passes: z.number().int().nonnegative(),
      lifts: z.number().int().nonnegative().meta({ description: 'How often it leaves the wood' }),
      minutes: z.number().nonnegative().meta({ description: 'How long it takes' }),
    }),
  ),
  time: z
    .object({
      minutes: z.number().nonnegative(),
      floorLeftOutMm2: mm2(
        'Level floor whose rounds are not in it: only the tip of a V could go over it',
      ).optional(),
      assumptions: z.array(
        z.object({
          name: z.string(),
          value: z.number(),
          unit: z.string(),
          origin: z.enum(['given', 'common practice']),
        }),
      ),
    })
    .meta({ description: 'Cutting and travelling of all bits; without changing them, and what it rests on' }),
});

const strokes = z.object({
  narrowestMm: mm('Narrowest stroke').nullable(),
  narrowestAt: point.nullable(),
  narrowestToBit: z.number().nullable().meta({
    description: 'Narrowest stroke over the smallest bit’s diameter; null where a V shapes the walls',
  }),
  lengthMm: mm('Length of stroke, along its middle'),
  lengthNarrowerThanBitMm: mm('Length of stroke narrower than the smallest bit'),
  widthHistogram: z.array(
    z.object({ fromMm: mm('From'), toMm: mm('To'), lengthMm: mm('Length of stroke in this class') }),
  ),
});

const endGrain = z.object({
  grainDeg: z.number(),
  diveDeg: z.number(),
  wallExposedMm2: mm2('∫ |n·f| dA over walls'),
  floorExposedMm2: mm2('∫ |n·f| dA over floors'),
  wallFraction: z.number().meta({ description: 'Exposed over whole wall area, 0…1' }),
  byBlock: z
    .array(
      z.object({
        species: z.string(),
        blocks: z.number().int().positive().meta({ description: 'Blocks of this kind that the cut meets' }),
        grainDeg: z.number().meta({ description: 'Fibres against the artwork’s x axis, counter-clockwise' }),
        diveDeg: z.number(),
        wallAreaMm2: mm2('Walls that stand in them, slanted as they are'),
        wallLengthMm: mm('Wall that stands in them, seen from above'),
        wallExposedMm2: mm2('∫ |n·f| dA over walls'),
        floorAreaMm2: mm2('Floor'),
        floorExposedMm2: mm2('∫ |n·f| dA over floors'),
      }),
    )
    .meta({ description: 'By wood and fibre direction; the sums are the totals' }),
});

const bleed = z.object({
  basis: z.enum(['prior', 'calibrated']).meta({
    description: 'calibrated where coupons moved the prior of a block at least; each block says its own',
  }),
  coupons: z.number().int().nonnegative().meta({ description: 'Coupons that moved a prior' }),
  couponsUnused: z
    .array(z.object({ row: z.number().int().positive(), why: z.enum(['other-wood', 'one-other-board']) }))
    .meta({
      description:
        'Rows of coupons, from 1, that moved nothing: of a wood that the cut does not meet, or of a single other board, which says too little of the wood',
    }),
  blocks: z.array(
    z.object({
      species: z.string(),
      basis: z.enum(['prior', 'calibrated']),
      coupons: z.number().int().nonnegative(),
      slots: z.number().int().nonnegative().meta({ description: 'Slots read on these coupons' }),
      ownSlots: z
        .object({
          slots: z.number().int().positive(),
          bleeding: z.number().int().nonnegative(),
          chance: z.number(),
          chanceUpper95: z.number(),
        })
        .optional()
        .meta({
          description:
            'Slots of this board, seal and resin alone: how many show a streak, and the chance that the next one does by these counts alone, 0…1',
        }),
      grainDeg: z.number(),
      travelMm: z
        .object({ median: z.number(), low: z.number(), high: z.number() })
        .meta({ description: 'Colour travel along the fibres from a wall across the grain, mm' }),
      visibleProbability: z.number().meta({
        description: 'That a streak is longer than is seen, whatever its colour, 0…1',
      }),
      streak: z
        .object({
          deltaE00: z.number().meta({ description: 'CIEDE2000 of tinted wood against the wood' }),
          index: z
            .number()
            .meta({ description: 'Rank of bleed from length and colour at a wall across the grain, 0…1' }),
        })
        .optional()
        .meta({ description: 'Where the colours of wood and resin are known' }),
      areaMm2: mm2('Face that colour may reach at the median travel'),
      areaLowMm2: mm2('The same at the low end of the band'),
      areaHighMm2: mm2('The same at the high end of the band'),
    }),
  ),
});

const seal = z.object({
  filmMm: mm('Film on walls and floor'),
  massG: gram('Liquid sealer for walls and floors of one board'),
  ghostBelowMm: mm('Strokes narrower than this fill with clear seal alone').nullable(),
  ghostLengthMm: mm('Length of stroke that does'),
});

const levelling = z.object({
  planMm: mm('What levelling takes off'),
  marginMm: mm('What can come off before the first stroke is gone'),
  leftMm: mm('Depth of colour that the plan leaves in the narrowest stroke'),
  leftWidthMm: mm(
    'Width at the face that the plan leaves of it: between sloping walls (V, ball, taper) it gets narrower',
  ),
  firstLostAt: point.nullable(),
  lostLengthMm: mm('Length of stroke that the plan takes away'),
  strokesMm: z
    .object({
      lost: mm('all colour goes'),
      spoilt: mm('too narrow, or too shallow to hide the floor'),
      close: mm('the same under twice the plan'),
      holds: mm('safe'),
    })
    .meta({ description: 'Length of stroke that is cut, by what the plan does to it' }),
  flatness: z
    .object({
      rangeMm: mm('How much the face rises and falls under the cut'),
      lowestAt: point,
      highestAt: point,
      residualMm: mm('Largest distance of a reading from the fitted surface'),
      veeWidthMm: z
        .object({ narrowerBy: z.number().nonnegative(), widerBy: z.number().nonnegative() })
        .optional()
        .meta({
          description: 'Where a V bit is used: how much its strokes come out off their width at most, mm',
        }),
    })
    .optional()
    .meta({ description: 'Where the board was measured' }),
  method: z.string().meta({ description: 'How the face is levelled' }),
  methodMm: z
    .object({ low: z.number(), usual: z.number(), high: z.number() })
    .meta({ description: 'What this way of levelling usually takes off, mm' }),
});

const slivers = z.object({
  narrowestMm: mm('Thinnest wood between cuts').nullable(),
  narrowestAt: point.nullable(),
  shortGrain: z.array(
    z.object({
      atMm: point,
      widthMm: mm('Thickness'),
      heightMm: mm('Height'),
      lengthMm: mm('Length'),
      angleDeg: z.number().meta({ description: 'Angle between its long axis and the fibres' }),
      limitMm: mm('Thickness that practice asks for'),
      isShortGrain: z.boolean().meta({ description: 'Whether the fibres run across it' }),
    }),
  ),
});

const place = z.object({
  atMm: point,
  outline: z.array(z.array(point)).meta({ description: 'Rings or open lines that show the place, mm' }),
});

/** The least change that helps; several ways may be open. */
const fixOption = z.object({
  do: z.enum([
    'use-bit',
    'scale',
    'widen',
    'turn-grain',
    'change-seal',
    'change-wood',
    'close-gap',
    'merge-shapes',
    'deepen',
    'cut-shallower',
    'level-less',
    'fewer-coats',
    'wait',
    'flatten',
    'move',
    'add-resin',
    'mix-more',
    'use-scale',
    'zero-between',
    'pour-in-lifts',
    'use-resin',
    'clean',
    'test-coupon',
  ]),
  value: z.union([z.number(), z.string()]),
  unit: z.string(),
  clears: z.boolean().meta({ description: 'Whether it clears the finding by itself, as computed' }),
});

const finding = z.object({
  code: z.enum(FINDING_CODES),
  severity: z.enum(['stop', 'caution', 'note']),
  where: z.array(place),
  measured: quantity,
  limit: quantity,
  because: z.array(z.string()).min(1).meta({ description: 'Ids of docs/sources.md' }),
  fix: z.object({ options: z.array(fixOption) }),
});

/** The report contract `pourproof/report@1`: the one source of its TypeScript type and of its published JSON Schema. */
export const reportSchema = z.object({
  schema: z.literal('pourproof/report@1'),
  artwork,
  cut,
  strokes,
  slivers,
  endGrain,
  bleed,
  seal,
  levelling,
  pour: pourSchema,
  findings: z.array(finding),
  defaults: z
    .array(z.string())
    .meta({ description: 'Job values that were not given and are defaults of the program' }),
  materialDefaults: z.array(z.string()).meta({
    description:
      'Values of wood, seal, resin and scale that are defaults and not the maker’s own, as wood.lab',
  }),
  verdict: z.enum(['clear', 'caution', 'stop']),
});

/** What a proof says, as data. */
export type Report = z.infer<typeof reportSchema>;
/** One finding of a report. */
export type Finding = z.infer<typeof finding>;
/** A place of a finding. */
export type FindingPlace = z.infer<typeof place>;
/** One way to clear a finding. */
export type FixOption = z.infer<typeof fixOption>;
/** How grave a finding is. */
export type Severity = Finding['severity'];
