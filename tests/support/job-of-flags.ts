import { flagOf, type JobInput, SETTING_KEYS, SETTINGS, typedJob } from '@pourproof/job';

/**
 * The job that flags of settings make, each with its value beside it.
 *
 * @throws {Error} for a flag that sets nothing of a job
 */
export function jobOfFlags(flags: readonly string[]): JobInput {
  const job: Record<string, unknown> = {};
  for (let k = 0; k < flags.length; k++) {
    const key = SETTING_KEYS.find((each) => `--${flagOf(each) ?? ''}` === flags[k]);
    if (key === undefined) {
      throw new Error(`${flags[k]} is no setting`);
    }
    const { control, isList } = SETTINGS[key].holds;
    const value = flags[k + 1];
    if (value === undefined || value.startsWith('--')) {
      job[key] = true;
    } else {
      k++;
      job[key] =
        isList === true
          ? [...((job[key] as string[] | undefined) ?? []), value]
          : control === 'number'
            ? Number(value)
            : value;
    }
  }
  return job;
}

/** The flags that a maker types for a job. */
export function flagsOfJob(job: JobInput): string[] {
  return Object.entries(typedJob(job)).flatMap(([key, value]) => {
    const flag = `--${flagOf(key as keyof JobInput & keyof typeof SETTINGS)}`;
    return value === undefined || value === false
      ? []
      : value === true
        ? [flag]
        : Array.isArray(value)
          ? value.flatMap((each) => [flag, String(each)])
          : [flag, String(value)];
  });
}
