import fc from 'fast-check';
import { refusalOf } from 'pourproof';

/** One thing that is fed with random input of its own structure: what it takes, and what must hold of whatever comes out. */
export interface FuzzTarget {
  readonly name: string;
  /** Longest processor time that one input may take, ms, when nothing else is measured: beyond it the campaign reports a hang. */
  readonly limitMs: number;
  /** How many inputs the quick lane draws. */
  readonly quick: number;
  readonly property: fc.IRawProperty<unknown[]>;
}

/** A target whose check may be asynchronous; it throws where something does not hold. */
export function fuzzTarget<T>(
  name: string,
  { limitMs, quick }: { readonly limitMs: number; readonly quick: number },
  inputs: fc.Arbitrary<T>,
  check: (input: T) => void | Promise<void>,
  kind: 'sync' | 'async' = 'sync',
): FuzzTarget {
  const property =
    kind === 'sync'
      ? fc.property(inputs, (input) => {
          try {
            void check(input);
          } catch (error) {
            refuseLeak(error, input);
          }
        })
      : fc.asyncProperty(inputs, async (input) => {
          try {
            await check(input);
          } catch (error) {
            refuseLeak(error, input);
          }
        });
  return { name, limitMs, quick, property: property as unknown as fc.IRawProperty<unknown[]> };
}

/** What `ask` gives, or `null` where it refuses as a maker can use it; anything else that it throws is a finding. */
export function answerOf<T>(ask: () => T): T | null {
  try {
    return ask();
  } catch (error) {
    checkRefusal(error);
    return null;
  }
}

/** The same for what answers later. */
export async function laterAnswerOf<T>(ask: () => Promise<T>): Promise<T | null> {
  try {
    return await ask();
  } catch (error) {
    checkRefusal(error);
    return null;
  }
}

function checkRefusal(error: unknown): void {
  const refusal = refusalOf(error);
  if (refusal === null) {
    throw error;
  }
  const { code, what, where, remedy } = refusal;
  checkWords(what);
  checkWords(remedy);
  checkWords(where);
  // a measure says both in one text
  const says = code === 'unreadable-measure' ? /[.?] .*[.?]$/su.test(what) : what !== '' && remedy !== '';
  if (!says) {
    throw new Error(`refusal ${code} does not say what is wrong and what to do: ${what} / ${remedy}`);
  }
}

/** A word of a program in a text for makers. */
class LeakedWord extends Error {
  readonly word: string;

  constructor(word: string, text: string) {
    super(`a text says ${word}: ${text}`);
    this.word = word;
  }
}

/** Throws on, unless the word that leaked stands in the input, which the text repeats. */
function refuseLeak(error: unknown, input: unknown): void {
  if (!(error instanceof LeakedWord) || !fc.stringify(input).includes(error.word)) {
    throw error;
  }
}

/** Throws where a text shows what only a program knows. */
export function checkWords(text: string): void {
  const leak = /\b(?:NaN|undefined|Infinity)\b|\[object \w+\]/u.exec(text);
  if (leak !== null) {
    throw new LeakedWord(leak[0], text);
  }
}

/** Throws where a result holds a number that is not finite, naming its place. */
export function checkNumbers(value: unknown, place = 'result', allowed: readonly string[] = []): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) {
      throw new Error(`${place} is ${value}`);
    }
  } else if (ArrayBuffer.isView(value) && !(value instanceof DataView)) {
    const numbers = value as Float64Array;
    const at = numbers.findIndex((n) => !Number.isFinite(n));
    if (at >= 0) {
      throw new Error(`${place}[${at}] is ${numbers[at]}`);
    }
  } else if (Array.isArray(value)) {
    for (const [i, part] of value.entries()) {
      checkNumbers(part, `${place}[${i}]`, allowed);
    }
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, part] of Object.entries(value)) {
      if (!allowed.includes(key)) {
        checkNumbers(part, `${place}.${key}`, allowed);
      }
    }
  }
}
