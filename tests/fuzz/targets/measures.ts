import { BIT_FORMS, parseBit } from '@pourproof/job';
import { MM_PER_INCH, parseMeasure, type Quantity } from '@pourproof/plane';
import fc from 'fast-check';
import { answerOf, checkNumbers, type FuzzTarget, fuzzTarget } from '../fuzz-target.ts';
import { damaged, someNumber } from '../hostile-text.ts';

const QUANTITIES: readonly Quantity[] = ['length', 'angle', 'volume', 'mass', 'speed', 'time', 'temperature'];
const UNITS = [
  'mm',
  'cm',
  'm',
  'um',
  'µm',
  'in',
  'inch',
  '"',
  '″',
  'thou',
  'ft',
  'pt',
  'pc',
  'deg',
  '°',
  'rad',
  'ml',
  'l',
  'cm3',
  'mm3',
  'fl oz',
  'g',
  'mg',
  'kg',
  'oz',
  'lb',
  'mm/min',
  'mm/s',
  'in/min',
  'ipm',
  'h',
  'hr',
  'min',
  's',
  'd',
  'days',
  'C',
  '°F',
  'furlong',
  '',
  ' mm',
  'MM',
  '__proto__',
  'toString',
] as const;
const MM: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  '"': MM_PER_INCH,
  ft: 12 * MM_PER_INCH,
};

const whole = fc.integer({ min: 0, max: 400 });
const number = fc.oneof(
  { weight: 6, arbitrary: someNumber },
  { weight: 2, arbitrary: fc.tuple(whole, whole).map(([a, b]) => `${a}/${b}`) },
  { weight: 2, arbitrary: fc.tuple(whole, whole, whole).map(([n, a, b]) => `${n}-${a}/${b}`) },
  { weight: 1, arbitrary: fc.tuple(whole, whole).map(([a, b]) => `${a},${b}`) },
);

/** Typed measures of every quantity: a finite number, or why not; lengths of plain decimals as computed here. */
export const measures: FuzzTarget = fuzzTarget(
  'measures',
  { limitMs: 100, quick: 2000 },
  fc.tuple(number, fc.constantFrom(...UNITS), fc.constantFrom(...QUANTITIES)),
  ([typed, unit, quantity]) => {
    const text = `${typed}${unit}`;
    const measure = answerOf(() => parseMeasure(text, quantity));
    checkNumbers(measure);
    const plain = /^[+-]?\d+(?:\.\d+)?$/u.test(typed);
    if (plain && quantity === 'length' && Object.hasOwn(MM, unit) && Math.abs(Number(typed)) < 1e300) {
      const want = Number(typed) * MM[unit]!;
      if (measure === null || Math.abs(measure.value - want) > 1e-12 * Math.abs(want)) {
        throw new Error(`${text} is read as ${measure?.value} mm, not ${want}`);
      }
    }
  },
);

const length = fc.tuple(number, fc.constantFrom('mm', 'in', '"', 'cm', '')).map(([n, unit]) => n + unit);
const part = fc.oneof(
  { weight: 4, arbitrary: length },
  { weight: 1, arbitrary: number.map((n) => `${n}deg`) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.constantFrom('tip', 'tip radius', 'corner', 'length', 'wing'), length)
      .map(([word, l]) => `${word} ${l}`),
  },
  {
    weight: 1,
    arbitrary: fc
      .array(
        fc.tuple(length, length).map(([d, h]) => `${d}@${h}`),
        { maxLength: 4 },
      )
      .map((all) => all.join(',')),
  },
);
const bitText = fc
  .tuple(
    fc.constantFrom('flat', 'ball', 'bull', 'vee', 'taper', 'profile', 'drill', 'toString', ''),
    fc.array(part, { maxLength: 4 }),
  )
  .map(([kind, parts]) => [kind, ...parts].join(':'));

/** Typed bits of every kind: sizes that are finite and above 0, or why not. */
export const bits: FuzzTarget = fuzzTarget(
  'bits',
  { limitMs: 100, quick: 1500 },
  fc.oneof(
    { weight: 4, arbitrary: bitText },
    { weight: 1, arbitrary: damaged(fc.constantFrom(...BIT_FORMS)) },
  ),
  (text) => {
    const bit = answerOf(() => parseBit(text));
    checkNumbers(bit);
    for (const [key, value] of Object.entries(bit ?? {})) {
      if (key.endsWith('Mm') && typeof value === 'number' && !(value >= 0)) {
        throw new Error(`${text} gives ${key} ${value}`);
      }
    }
  },
);
