import type { JobInput } from '@pourproof/job';
import { oneOf, type ParsedFlags } from './parse-flags.ts';
import { FLAGS, type Flag } from './tables/flags.ts';
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
    return oneOf(flags, flag.name, flag.choices, flag.names) ?? text;
  }
  return flag.number === undefined ? text : numberFrom(flag, text, flag.number);
}

/** A number as typed, with a decimal point or comma, and with a percent sign where it is a share. */
function numberFrom({ name, percent }: Flag, text: string, form: string): number {
  const [, digits = '', sign = ''] = /^(.*?)\s*(%?)$/u.exec(text.trim()) ?? [];
  const plain = digits.replace(/^([+-]?\d*),(\d+)$/u, '$1.$2');
  const value = Number(plain);
  const isNumber = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/iu.test(plain) && Number.isFinite(value);
  if (!isNumber || (sign === '%' && percent === undefined)) {
    throw new UsageError(`--${name} "${text}" is not a number.`, `It is ${form}.`);
  }
  if (/^[+-]?[1-9]\d{0,2},\d{3}$/u.test(digits)) {
    throw new UsageError(
      `--${name} "${text}" can be read in two ways.`,
      `Did you mean ${digits.replace(',', '.')} or ${digits.replace(',', '')}?`,
    );
  }
  return sign === '%' && percent === 'hundredths' ? value / 100 : value;
}
