import { type JobInput, SETTINGS, type SettingKey } from './settings/table.ts';

/** What of a value is typed: texts, numbers, ticks and lists of texts. */
type Typed<Value> =
  | Extract<Value, string | number | boolean>
  | (Extract<Value, readonly unknown[]> extends readonly (infer Each)[]
      ? [Extract<Each, string>] extends [never]
        ? Extract<Value, readonly unknown[]>
        : readonly Extract<Each, string>[]
      : never);

/** A job as it is typed into a form: no structures, but for the coupons, which come from a file. */
export type TypedJob = {
  readonly [Key in SettingKey]?: Typed<Exclude<JobInput[Key], undefined>> | undefined;
} & { readonly schema?: JobInput['schema'] };

/**
 * A job with every structure as the text that means the same, so that a form can show it and a maker can
 * change it.
 */
export function typedJob(job: JobInput): TypedJob {
  return Object.fromEntries(
    Object.entries(job).map(([key, value]) => {
      const row = Object.hasOwn(SETTINGS, key) ? SETTINGS[key as SettingKey] : undefined;
      return [key, value === undefined || row === undefined ? value : row.holds.typed(value)];
    }),
  ) as TypedJob;
}
