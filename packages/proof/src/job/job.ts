import { type ResinId, resins, type SealId, sealers, type WoodId, woods } from '@pourproof/materials';
import { MeasureError, parseMeasure, type Quantity } from '@pourproof/plane';
import { z } from 'zod';
import { type Bit, parseBit } from './bit.ts';

const ids = <T extends string>(table: Readonly<Record<T, unknown>>): [T, ...T[]] =>
  Object.keys(table) as [T, ...T[]];

const typed = (quantity: Quantity, what: string, example: string): z.ZodOptional<z.ZodString> =>
  z
    .string()
    .meta({ description: `${what}; a ${quantity} with its unit, such as "${example}"` })
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
  width: typed('length', 'Width that the artwork is scaled to', '120mm'),
  height: typed('length', 'Height that the artwork is scaled to', '3in'),
  scale: z.number().positive().optional(),
  bit: z.array(z.string()).min(1).optional().meta({ description: 'Bits in the order of use' }),
  depth: typed('length', 'Depth of the pocket', '1/8in'),
  grain: typed('angle', 'Fibre direction on the face, counter-clockwise from the artwork’s x axis', '0deg'),
  dive: typed('angle', 'Fibre direction out of the face; 90deg is an end-grain board', '0deg'),
  wood: z.enum(ids(woods)).optional(),
  seal: z.enum(ids(sealers)).optional(),
  coats: z.number().int().min(0).max(10).optional(),
  sealHours: typed('time', 'Time from the last coat to the pour', '24h'),
  resin: z.enum(ids(resins)).optional(),
  level: typed('length', 'How much of the face levelling takes off', '0.5mm'),
  overpour: typed('length', 'How proud of the face the resin is poured', '0.5mm'),
  wastePct: z.number().min(0).max(100).optional(),
  tolerance: typed('length', 'Largest deviation of flattened curves', '0.005mm'),
  units: z.enum(['mm', 'in']).optional(),
});

/** A job as it stands in a file or comes from flags; everything optional. */
export type JobFile = z.infer<typeof jobFileSchema>;

/** The question that a proof answers; every value settled. Lengths in mm, angles in degrees, times in hours. */
export interface Job {
  /** In the order of use; at least one. */
  readonly bits: readonly Bit[];
  readonly depthMm: number;
  readonly grainDeg: number;
  readonly diveDeg: number;
  readonly wood: WoodId;
  readonly seal: SealId;
  readonly coats: number;
  readonly sealHours: number;
  readonly resin: ResinId;
  readonly levelMm: number;
  readonly overpourMm: number;
  readonly wastePct: number;
  readonly toleranceMm: number;
  readonly units: 'mm' | 'in';
  /** Names of the values above that were not given. */
  readonly defaults: readonly string[];
}

/** A job that cannot be read; the message says which key, why, and what to write. */
export class JobError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'JobError';
  }
}

/**
 * What a job is where the maker says nothing: a 1/8 in flat bit, 1/8 in deep, in sugar maple with one coat of shellac.
 * Common practice throughout (no source), and each one used is listed in the report.
 */
const DEFAULTS: Readonly<Record<string, string | number | readonly string[]>> = {
  bit: ['flat:1/8in'],
  depth: '1/8in',
  grain: '0deg',
  dive: '0deg',
  wood: 'maple',
  seal: 'none',
  coats: 1,
  sealHours: '24h',
  resin: 'coating',
  level: '0.5mm',
  overpour: '0.5mm',
  wastePct: 15,
  tolerance: '0.005mm',
  units: 'mm',
};

/**
 * Checks the shape of a parsed job file.
 *
 * @throws {JobError} naming every key that is wrong
 */
export function readJobFile(data: unknown, name: string): JobFile {
  const result = jobFileSchema.safeParse(data);
  if (result.success) {
    return result.data;
  }
  const lines = result.error.issues.map((issue) => `  ${issue.path.join('.') || '(file)'}: ${issue.message}`);
  throw new JobError(
    `${name} is not a pourproof/job@1 file:\n${lines.join('\n')}\nThe schema is in docs/schema/job@1.json.`,
  );
}

