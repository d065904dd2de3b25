import { CARVE_MODES, FILE_UNITS, type JobFile, LETTERING_SIDES } from '@pourproof/job';
import { levelMethods, resinColours } from '@pourproof/materials';
import { FLAGS, type Flag } from './flags.ts';
import { oneOf, type ParsedFlags } from './parse-flags.ts';
import { UsageError } from './usage-error.ts';

/**
 * The flags that are keys of a job file too, in its form and in the order typed; their meaning is checked where the job is settled.
 *
 * @throws {UsageError} where a number is expected and none is typed, or for a word that a flag does not know
 */
export function jobFlags(flags: ParsedFlags): Partial<JobFile> {
  oneOf(flags, 'units', ['mm', 'in']);
  oneOf(flags, 'colour', Object.keys(resinColours));
  oneOf(flags, 'level-by', Object.keys(levelMethods));
  oneOf(flags, 'align', LETTERING_SIDES);
  oneOf(flags, 'carve', CARVE_MODES);
  oneOf(flags, 'file-unit', FILE_UNITS);
  return Object.fromEntries(
    [...flags.values].flatMap(([name, values]) => {
      const flag = FLAGS.find((each) => each.name === name);
      return flag?.key === undefined ? [] : [[flag.key, jobValue(flag, values)]];
    }),
  );
}

function jobValue(flag: Flag, values: readonly string[]): readonly string[] | string | number | boolean {
  const [text = ''] = values;
  if (flag.many === true) {
    return [...values];
  }
  if (flag.takes === undefined) {
    return true;
  }
  return flag.number === undefined ? text : numberFrom(flag.name, text, flag.number);
}

function numberFrom(name: string, text: string, form: string): number {
  const value = Number(text);
  if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/iu.test(text.trim()) || !Number.isFinite(value)) {
    throw new UsageError(`--${name} "${text}" is not a number.`, `It is ${form}.`);
  }
  return value;
}
