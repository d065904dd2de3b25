import {
  defaultMaterials,
  type MaterialsBook,
  MaterialsError,
  type MaterialsOverrides,
  mergeMaterials,
} from '@pourproof/materials';
import * as z from 'zod/mini';
import { JobError } from '../refusals/job-error.ts';
import { refuseShape } from '../refusals/shape-issues.ts';

const SCHEMA = 'pourproof/materials@1';

const above = (what: string): z.ZodMiniOptional<z.ZodMiniNumber> =>
  z.optional(z.number().check(z.positive(), z.meta({ description: what })));

const start = {
  like: z.optional(z.string()).check(z.meta({ description: 'Id of the row that a new id starts from' })),
  name: z.optional(z.string().check(z.minLength(1))),
};

const positive = z.number().check(z.positive());
const share = z.number().check(z.positive(), z.lte(1));

const ratio = z.optional(
  z
    .strictObject({ a: positive, b: positive })
    .check(z.meta({ description: 'Parts A to parts B, as on the label' })),
);

const wood = z.strictObject({
  ...start,
  botanical: z.optional(z.string()),
  lab: z
    .optional(z.readonly(z.tuple([z.number(), z.number(), z.number()])))
    .check(z.meta({ description: 'CIE L*a*b* of the dry, sanded face' })),
  bleedPriorMm: above('Median streak length in the unsealed wood, from own tests, mm'),
  heartFactor: above('Travel in heartwood as a factor on that length, from own tests'),
  sapFactor: above('Travel in sapwood as a factor on that length, from own tests'),
  oily: z.optional(z.boolean()),
});

const sealer = z.strictObject({
  ...start,
  curve: z
    .optional(z.array(z.strictObject({ hours: positive, factor: share })).check(z.minLength(1)))
    .check(z.meta({ description: 'Share of colour travel left after hours of cure, hours rising' })),
  solids: z.optional(share).check(z.meta({ description: 'Solids by volume, 0 to 1' })),
  densityGPerMl: above('Density, g/ml'),
  wetFilmMm: above('Wet film of one coat, mm'),
  readyHours: above('Hours at 25 °C until the next coat or the pour'),
});

const resin = z.strictObject({
  ...start,
  viscosityPaS: above('Viscosity just mixed at 25 °C, Pa·s'),
  potLifeMin: above('Pot life of 100 g at 25 °C, minutes'),
  gelMin: above('Minutes to gel as a thin layer at 25 °C'),
  hardHours: above('Hours until sanding at 25 °C'),
  fullCureDays: above('Days to full cure at 25 °C'),
  ratioByVolume: ratio,
  ratioByWeight: ratio,
  ratioTolerancePct: above('How far the ratio may be off, percent'),
  densityAGPerMl: above('Density of part A, g/ml'),
  densityBGPerMl: above('Density of part B, g/ml'),
  densityMixedGPerMl: above('Density of the mix, g/ml'),
  deepestPourMm: above('Deepest single pour, mm'),
  largestMixG: above('Most that may be mixed in one cup at 25 °C, g'),
  minTempC: above('Coldest shop in which it cures, °C'),
  maxTempC: above('Warmest shop in which it can be poured, °C'),
  shrinkagePct: z
    .optional(z.number().check(z.nonnegative()))
    .check(z.meta({ description: 'Loss of volume on curing, percent' })),
});

const scale = z.strictObject({
  name: z.string().check(z.minLength(1)),
  resolutionG: z.number().check(z.positive(), z.meta({ description: 'Step of the display, g' })),
  capacityG: above('Most mix that it weighs in one cup, g'),
});

const cutter = z.strictObject({
  shape: z.enum(['flat', 'vee', 'ball', 'tapered-ball']),
  label: z.string().check(z.minLength(1), z.meta({ description: 'As the maker writes it, such as "1/8in"' })),
  diameterMm: positive,
  angleDeg: z.nullable(positive),
});

const table = <Row extends z.ZodMiniType>(
  row: Row,
  what: string,
): z.ZodMiniOptional<z.ZodMiniRecord<z.ZodMiniString, Row>> =>
  z.optional(z.record(z.string(), row).check(z.meta({ description: `${what}, by id` })));

/** The tables of a maker's own values, as a file of materials and a file of a shop have them. */
export const materialsEntries = {
  woods: table(wood, 'Woods'),
  sealers: table(sealer, 'Sealers'),
  resins: table(resin, 'Resins'),
  scales: table(scale, 'Scales'),
  cutters: z
    .optional(z.array(cutter))
    .check(z.meta({ description: 'The cutters at hand; they replace the usual sizes' })),
} as const;

/**
 * The file `pourproof/materials@1` beside a job: what the maker knows of the wood, sealers, resins, scales
 * and cutters at hand. Every value in it stands before the default of its class.
 */
export const materialsFileSchema = z.strictObject({ schema: z.literal(SCHEMA), ...materialsEntries });

/** The maker's materials as they stand in a file. */
export type MaterialsFile = z.infer<typeof materialsFileSchema>;

/**
 * The book of materials for a job: the defaults with the entries of a parsed `materials.json` before them.
 *
 * @param name file name for messages
 * @param book what the entries stand before: that of the maker's shop, where there is one
 * @throws {JobError} naming each entry that is wrong and what to write
 */
export function readMaterialsFile(
  data: unknown,
  name: string,
  book: MaterialsBook = defaultMaterials,
): MaterialsBook {
  const result = materialsFileSchema.safeParse(data, { reportInput: true });
  if (!result.success) {
    refuseShape(result.error, {
      file: name,
      schema: SCHEMA,
      keys: Object.keys(materialsFileSchema.shape),
      forms: {},
    });
  }
  try {
    return mergeMaterials(book, overridesFrom(result.data));
  } catch (error) {
    if (error instanceof MaterialsError) {
      const { place, what, remedy } = error;
      throw new JobError('materials-entry', null, { file: name, reason: `${place}: ${what}`, remedy });
    }
    throw error;
  }
}

/** The same data without keys that are present but undefined, which the merge takes for entries. */
export function overridesFrom({ schema: _, ...entries }: Partial<MaterialsFile>): MaterialsOverrides {
  return JSON.parse(JSON.stringify(entries)) as MaterialsOverrides;
}
