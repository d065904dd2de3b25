import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as arrangement from '@pourproof/arrangement';
import * as geometry from '@pourproof/geometry';
import * as plane from '@pourproof/plane';
import { describe, expect, test } from 'vitest';

/** Packages whose examples stand alone: they name nothing but exports of these three. */
const PACKAGES = ['plane', 'arrangement', 'geometry'];
const EXPORTS: Record<string, unknown> = { ...plane, ...arrangement, ...geometry };

interface Example {
  readonly of: string;
  readonly lines: readonly string[];
}

/** The lines behind each `@example` up to the next tag or the end of the comment, with the name that the comment stands before. */
function examplesIn(text: string): Example[] {
  return [
    ...text.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*?@example(?:(?!\*\/)[\s\S])*?)\*\/\s*export \w+ (\w+)/gu),
  ].map(([, comment, name]) => {
    const lines = comment!.split('\n').map((line) => line.replace(/^\s*\* ?/u, ''));
    const rest = lines.slice(lines.findIndex((line) => line.startsWith('@example')) + 1);
    const end = rest.findIndex((line) => line.startsWith('@'));
    return {
      of: name!,
      lines: rest.slice(0, end < 0 ? undefined : end).filter((line) => line.trim() !== ''),
    };
  });
}

/** Runs an example; what stands before `; // text` on a line must print as that text. */
function run(lines: readonly string[]): number {
  let checks = 0;
  const check = (got: unknown, text: string): void => {
    checks++;
    expect(String(got)).toBe(text);
  };
  const code = lines
    .map((line) => line.replace(/^(?!const )(.*); \/\/ (.*)$/u, "check($1, '$2');"))
    .join('\n');
  new Function('check', ...Object.keys(EXPORTS), code)(check, ...Object.values(EXPORTS));
  return checks;
}

const examples = PACKAGES.flatMap((name) => {
  const folder = join('packages', name, 'src');
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    .flatMap((file) => examplesIn(readFileSync(join(folder, file), 'utf8')));
});

describe('examples in docstrings run, and give what they say', () => {
  test.each(examples.map(({ of, lines }) => [of, lines] as const))('%s', (_, lines) => {
    expect(run(lines)).toBeGreaterThan(0);
  });

  test('the main steps of each of these packages have one', () => {
    const main = ['parseMeasure', 'packRings', 'resolveRegions', 'booleans', 'medialAxis', 'openedArea'];
    expect(examples.map(({ of }) => of)).toEqual(expect.arrayContaining(main));
  });
});
