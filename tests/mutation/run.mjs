// Mutation check: draws mutants of a set of packages and tells which of them the tests notice.
//
//   npm run mutate -- judging             200 mutants of proof and materials
//   npm run mutate -- kernels             400 mutants of plane, arrangement, geometry, cutting and the kernels of artwork
//   npm run mutate -- kernels geometry    those of one package
//   npm run mutate -- judging --again     those that survived once more, after tests were added
//   npm run mutate -- judging --tiers 1   with the cheap tests only
//   npm run mutate -- judging --list      what is known so far
//   npm run mutate -- judging --list --types   the same after asking the compiler about what survived
//   npm run mutate -- kernels geometry --tests a.test.ts,b.test.ts   what was not caught against some tests
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

/** Results by the rank of their mutant, kept in a file. */
class Kept {
  #file;
  #results;
  #isHot;

  constructor(file, sample, { again, hot }) {
    this.#file = file;
    this.#isHot = hot;
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

  get all() {
    return Object.values(this.#results);
  }

  /** Mutants of a package which the tests before a tier have not noticed, by file. */
  waiting(name, tier) {
    return this.all
      .filter(
        ({ fileName, status, tier: done }) =>
          fileName.startsWith(`packages/${name}/`) &&
          (done < tier || (status === 'Static' && done === tier && !this.#isHot)) &&
          !CAUGHT.includes(status),
      )
      .sort((a, b) => (a.fileName < b.fileName ? -1 : 1));
  }

  take(mutant, tier, result) {
    this.#results[mutant.rank] = after(mutant, tier, result);
    this.#write();
  }

  /** Takes those that survived and do not compile as caught. */
  takeTypes(name) {
    const survived = this.waiting(name, Number.POSITIVE_INFINITY).filter(
      ({ status }) => status !== undefined,
    );
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
const FOLDER = `${CACHE}/${setName}`;
mkdirSync(FOLDER, { recursive: true });
const sample = drawSample(await listMutants(sourceFiles(set.folders), SEED), set.size);
const kept = new Kept(`${CACHE}/${setName}.json`, sample, values);
const packages = Object.keys(set.tiers).filter((name) => only === undefined || name === only);
if (values.tests !== undefined) {
  for (const name of packages) {
    const some = kept.all.filter(
      ({ fileName, status }) => fileName.startsWith(`packages/${name}/`) && !CAUGHT.includes(status),
    );
    const take = (mutant, result) => {
      if (CAUGHT.includes(result.status)) {
        kept.take(mutant, mutant.tier, result);
      }
    };
    if (some.length > 0) {
      await (values.hot ? runHot : runStryker)(some, testFiles(values.tests.split(',')), FOLDER, take);
    }
  }
}
const tiers = values.list || values.tests !== undefined ? 0 : Number(values.tiers);
for (let tier = 0; tier < tiers; tier += 1) {
  for (const name of packages) {
    const waiting = kept.waiting(name, tier);
    for (let from = 0; from < waiting.length; from += CHUNK) {
      const chunk = waiting.slice(from, from + CHUNK);
      const tests = testFiles(set.tiers[name][tier]);
      const take = (mutant, result) => kept.take(mutant, tier, result);
      await (values.hot ? runHot : runStryker)(chunk, tests, FOLDER, take);
    }
  }
}
for (const name of values.types ? packages : []) {
  kept.takeTypes(name);
}
report(kept.all);
