// A quicker run of the mutation check for code without state: `npm run mutate:hot -- kernels geometry` runs the tests of a tier once in one process and
// tries every drawn mutant there, by switching it on, with the tests that reach it. No process starts and no module is loaded for a mutant, which is most of
// what Stryker spends. What is switched on only while modules load is left to `npm run mutate`, which goes on from the same results.
import { spawn } from 'node:child_process';
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join, resolve } from 'node:path';
import process from 'node:process';
import { instrumentDrawn } from './list-mutants.mjs';

/** Longest that one test may take with a mutant, s, on a loaded machine; a mutant is caught so when it happens twice. */
const PATIENCE_S = 45;

/** Runs the mutants of a package against tests; hands on `{ status, statusReason, killedBy, coveredBy }` for each. */
export async function runHot(mutants, tests, cache, take) {
  const folder = join(process.cwd(), cache, 'hot');
  mkdirSync(folder, { recursive: true });
  const { sources, drawn } = await instrumentDrawn(mutants);
  const byFile = Object.fromEntries([...sources].map(([file, text]) => [resolve(file), text]));
  writeFileSync(join(folder, 'sources.json'), JSON.stringify(byFile));
  const state = {
    open: new Map(drawn.map(({ id, mutant }) => [mutant.rank, { id, mutant, files: 0, tests: 0 }])),
    statics: new Set(),
  };
  let left = [...tests];
  while (left.length > 0 && state.open.size > 0) {
    rmSync(join(folder, 'told.jsonl'), { force: true });
    rmSync(join(folder, 'now.json'), { force: true });
    appendFileSync(join(folder, 'told.jsonl'), '');
    writeFileSync(
      join(folder, 'waiting.json'),
      JSON.stringify([...state.open.values()].map(({ id, mutant }) => ({ id, rank: mutant.rank }))),
    );
    const slow = await runOnce(folder, left);
    const done = readTold(folder, state, take);
    left = left.filter((file) => !done.has(file));
    if (slow !== null) {
      const { mutant } = state.open.get(slow.rank) ?? {};
      state.open.delete(slow.rank);
      if (mutant !== undefined) {
        take(mutant, {
          status: 'Timeout',
          statusReason: `slow in ${slow.file}`,
          killedBy: [slow.test],
          coveredBy: [],
        });
      }
    } else if (done.size === 0) {
      throw new Error('the tests could not be run: see what vitest says above');
    }
  }
  for (const { id, mutant, tests: count } of state.open.values()) {
    const isStatic = state.statics.has(id);
    take(mutant, {
      status: isStatic ? 'Static' : count > 0 ? 'Survived' : 'NoCoverage',
      coveredBy: Array.from({ length: count }),
    });
  }
}

/** Runs vitest over the files that are left; the mutant and test that it hung in, or `null` when it ended by itself. */
function runOnce(folder, tests) {
  const env = { ...process.env, POURPROOF_HOT: folder, POURPROOF_MUTATION_TESTS: JSON.stringify(tests) };
  const args = [
    '--no-install',
    'vitest',
    'run',
    '--config',
    'tests/mutation/hot.config.ts',
    '--reporter=dot',
  ];
  const child = spawn('npx', args, { env, stdio: ['ignore', 'inherit', 'inherit'], detached: true });
  const now = join(folder, 'now.json');
  return new Promise((done) => {
    let slow = null;
    const watch = setInterval(() => {
      const told = join(folder, 'told.jsonl');
      const last = existsSync(now)
        ? Math.max(statSync(now).mtimeMs, statSync(told).mtimeMs)
        : Number.POSITIVE_INFINITY;
      // between two files no mutant is switched on
      if (
        statSync(now, { throwIfNoEntry: false }) !== undefined &&
        Date.now() - last > 1000 * PATIENCE_S &&
        !isBetween(folder)
      ) {
        slow = JSON.parse(readFileSync(now, 'utf8'));
        process.kill(-child.pid, 'SIGKILL');
      }
    }, 2000);
    child.on('close', () => {
      clearInterval(watch);
      done(slow);
    });
  });
}

/** Whether the last that was told is the end of a file: then its next one runs as it is, which may take its time. */
function isBetween(folder) {
  const lines = readFileSync(join(folder, 'told.jsonl'), 'utf8').trim().split('\n');
  const last = lines.at(-1) ?? '';
  return (
    last.startsWith('{"done"') &&
    statSync(join(folder, 'told.jsonl')).mtimeMs >= statSync(join(folder, 'now.json')).mtimeMs
  );
}

function readTold(folder, { open, statics }, take) {
  const done = new Set();
  for (const line of readFileSync(join(folder, 'told.jsonl'), 'utf8').split('\n').filter(Boolean)) {
    const told = JSON.parse(line);
    if (told.done !== undefined) {
      done.add(told.done);
      for (const id of told.static) {
        statics.add(id);
      }
    } else if (told.survived !== undefined && open.has(told.survived)) {
      open.get(told.survived).tests += told.tests;
    } else if (told.caught !== undefined && open.has(told.caught)) {
      take(open.get(told.caught).mutant, {
        status: 'Killed',
        statusReason: told.failure,
        killedBy: [told.by],
        coveredBy: [],
      });
      open.delete(told.caught);
    }
  }
  return done;
}
