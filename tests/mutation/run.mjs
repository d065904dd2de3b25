// Mutation check: draws mutants of a set of packages and tells which of them the tests notice.
//
//   npm run mutate -- judging             200 mutants of proof and materials
//   npm run mutate -- kernels             400 mutants of plane, arrangement, geometry, cutting and the kernels of artwork
//   npm run mutate -- kernels geometry    those of one package
//   npm run mutate -- judging --again     those that survived once more, after tests were added
//   npm run mutate -- judging --tiers 1   with the cheap tests only
//   npm run mutate -- judging --list      what is known so far
//   npm run mutate -- judging --list --types   the same after asking the compiler about what survived
//   npm run mutate -- judging --list --rows    what is left as rows of the list in docs/method/mutation.md
//   npm run mutate -- kernels geometry --tests a.test.ts,b.test.ts   what was not caught against some tests
//   npm run mutate -- kernels geometry --listed   only what docs/method/mutation.md lists as survived and not equivalent
//   npm run mutate -- kernels --hot       in one process, see hot.mjs
//
// Each package has tiers of tests, cheap ones first; what survives one tier goes on to the next. Every result is kept at once in
// node_modules/.cache/mutation, so that a run that was ended goes on where it stopped.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { runHot } from './hot.mjs';
import { onTested } from './keep-reporter.mjs';
import { drawSample, keyOf, listMutants, sourceFiles } from './list-mutants.mjs';
import { listedOnPage, rowOf } from './listed.mjs';
import { SEED, SETS, testFiles } from './sets.mjs';
import { refusedByTypes } from './type-check.mjs';

const CACHE = 'node_modules/.cache/mutation';

/** Mutants in one run of Stryker: few enough that the files which bear them stay quick. */
const CHUNK = 200;

/** What is said of a mutant that was noticed. A module that can no longer be loaded is a RuntimeError; TypeError is ours: `tsc` refuses it. */
const CAUGHT = ['Killed', 'Timeout', 'RuntimeError', 'TypeError'];

/** Range of a file as Stryker takes it: lines from 1, columns from 0. */
function range({ fileName, location: { start, end } }) {
  return `${fileName}:${start.line + 1}:${start.column}-${end.line + 1}:${end.column}`;
}

function optionsOf(mutants) {
  return {
    mutate: [...new Set(mutants.map(range))],
    plugins: [
      '@stryker-mutator/vitest-runner',
      './tests/mutation/drawn-checker.mjs',
      './tests/mutation/keep-reporter.mjs',
    ],
    checkers: ['drawn'],
    testRunner: 'vitest',
    vitest: { configFile: 'tests/mutation/vitest.config.ts', related: false },
    coverageAnalysis: 'perTest',
    ignorePatterns: ['dist', 'dist-types', 'docs/api', '.git', 'proof-out'],
    reporters: ['keep', 'progress-append-only'],
    concurrency: Number(process.env.POURPROOF_MUTATION_CONCURRENCY ?? 1),
    // a loaded machine is no reason to call a mutant caught
    timeoutMS: 120_000,
    timeoutFactor: 4,
    dryRunTimeoutMinutes: 60,
    tempDirName: '.stryker-tmp',
    cleanTempDir: 'always',
    allowConsoleColors: false,
    warnings: false,
  };
}

/** Runs some mutants against some tests and hands on each result with its mutant. */
async function runStryker(mutants, tests, cache, take) {
  const byKey = new Map(mutants.map((mutant) => [keyOf(mutant), mutant]));
  const drawn = join(process.cwd(), cache, 'drawn.json');
  writeFileSync(drawn, JSON.stringify([...byKey.keys()]));
  process.env.POURPROOF_DRAWN_MUTANTS = drawn;
  process.env.POURPROOF_MUTATION_TESTS = JSON.stringify(tests);
  onTested((result) => {
    const mutant = byKey.get(keyOf({ ...result, location: fromZero(result.location) }));
    if (mutant !== undefined) {
      take(mutant, result);
    }
  });
  await new Stryker(optionsOf(mutants)).runMutationTest();
}

/** A place as mutants have it, from 0, of one in a result of Stryker, from 1. */
function fromZero({ start, end }) {
  const back = ({ line, column }) => ({ line: line - 1, column: column - 1 });
  return { start: back(start), end: back(end) };
}

/** What is kept of a mutant after a tier. Time is up for good when it was up twice: the first time the machine may have been busy. */
function after(mutant, tier, { status, statusReason, killedBy, coveredBy }) {
  const isSlow = status === 'Timeout' && !/hit limit/iu.test(statusReason ?? '');
  const timedOut = (mutant.timedOut ?? 0) + (isSlow ? 1 : 0);
  return {
    ...mutant,
    tier,
    status: isSlow && timedOut < 2 ? 'TimedOutOnce' : status,
    statusReason,
    killedBy,
    covered: coveredBy?.length ?? 0,
    ...(timedOut > 0 && { timedOut }),
  };
}

/** Results of a package by the rank of their mutant, kept in a file: packages can be run side by side. */
class Kept {
  #file;
  #results;
  #isHot;
  #ranks;

