// All mutants of some source files, and a stratified sample of them that a seed repeats.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { commonTokens } from '@stryker-mutator/api/plugin';
import { createInstrumenter } from '@stryker-mutator/instrumenter';
import { createInjector } from 'typed-inject';

const silent = {
  isDebugEnabled: () => false,
  debug() {},
  info() {},
  warn() {},
};

/** Source files below some folders, without their tests, in the order of their names. */
export function sourceFiles(folders) {
  return folders.flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts') && !/\.(test|d)\.ts$/u.test(name))
      .map((name) => join(folder, name))
      .sort(),
  );
}

/**
 * What names a mutant wherever its line moves to: file, mutator, the text that is replaced, what replaces it, and how many the same come
 * before it in the file.
 */
function identity(mutant, original, seen) {
  const bare = [mutant.fileName, mutant.mutatorName, original, mutant.replacement].join('\u0000');
  const before = seen.get(bare) ?? 0;
  seen.set(bare, before + 1);
  return `${bare}\u0000${before}`;
}

/** The text of a place in a file; lines and columns from 0. */
function textAt(lines, { start, end }) {
  if (start.line === end.line) {
    return lines[start.line].slice(start.column, end.column);
  }
  const between = lines.slice(start.line + 1, end.line);
  return [lines[start.line].slice(start.column), ...between, lines[end.line].slice(0, end.column)].join('\n');
}

/** The key by which a checker knows a mutant again within one state of the sources. */
export function keyOf({ fileName, mutatorName, location: { start, end }, replacement }) {
  const file = fileName.slice(fileName.lastIndexOf('packages/'));
  return [file, mutatorName, start.line, start.column, end.line, end.column, replacement].join('|');
}

/** The sources that bear drawn mutants, instrumented with them, and the id of each mutant in them. */
export async function instrumentDrawn(mutants) {
  const instrumenter = createInjector()
    .provideValue(commonTokens.logger, silent)
    .injectFunction(createInstrumenter);
  const files = [...new Set(mutants.map(({ fileName }) => fileName))].map((name) => ({
    name,
    mutate: mutants.filter(({ fileName }) => fileName === name).map(({ location }) => location),
    content: readFileSync(name, 'utf8'),
  }));
  const byKey = new Map(mutants.map((mutant) => [keyOf(mutant), mutant]));
  const { files: out, mutants: all } = await instrumenter.instrument(files, {
    ignorers: [],
    excludedMutations: [],
    plugins: null,
  });
  const drawn = all.flatMap((each) => {
    const mutant = byKey.get(keyOf(each));
    return mutant === undefined ? [] : [{ id: each.id, mutant }];
  });
  return { sources: new Map(out.map(({ name, content }) => [name, content])), drawn };
}

/** All mutants of the files: file, place (lines and columns from 0), mutator, original text, replacement, and their rank under the seed. */
export async function listMutants(files, seed) {
  const instrumenter = createInjector()
    .provideValue(commonTokens.logger, silent)
    .injectFunction(createInstrumenter);
  const listed = [];
  for (const file of files) {
    const content = readFileSync(file, 'utf8');
    const lines = content.split('\n');
    const seen = new Map();
    const { mutants } = await instrumenter.instrument([{ name: file, mutate: true, content }], {
      ignorers: [],
      excludedMutations: [],
      plugins: null,
    });
    for (const { fileName, location, mutatorName, replacement, status } of mutants) {
      const original = textAt(lines, location);
      const mutant = { fileName, location, mutatorName, original, replacement };
      const rank = createHash('sha256')
        .update(`${seed}\u0000${identity(mutant, original, seen)}`)
        .digest('hex');
      if (status === undefined) {
        listed.push({ ...mutant, rank });
      }
    }
  }
  return listed;
}

/** Largest whole shares of `size` in proportion to the counts, by largest remainder. */
function shares(counts, size) {
  const total = counts.reduce((sum, count) => sum + count, 0);
  const exact = counts.map((count) => (size * count) / total);
  const whole = exact.map(Math.floor);
  const left = size - whole.reduce((sum, count) => sum + count, 0);
  const byRemainder = exact
    .map((share, i) => ({ i, rest: share - whole[i] }))
    .sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of byRemainder.slice(0, left)) {
    whole[i] += 1;
  }
  return whole;
}

/** A sample of the mutants: each stratum, one mutator in one package, gives its share of those that rank first under the seed. */
export function drawSample(mutants, size) {
  const strata = new Map();
  for (const mutant of mutants) {
    const name = `${mutant.fileName.split('/')[1]}/${mutant.mutatorName}`;
    strata.set(name, [...(strata.get(name) ?? []), mutant]);
  }
  const all = [...strata.keys()].sort().map((name) => strata.get(name));
  const counts = shares(
    all.map(({ length }) => length),
    Math.min(size, mutants.length),
  );
  return all.flatMap((stratum, i) =>
    stratum.toSorted((a, b) => (a.rank < b.rank ? -1 : 1)).slice(0, counts[i]),
  );
}
