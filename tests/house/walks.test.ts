import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path/posix';
import { describe, expect, test } from 'vitest';
import { publicPackages } from '../publish/public-packages.mjs';

const MAX_FILES = 10;

interface Walk {
  readonly title: string;
  readonly files: readonly string[];
}

/** The walks of docs/architecture.md: a heading each, a numbered line a file. */
function walks(): readonly Walk[] {
  const [, chapter = ''] = readFileSync('docs/architecture.md', 'utf8').split('\n## Four walks\n');
  return chapter
    .split(/\n## /u)[0]!
    .split('\n### ')
    .slice(1)
    .map((part) => ({
      title: part.split('\n')[0]!,
      files: [...part.matchAll(/^\d+\. `([^`]+)`/gmu)].map((match) => match[1]!),
    }));
}

const entrySources = new Map(
  publicPackages().flatMap(({ folder, manifest }) =>
    Object.entries(manifest.exports as Record<string, Record<string, string>>)
      .filter(([, entry]) => typeof entry !== 'string')
      .map(([key, entry]) => [`${manifest.name}${key.slice(1)}`, join(folder, entry['@pourproof/source']!)]),
  ),
);

/** Files that a file takes something from, types included; through the index of a package to the file that defines it. */
function filesImportedBy(file: string): ReadonlySet<string> {
  const found = new Set<string>();
  const statements = readFileSync(file, 'utf8').matchAll(
    /(?:import|export)(?:\s+type)?\s*\{([^}]*)\}\s*from\s*'([^']+)'|import\('([^']+)'\)/gu,
  );
  for (const [, names, from, later] of statements) {
    const specifier = from ?? later!;
    const index = entrySources.get(specifier);
    if (specifier.startsWith('.')) {
      found.add(join(dirname(file), specifier));
    } else if (index !== undefined) {
      for (const name of names?.split(',') ?? []) {
        found.add(homeOf(plainName(name), index));
      }
    }
  }
  return found;
}

/** The name that is imported: without `type` before it and another name after it. */
const plainName = (part: string): string =>
  part
    .trim()
    .replace(/^type\s+/u, '')
    .split(/\s+as\s+/u)[0]!;

/** The file behind a name of an index, through as many indexes as it takes. */
function homeOf(name: string, index: string): string {
  for (const [, names, from] of readFileSync(index, 'utf8').matchAll(
    /export(?:\s+type)?\s*\{([^}]*)\}\s*from\s*'([^']+)'/gu,
  )) {
    if (names!.split(',').some((part) => plainName(part) === name)) {
      const next = entrySources.get(from!);
      return next === undefined ? join(dirname(index), from!) : homeOf(name, next);
    }
  }
  return index;
}

test('the architecture tells the four walks', () => {
  expect(walks().map(({ title }) => title)).toEqual([
    'The text of a bit → cutter → cut → finding',
    'The angle of the grain → exposure → finding',
    'The bytes of an SVG → clean region',
    'A mix ratio → grams',
  ]);
});

describe.each(walks())('$title', ({ files }) => {
  test(`takes at most ${MAX_FILES} files, and each of them is there`, () => {
    expect(files.length).toBeGreaterThan(2);
    expect(files.length).toBeLessThanOrEqual(MAX_FILES);
    expect(files.filter((file) => !existsSync(file))).toEqual([]);
    expect(new Set(files).size).toBe(files.length);
  });

  test.each(files.slice(1).map((file, k) => [files[k]!, file]))('%s and %s know each other', (a, b) => {
    expect(filesImportedBy(a).has(b) || filesImportedBy(b).has(a)).toBe(true);
  });
});