  constructor(file, sample, { again, hot, listed }) {
    this.#file = file;
    this.#isHot = hot;
    this.#ranks = new Set((listed ? listedOnPage(sample) : sample).map(({ rank }) => rank));
    const known = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {};
    this.#results = Object.fromEntries(
      sample.map((mutant) => {
        const { status, ...rest } = known[mutant.rank] ?? {};
        const isOver = status !== undefined && (CAUGHT.includes(status) || !again);
        return [mutant.rank, isOver ? { ...rest, status, ...mutant } : { ...mutant, tier: -1 }];
      }),
    );
    this.#write();
  }

  /** Those that were asked for: all that are drawn, or what the page lists of them. */
  get all() {
    return Object.values(this.#results).filter(({ rank }) => this.#ranks.has(rank));
  }

  /** Mutants which the tests before a tier have not noticed, by file; for a hot run none that no test reaches but by loading modules. */
  waiting(tier) {
    const isForPlain = ({ status, covered }) => status === 'Static' && covered === 0;
    return this.all
      .filter((mutant) =>
        this.#isHot && isForPlain(mutant)
          ? false
          : mutant.tier < tier || (mutant.status === 'Static' && mutant.tier === tier && !this.#isHot),
      )
      .filter(({ status }) => !CAUGHT.includes(status))
      .sort((a, b) => (a.fileName < b.fileName ? -1 : 1));
  }

  take(mutant, tier, result) {
    this.#results[mutant.rank] = after(mutant, tier, result);
    this.#write();
  }

  /** Takes those that survived and do not compile as caught. */
  takeTypes(name) {
    const survived = this.waiting(Number.POSITIVE_INFINITY).filter(({ status }) => status !== undefined);
    const unknown = survived.filter(({ compiles }) => compiles === undefined);
    const refused = new Set(unknown.length === 0 ? [] : refusedByTypes(name, unknown));
    for (const mutant of unknown) {
      const compiles = !refused.has(mutant);
      this.#results[mutant.rank] = { ...mutant, compiles, status: compiles ? mutant.status : 'TypeError' };
    }
    this.#write();
  }

  #write() {
    writeFileSync(this.#file, `${JSON.stringify(this.#results, null, 1)}\n`);
  }
}

function report(mutants) {
  const indented = (text) => text.replaceAll('\n', '\n    ').slice(0, 400);
  for (const { fileName, location, mutatorName, original, replacement, status } of mutants) {
    if (!CAUGHT.includes(status)) {
      console.log(`${status ?? 'waiting'} ${fileName}:${location.start.line + 1} ${mutatorName}`);
      console.log(`  - ${indented(original)}\n  + ${indented(replacement)}`);
    }
  }
  const counts = new Map();
  for (const { status = 'waiting' } of mutants) {
    counts.set(status, (counts.get(status) ?? 0) + 1);
  }
  console.log(
    `${mutants.length} mutants: ${[...counts].map(([status, count]) => `${count} ${status}`).join(', ')}`,
  );
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    hot: { type: 'boolean', default: false },
    again: { type: 'boolean', default: false },
    list: { type: 'boolean', default: false },
    listed: { type: 'boolean', default: false },
    rows: { type: 'boolean', default: false },
    types: { type: 'boolean', default: false },
    tests: { type: 'string' },
    tiers: { type: 'string', default: '3' },
  },
});
const [setName, only] = positionals;
const set = SETS[setName];
if (set === undefined) {
  throw new Error(`say which set: ${Object.keys(SETS).join(' or ')}`);
}
const packages = Object.keys(set.tiers).filter((name) => only === undefined || name === only);
const sample = drawSample(await listMutants(sourceFiles(set.folders), SEED), set.size);
const run = values.hot ? runHot : runStryker;
const folderOf = (name) => `${CACHE}/${setName}/${name}`;
const kept = new Map(
  packages.map((name) => {
    mkdirSync(folderOf(name), { recursive: true });
    const own = sample.filter(({ fileName }) => fileName.startsWith(`packages/${name}/`));
    return [name, new Kept(`${folderOf(name)}/results.json`, own, values)];
  }),
);
for (const [name, results] of values.tests === undefined ? [] : kept) {
  const some = results.all.filter(({ status }) => !CAUGHT.includes(status));
  const take = (mutant, result) => {
    if (CAUGHT.includes(result.status) || mutant.status === undefined) {
      results.take(mutant, mutant.tier, result);
    }
  };
  if (some.length > 0) {
    await run(some, testFiles(values.tests.split(',')), folderOf(name), take);
  }
}
const tiers = values.list || values.tests !== undefined ? 0 : Number(values.tiers);
for (let tier = 0; tier < tiers; tier += 1) {
  for (const [name, results] of kept) {
    const waiting = results.waiting(tier);
    for (let from = 0; from < waiting.length; from += CHUNK) {
      const chunk = waiting.slice(from, from + CHUNK);
      const take = (mutant, result) => results.take(mutant, tier, result);
      await run(chunk, testFiles(set.tiers[name][tier]), folderOf(name), take);
    }
  }
}
for (const [name, results] of values.types ? kept : []) {
  results.takeTypes(name);
}
const mutants = [...kept.values()].flatMap(({ all }) => all);
if (values.rows) {
  const left = mutants.filter(({ status }) => !CAUGHT.includes(status));
  console.log(left.map(rowOf).sort().join('\n'));
} else {
  report(mutants);
}
