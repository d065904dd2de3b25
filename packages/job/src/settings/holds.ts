import type { MaterialsBook } from '@pourproof/materials';
import * as z from 'zod/mini';
import { knownId } from '../values/known-row.ts';
import {
  type JobQuantity,
  type MeasureInputs,
  measureForms,
  measureSchema,
  readMeasure,
  typedMeasure,
} from '../values/measure-input.ts';
import { type Range, rangeWords, refuseOutside } from '../values/range.ts';

/**
 * How a setting is asked for: a text, a number, a line for each of several, one of a list, a tick, a day and
 * time.
 */
export type Control = 'text' | 'number' | 'lines' | 'choice' | 'tick' | 'time';

/** A table of materials that a job may name rows of. */
export type MaterialsTable = 'woods' | 'sealers' | 'resins' | 'scales';

/** What a setting holds: how it is given, checked, and settled. */
export interface Holds<Given, Settled> {
  readonly control: Control;
  /** The shape in which it is given. */
  readonly schema: z.ZodMiniType;
  /** How it is written, in words: `a length with its unit, such as "1/8in" or {"mm": 3.175}`. */
  readonly form: string;
  /** What it must lie between, in words; `''` where its form says it all. */
  readonly range: string;
  readonly quantity?: JobQuantity;
  /** Of a number: whether it is percent itself, or a factor that may be typed as percent. */
  readonly percent?: 'itself' | 'hundredths';
  readonly choices?: readonly string[];
  /** What choices are called where their ids do not say it. */
  readonly names?: Readonly<Record<string, string>>;
  readonly table?: MaterialsTable;
  /** Set where it holds a list. */
  readonly isList?: true;
  /** Set where its text holds lengths of the work, whose unit the answers follow. */
  readonly hasWorkLengths?: true;
  /** @throws {JobError} when the value cannot be read or makes no sense */
  settle(value: Given, key: string, materials: MaterialsBook): Settled;
  /** The value as it is typed; what has no text of its own is returned as it is. */
  typed(value: Given): unknown;
}

const asItIs = (value: unknown): unknown => value;

const UNITS: Readonly<Record<JobQuantity, string>> = {
  length: 'mm',
  angle: '°',
  time: 'h',
  speed: 'mm/min',
  temperature: '°C',
};

/** A quantity with its unit. The answers follow the unit of a length unless it is of reading, not of work. */
export function measure<Q extends JobQuantity>(
  quantity: Q,
  typed: string,
  range: Range & { readonly isOfReading?: true } = {},
): Holds<MeasureInputs[Q], number> {
  const unit = UNITS[quantity];
  const name = quantity === 'angle' ? 'an angle' : `a ${quantity}`;
  return {
    control: 'text',
    schema: measureSchema(quantity),
    form: `${name} with its unit, such as ${measureForms(quantity, typed)}`,
    range: rangeWords(range, unit),
    quantity,
    ...(quantity === 'length' && range.isOfReading !== true ? { hasWorkLengths: true } : {}),
    settle: (value, key) => {
      const settled = readMeasure(key, value, quantity);
      refuseOutside(key, settled, unit, { example: typed, ...range });
      return settled;
    },
    typed: (value) => typedMeasure(value, quantity),
  };
}

/** A number without a unit. */
export function number(
  what: string,
  example: number,
  range: Range & Pick<Holds<number, number>, 'percent'>,
): Holds<number, number> {
  return {
    control: 'number',
    ...(range.percent === undefined ? {} : { percent: range.percent }),
    schema: z.number().check(
      z.meta({
        ...(range.isWhole === true ? { type: 'integer' } : {}),
        ...(range.above === undefined ? {} : { exclusiveMinimum: range.above }),
        ...(range.min === undefined ? {} : { minimum: range.min }),
        ...(range.max === undefined ? {} : { maximum: range.max }),
      }),
    ),
    form: `${what}, such as ${example}`,
    range: rangeWords(range, ''),
    settle: (value, key) => {
      refuseOutside(key, value, '', { example: String(example), ...range });
      return value;
    },
    typed: asItIs,
  };
}

/** One of a few words. */
export function choice<Word extends string>(
  words: readonly Word[],
  names: Readonly<Record<string, string>> = {},
): Holds<Word, Word> {
  return {
    control: 'choice',
    schema: z.enum(words as [Word, ...Word[]]),
    form: `one of ${words.join(', ')}`,
    range: '',
    choices: words,
    names,
    settle: (value) => value,
    typed: asItIs,
  };
}

/** An id of a table of materials. */
export function material(table: MaterialsTable): Holds<string, string> {
  return {
    control: 'choice',
    schema: z.string(),
    form: `an id or a name of the ${table}, or one of materials.json`,
    range: '',
    table,
    settle: (typed, key, materials) => knownId(key, typed, materials[table]),
    typed: asItIs,
  };
}

/** Yes or no. */
export function tick(): Holds<boolean, boolean> {
  return {
    control: 'tick',
    schema: z.boolean(),
    form: 'true or false',
    range: '',
    settle: (value) => value,
    typed: asItIs,
  };
}

/** Plain words that mean themselves. */
export function words(form: string): Holds<string, string> {
  return { control: 'text', schema: z.string(), form, range: '', settle: (value) => value, typed: asItIs };
}

/** A text of its own form, or a structure of the same. */
export function written<Given, Settled>(
  schema: z.ZodMiniType,
  form: string,
  read: (value: Given) => Settled,
  typed: (value: Given) => unknown,
  has: { readonly hasWorkLengths?: true; readonly control?: Control } = {},
): Holds<Given, Settled> {
  return {
    control: 'text',
    schema,
    form,
    range: '',
    ...has,
    settle: (value) => read(value),
    typed,
  };
}

/** Several of a kind. */
export function listOf<Given, Settled>(
  one: Holds<Given, Settled>,
  form: string,
  count: { readonly min: number; readonly max?: number } = { min: 1 },
): Holds<readonly Given[], readonly Settled[]> {
  const list = z.array(one.schema).check(z.minLength(count.min));
  return {
    ...one,
    control: 'lines',
    schema: count.max === undefined ? list : list.check(z.maxLength(count.max)),
    form,
    isList: true,
    settle: (values, key, materials) => values.map((value) => one.settle(value, key, materials)),
    typed: (values) => values.map((value) => one.typed(value)),
  };
}
