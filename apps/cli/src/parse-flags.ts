import { parseArgs } from 'node:util';
import { knownWord, nearestWord } from '@pourproof/job';
import { FLAGS, type Flag } from './tables/flags.ts';
import { UsageError } from './usage-error.ts';

/** Flags as typed, and what is not a flag. */
export interface ParsedFlags {
  readonly files: readonly string[];
  /** Values by flag name, in the order typed; a switch has one empty value. */
  readonly values: ReadonlyMap<string, readonly string[]>;
}

/**
 * Splits the arguments of `vet` into flags and files.
 *
 * @param may whether a flag that `vet` takes once may be repeated, as where its values are compared
 * @throws {UsageError} for a flag that is unknown, repeated, or with a value missing or too many
 */
export function parseFlags(argv: readonly string[], may: 'once' | 'repeat' = 'once'): ParsedFlags {
  const { tokens } = parseArgs({
    args: [...argv],
    options: Object.fromEntries(
      FLAGS.map((flag) => [flag.name, { type: flag.takes === undefined ? 'boolean' : 'string' } as const]),
    ),
    allowPositionals: true,
    strict: false,
    tokens: true,
  });
  const files: string[] = [];
  const values = new Map<string, string[]>();
  for (const token of tokens) {
    if (token.kind === 'positional') {
      files.push(token.value);
    } else if (token.kind === 'option') {
      const flag = flagNamed(token.rawName, token.name);
      const given = values.get(flag.name) ?? [];
      if (given.length > 0 && flag.many !== true && (may === 'once' || flag.key === undefined)) {
        throw new UsageError(`--${flag.name} is given twice.`, 'Give it once.');
      }
      values.set(flag.name, [...given, valueFor(flag, token.value, token.inlineValue === true)]);
    }
  }
  return { files, values };
}

function flagNamed(rawName: string, name: string): Flag {
  const flag = rawName.startsWith('--') ? FLAGS.find((each) => each.name === name) : undefined;
  if (flag === undefined) {
    const near = nearestWord(
      name,
      FLAGS.map((each) => each.name),
    );
    throw new UsageError(
      `there is no flag ${rawName}.`,
      near === null ? 'All flags: pourproof --help.' : `Did you mean --${near}? All flags: pourproof --help.`,
    );
  }
  return flag;
}

function valueFor(flag: Flag, value: string | undefined, isInline: boolean): string {
  if (flag.takes === undefined) {
    if (value !== undefined) {
      throw new UsageError(
        `--${flag.name} takes no value, but got "${value}".`,
        `Write --${flag.name} alone.`,
      );
    }
    return '';
  }
  // a minus may start an angle, two of them start the next flag
  if (value === undefined || value.trim() === '' || (!isInline && value.startsWith('--'))) {
    throw new UsageError(
      `--${flag.name} needs a value.`,
      `Write --${flag.name} ${flag.takes}: ${flag.help}.`,
    );
  }
  return value;
}

/** The value of a flag that may be given once. */
export function typedValue(flags: ParsedFlags, name: string): string | undefined {
  return flags.values.get(name)?.[0];
}

/**
 * The value of a flag that takes one of a few words, whatever its capitals and blanks.
 *
 * @param names what the words are called where they do not say it: either is taken
 * @throws {UsageError} for another word, with the known ones
 */
export function oneOf<T extends string>(
  flags: ParsedFlags,
  name: string,
  words: readonly T[],
  names: Readonly<Record<string, string>> = {},
): T | undefined {
  const typed = typedValue(flags, name);
  if (typed === undefined) {
    return undefined;
  }
  const known =
    knownWord(typed, words) ?? words.find((word) => knownWord(typed, [names[word] ?? word]) !== null);
  if (known === undefined) {
    const near = nearestWord(typed, words);
    throw new UsageError(
      `--${name} "${typed}" is unknown.`,
      `${near === null ? '' : `Did you mean ${near}? `}Type ${words.slice(0, -1).join(', ')} or ${words.at(-1)}.`,
    );
  }
  return known;
}
