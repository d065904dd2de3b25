import type { JobInput } from '@pourproof/job';
import { FLAGS, type Flag } from './flags.ts';
import { oneOf, type ParsedFlags } from './parse-flags.ts';
import { UsageError } from './usage-error.ts';

/**
 * The flags that are settings of a job, as a job in the order typed; their meaning is checked where the job
 * is settled.
 *
 * @throws {UsageError} where a number is expected and none is typed, or for a word that a flag does not know
 */
export function jobFlags(flags: ParsedFlags): JobInput {
  return Object.fromEntries(
    [...flags.values].flatMap(([name, values]) => {
      const flag = FLAGS.find((each) => each.name === name);
      return flag?.key === undefined ? [] : [[flag.key, jobValue(flag, values, flags)]];
    }),
  );
}

function jobValue(
  flag: Flag,
  values: readonly string[],
  flags: ParsedFlags,
): readonly string[] | string | number | boolean {
  const [text = ''] = values;
  if (flag.many === true) {
    return [...values];
  }
  if (flag.takes === undefined) {
    return true;
  }
  if (flag.choices !== undefined) {
    return oneOf(flags, flag.name, flag.choices) ?? text;
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
