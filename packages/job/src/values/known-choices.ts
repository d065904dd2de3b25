import { SETTINGS, type SettingKey } from '../settings/table.ts';
import { knownWord } from './known-row.ts';

/**
 * A job with its choices as the schema writes them: `Blue` becomes `blue`, `Drum sander` becomes `drum`.
 * What is no choice is left for the schema to refuse.
 */
export function withKnownChoices<Input>(input: Input): Input {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) {
    return input;
  }
  return Object.fromEntries(
    Object.entries(input).map(([key, value]) => [key, knownChoice(key, value)]),
  ) as Input;
}

function knownChoice(key: string, value: unknown): unknown {
  const holds = Object.hasOwn(SETTINGS, key) ? SETTINGS[key as SettingKey].holds : undefined;
  if (holds?.choices === undefined || typeof value !== 'string') {
    return value;
  }
  const byName = Object.entries(holds.names ?? {}).find(([, name]) => knownWord(value, [name]) !== null);
  return knownWord(value, holds.choices) ?? byName?.[0] ?? value;
}