/**
 * Settles a job: later parts override earlier ones, defaults fill the rest and are named.
 *
 * @throws {JobError} when a value cannot be read or makes no sense
 */
export function settleJob(...parts: readonly Partial<JobFile>[]): Job {
  const given: Partial<Record<string, unknown>> = {};
  for (const part of parts) {
    for (const [key, value] of Object.entries(part)) {
      if (value !== undefined) {
        given[key] = value;
      }
    }
  }
  const defaults = Object.keys(DEFAULTS).filter((key) => given[key] === undefined);
  const value = <T>(key: string): T => (given[key] ?? DEFAULTS[key]) as T;
  const bits = value<readonly string[]>('bit').map((text) => read('bit', () => parseBit(text)));
  const job: Job = {
    bits,
    depthMm: measure('depth', value('depth'), 'length'),
    grainDeg: measure('grain', value('grain'), 'angle'),
    diveDeg: measure('dive', value('dive'), 'angle'),
    wood: known('wood', value('wood'), woods),
    seal: known('seal', value('seal'), sealers),
    coats: value('coats'),
    sealHours: measure('sealHours', value('sealHours'), 'time'),
    resin: known('resin', value('resin'), resins),
    levelMm: measure('level', value('level'), 'length'),
    overpourMm: measure('overpour', value('overpour'), 'length'),
    wastePct: value('wastePct'),
    toleranceMm: measure('tolerance', value('tolerance'), 'length'),
    units: value('units'),
    defaults,
  };
  refuseNonsense(job);
  return job;
}

function refuseNonsense(job: Job): void {
  const refuse = (bad: boolean, message: string): void => {
    if (bad) {
      throw new JobError(message);
    }
  };
  refuse(
    !(job.depthMm > 0),
    `depth is ${job.depthMm} mm; a pocket needs a depth above 0, such as 1/8in or 3mm.`,
  );
  refuse(
    job.depthMm > 100,
    `depth is ${job.depthMm} mm, deeper than any board here (100 mm). Check its unit.`,
  );
  refuse(job.diveDeg < 0 || job.diveDeg > 90, `dive is ${job.diveDeg}°; it lies between 0deg and 90deg.`);
  refuse(job.levelMm < 0, `level is ${job.levelMm} mm; it can't be below 0.`);
  refuse(job.overpourMm < 0, `overpour is ${job.overpourMm} mm; it can't be below 0.`);
  refuse(job.sealHours < 0, `sealHours is ${job.sealHours} h; it can't be below 0.`);
  refuse(
    !(Number.isInteger(job.coats) && job.coats >= 0 && job.coats <= 10),
    `coats is ${job.coats}; it must be a whole number from 0 to 10.`,
  );
  refuse(
    !(job.toleranceMm >= 1e-4 && job.toleranceMm <= 0.5),
    `tolerance is ${job.toleranceMm} mm; it lies between 0.0001mm and 0.5mm.`,
  );
  refuse(
    !(job.wastePct >= 0 && job.wastePct <= 100),
    `wastePct is ${job.wastePct}; it lies between 0 and 100.`,
  );
  const other = job.bits.find((bit) => bit.kind !== 'flat');
  refuse(
    other !== undefined,
    `a ${other?.kind} bit can't be vetted yet, only flat bits. Use --bit flat:… for now; nothing was computed.`,
  );
}

function measure(key: string, text: string, quantity: Quantity): number {
  return read(key, () => parseMeasure(text, quantity).value);
}

function read<T>(key: string, parse: () => T): T {
  try {
    return parse();
  } catch (error) {
    if (error instanceof MeasureError) {
      throw new JobError(`${key}: ${error.message}`);
    }
    throw error;
  }
}

function known<T extends string>(key: string, id: string, table: Readonly<Record<T, unknown>>): T {
  if (!Object.hasOwn(table, id)) {
    throw new JobError(`${key} "${id}" is unknown. Known: ${Object.keys(table).join(', ')}.`);
  }
  return id as T;
}
