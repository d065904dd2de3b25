import { levelMethods, type ResinColourId, resinColours } from '@pourproof/materials';
import type { Quantity } from '@pourproof/plane';
import { z } from 'zod';
import { couponRowsSchema } from './coupons/coupon-row.ts';
import { issueLines } from './coupons/issue-lines.ts';
import { CARVE_MODES, FILE_UNITS } from './file-reading.ts';
import { JobError } from './job-error.ts';
import { LETTERING_SIDES } from './lettering-setting.ts';

const keys = <T extends string>(table: Readonly<Record<T, unknown>>): [T, ...T[]] =>
  Object.keys(table) as [T, ...T[]];

const typed = (quantity: Quantity, what: string, example: string): z.ZodOptional<z.ZodString> =>
  z
    .string()
    .meta({ description: `${what}; a ${quantity} with its unit, such as "${example}"` })
    .optional();

const id = (what: string): z.ZodOptional<z.ZodString> =>
  z
    .string()
    .meta({ description: `${what}: an id of the tables or of materials.json` })
    .optional();

/**
 * The job file `pourproof/job@1`. Its keys are the flags of `vet` without dashes and its lengths are typed as on the command
 * line, so that a maker needs to learn one way only.
 */
export const jobFileSchema = z.strictObject({
  schema: z.literal('pourproof/job@1'),
  artwork: z.string().optional().meta({ description: 'SVG or DXF file, relative to this job file' }),
  text: z.string().optional().meta({ description: 'Lettering instead of a file; needs font' }),
  font: z.string().optional().meta({ description: 'Font file, relative to this job file' }),
  capHeight: typed('length', 'Height of capitals', '15mm'),
  singleLine: z
    .boolean()
    .optional()
    .meta({ description: 'Letters of single strokes as wide as the smallest bit, without a font' }),
  align: z.enum(LETTERING_SIDES).optional().meta({ description: 'Edge on which lines of lettering meet' }),
  tracking: typed('length', 'Room added between letters', '0.5mm'),
  lineSpacing: z
    .number()
    .optional()
    .meta({ description: 'Distance of lines as a factor of the font’s own, above 0' }),
  arc: z
    .string()
    .optional()
    .meta({ description: 'Circle that the lettering is bent over, such as "80mm" or "80mm under"' }),
  axis: z
    .array(z.string())
    .min(1)
    .optional()
    .meta({ description: 'Axes of a variable font, such as "wght=600"' }),
  width: typed('length', 'Width that the artwork is scaled to', '120mm'),
  height: typed('length', 'Height that the artwork is scaled to', '3in'),
  scale: z.number().positive().optional(),
  carve: z.enum(CARVE_MODES).optional().meta({
    description: 'Carve all that an SVG paints, or only what no other paint covers',
  }),
  fileUnit: z.enum(FILE_UNITS).optional().meta({ description: 'Unit of a DXF drawing' }),
  join: typed('length', 'Widest gap that is closed between lines of a DXF drawing', '0.1mm'),
  bit: z.array(z.string()).min(1).optional().meta({ description: 'Bits in the order of use' }),
  depth: typed('length', 'Depth of the pocket', '1/8in'),
  grain: typed('angle', 'Fibre direction on the face, counter-clockwise from the artwork’s x axis', '0deg'),
  dive: typed('angle', 'Fibre direction out of the face; 90deg is an end-grain board', '0deg'),
  wood: id('Wood of the board'),
  board: z.string().optional().meta({
    description: 'Glue-up in one line, such as "stripes 300x180x20mm maple:60mm walnut:20mm"',
  }),
  block: z.array(z.string()).min(1).optional().meta({
    description: 'Blocks of a board of any polygons, such as "walnut grain:45deg 0mm,0mm 80mm,0mm 80mm,60mm"',
  }),
  margin: typed('length', 'Rim of the board that the cut stays off', '10mm'),
  keepClear: z.array(z.string()).min(1).optional().meta({
    description: 'Holes and grooves, such as "hole 20mm,30mm 8mm" or "groove 0mm,160mm 300mm,160mm 6mm"',
  }),
  place: z
    .string()
    .optional()
    .meta({ description: 'Where the middle of the artwork comes on the board, such as "150mm,90mm"' }),
  turn: typed('angle', 'Turn of the artwork on the board, counter-clockwise', '15deg'),
  reading: z
    .array(z.string())
    .min(5)
    .max(9)
    .optional()
    .meta({ description: 'Heights of the face at 5 to 9 places, such as "20mm,30mm 19.8mm"' }),
  oiled: z.boolean().optional().meta({ description: 'Whether the board was ever oiled or waxed' }),
  seal: id('Seal coat before the colour'),
  coats: z.number().int().min(0).max(10).optional(),
  sealHours: typed('time', 'Time from the last coat to the pour', '24h'),
  resin: id('Resin'),
  coupons: couponRowsSchema.optional().meta({ description: 'Test slots cut and read: they move the prior' }),
  colour: z
    .enum(keys<ResinColourId>(resinColours))
    .optional()
    .meta({ description: 'Colour of the resin, to tell whether a streak shows' }),
  pigmentPct: z.number().min(0).max(20).optional().meta({ description: 'Pigment by weight of the mix' }),
  level: typed('length', 'How much of the face levelling takes off', '0.5mm'),
  levelBy: z.enum(keys(levelMethods)).optional().meta({ description: 'How the face is levelled' }),
  overpour: typed('length', 'How proud of the face the resin is poured', '0.5mm'),
  wastePct: z.number().min(0).max(100).optional(),
  boards: z.number().int().min(1).max(1000).optional().meta({ description: 'Equal boards poured together' }),
  weigh: id('Scale that the parts are weighed on'),
  pricePerG: z
    .number()
    .nonnegative()
    .optional()
    .meta({ description: 'Price of a gram of mixed resin, in the maker’s money' }),
  shopTemp: typed('temperature', 'Temperature of shop and resin', '21C'),
  start: z.string().optional().meta({
    description: 'Day and time at which carving starts, such as "2026-12-01 09:00"; the clock of the shop',
  }),
  feed: typed('speed', 'Speed of the bit along its way in the wood', '1000mm/min'),
  plunge: typed('speed', 'Speed of the bit straight down', '300mm/min'),
  rapid: typed('speed', 'Speed above the wood', '2500mm/min'),
  accelerationMmPerS2: z
    .number()
    .positive()
    .optional()
    .meta({ description: 'How fast the machine speeds up and slows down, mm/s²' }),
  passDepth: typed('length', 'Most depth that is taken in one pass', '1.5mm'),
  stepoverPct: z
    .number()
    .min(1)
    .max(50)
    .optional()
    .meta({ description: 'Distance between rounds when an area is cleared, percent of the tip’s diameter' }),
  tolerance: typed('length', 'Largest deviation of flattened curves', '0.005mm'),
  units: z.enum(['mm', 'in']).optional(),
});

