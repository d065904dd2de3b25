import * as z from 'zod/mini';
import { JobError } from './refusals/job-error.ts';
import { refuseShape } from './refusals/shape-issues.ts';
import { type JobInput, SETTING_KEYS, SETTINGS, type SettingKey } from './settings/table.ts';
import { withKnownChoices } from './values/known-choices.ts';

const SCHEMA = 'pourproof/job@1';

/** A job as it stands in a file: the input of {@link settleJob} under the name of its schema. */
export type JobFile = JobInput & { readonly schema: typeof SCHEMA };

const settings = Object.fromEntries(
  SETTING_KEYS.map((key) => {
    const { holds, help } = SETTINGS[key];
    return [key, z.optional(holds.schema).check(z.meta({ description: `${help}; ${holds.form}` }))];
  }),
);

/**
 * The schema of the job file `pourproof/job@1`. Its keys are the flags of `vet` without dashes and its
 * lengths are typed as on the command line, so that a maker needs to learn one way only.
 */
export const jobFileSchema: z.ZodMiniType = z.strictObject({ schema: z.literal(SCHEMA), ...settings });

const jobInputSchema = z.strictObject({ schema: z.optional(z.literal(SCHEMA)), ...settings });

const SHAPE = {
  schema: SCHEMA,
  keys: ['schema', ...SETTING_KEYS],
  forms: Object.fromEntries(SETTING_KEYS.map((key) => [key, formInFile(key)])),
};

function formInFile(key: SettingKey): string {
  const { control, form } = SETTINGS[key].holds;
  return control === 'number' ? `${form}, without quotes` : form;
}

/**
 * Checks the shape of a parsed job file and returns it as it stands, choices as the schema writes them.
 *
 * @param name file name for messages; `null` for the words of a job given in code
 * @throws {JobError} naming every key that is wrong
 */
export function readJobFile(file: unknown, name: string | null): JobFile {
  const data = withKnownChoices(file);
  const result = jobFileSchema.safeParse(data, { reportInput: true });
  if (!result.success) {
    refuseShape(result.error, { ...SHAPE, file: name });
  }
  const job = data as JobFile;
  if (job.artwork !== undefined && job.text !== undefined) {
    throw new JobError('two-artworks', 'artwork', { file: name });
  }
  return job;
}

/**
 * Refuses a job given in code whose shape is wrong.
 *
 * @throws {JobError} naming every key that is wrong
 */
export function refuseJobShape(input: unknown, file: string | null): asserts input is JobInput {
  const result = jobInputSchema.safeParse(input, { reportInput: true });
  if (!result.success) {
    refuseShape(result.error, { ...SHAPE, file });
  }
}