/** A job as it stands in a file or comes from flags; everything optional. */
export type JobFile = z.infer<typeof jobFileSchema>;

/**
 * Checks the shape of a parsed job file and returns it, its keys in the order of the file.
 *
 * @throws {JobError} naming every key that is wrong
 */
export function readJobFile(data: unknown, name: string): JobFile {
  const result = jobFileSchema.safeParse(data);
  if (result.success) {
    refuseTwoArtworks(result.data, name);
    return inOrderOf(data, result.data);
  }
  throw new JobError(
    `${name} is not a pourproof/job@1 file:\n${issueLines(result.error)}\nThe schema is in docs/schema/job@1.json.`,
  );
}

/** A file's keys in its own order: the first length says in which unit its maker thinks. */
function inOrderOf(data: unknown, file: JobFile): JobFile {
  const order = Object.keys(data as object);
  const at = ([key]: readonly [string, unknown]): number => order.indexOf(key);
  return Object.fromEntries(Object.entries(file).toSorted((a, b) => at(a) - at(b))) as JobFile;
}

function refuseTwoArtworks({ artwork, text }: JobFile, name: string): void {
  if (artwork !== undefined && text !== undefined) {
    throw new JobError(
      `${name} names both artwork and text. Check which of them is meant, and take the other one out.`,
    );
  }
}
