// `npm run fuzz -- [minutes] [target …]`: random input of its own structure for every target, in turns, until the time is up. Counts add up
// in a state file over several runs (POURPROOF_FUZZ_STATE); what is found is written beside it. POURPROOF_SEED sets the first seed.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { build } from 'esbuild';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const folder = resolve(root, 'node_modules/.cache/pourproof-fuzz');
const statePath = process.env.POURPROOF_FUZZ_STATE ?? resolve(folder, 'state.json');
/** Longest turn of one target, ms of wall time. */
const TURN_MS = 60_000;
/** A worker that spends this much processor time on one input hangs, ms. */
const HANG_MS = 120_000;
/** Most inputs of one seed, after which the next begins: fast-check keeps little, the engine's caches grow. */
const MOST = 1_000_000;

const [minutesText = '5', ...only] = process.argv.slice(2);
const minutes = Number(minutesText);
if (!(minutes > 0)) {
  throw new RangeError(`minutes is ${minutesText}; give a number above 0`);
}
mkdirSync(folder, { recursive: true });
await bundle();
const names = only.length > 0 ? only : await targetNames();
const firstSeed = Number(process.env.POURPROOF_SEED ?? Math.floor(Math.random() * 2 ** 30));
const end = Date.now() + 60_000 * minutes;
console.log(`${names.length} targets, first seed ${firstSeed}, ${minutes} min; state in ${statePath}`);
const state = readState();
let found = 0;
for (let turn = 0; Date.now() < end; turn++) {
  const target = names[turn % names.length];
  const seed = firstSeed + turn;
  const ms = Math.max(1000, Math.min(TURN_MS, end - Date.now()));
  const result = await work(target, seed, ms);
  count(target, seed, result);
  if (result.failure !== null) {
    found++;
    console.log(
      `FOUND ${target} seed ${seed}: ${result.failure.message.split('\n')[0]}\n  ${result.failure.input.slice(0, 600)}`,
    );
  }
}
const all = Object.values(state).reduce((sum, { runs }) => sum + runs, 0);
console.log(`${all} executions in all, ${found} finds in this run, first seed ${firstSeed}`);
process.exit(found === 0 ? 0 : 1);

async function bundle() {
  await build({
    absWorkingDir: root,
    entryPoints: [resolve(root, 'tests/fuzz/worker.ts'), resolve(root, 'tests/fuzz/targets.ts')],
    outdir: folder,
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    conditions: ['@pourproof/source'],
    outExtension: { '.js': '.mjs' },
    logLevel: 'warning',
    plugins: [
      {
        name: 'only our own sources',
        setup: (b) =>
          b.onResolve({ filter: /^[^.#/]/ }, ({ path, kind }) =>
            kind === 'entry-point' || path.startsWith('@pourproof/') || path === 'pourproof'
              ? undefined
              : { path, external: true },
          ),
      },
    ],
  });
}

async function targetNames() {
  const { FUZZ_TARGETS } = await import(resolve(folder, 'targets.mjs'));
  return FUZZ_TARGETS.map(({ name }) => name);
}

/** One turn in a thread of its own, which is ended when it hangs. */
function work(target, seed, ms) {
  const heartbeat = new Int32Array(new SharedArrayBuffer(4));
  const worker = new Worker(resolve(folder, 'worker.mjs'), {
    workerData: { target, seed, ms, most: MOST, heartbeat },
    stdout: false,
  });
  return new Promise((done) => {
    let seen = -1;
    let since = 0;
    const stopped = (message) => ({
      runs: Atomics.load(heartbeat, 0),
      shrinks: 0,
      ms: 0,
      slowest: { ms: 0, input: '' },
      failure: { seed, path: null, message, input: `input ${Atomics.load(heartbeat, 0)} of seed ${seed}` },
    });
    const watch = setInterval(() => {
      const now = Atomics.load(heartbeat, 0);
      const { user, system } = process.cpuUsage();
      const spent = (user + system) / 1000;
      if (now !== seen) {
        [seen, since] = [now, spent];
      } else if (now > 0 && spent - since > HANG_MS) {
        clearInterval(watch);
        void worker.terminate();
        done(stopped(`hangs: no answer after ${HANG_MS / 1000} s of processor time`));
      }
    }, 1000);
    worker.once('message', (result) => {
      clearInterval(watch);
      void worker.terminate();
      done(result);
    });
    worker.once('error', (error) => {
      clearInterval(watch);
      done(stopped(`the worker ends: ${error.stack ?? error}`));
    });
  });
}

function readState() {
  try {
    return JSON.parse(readFileSync(statePath, 'utf8'));
  } catch {
    return {};
  }
}

function count(target, seed, { runs, shrinks, ms, slowest, failure }) {
  state[target] ??= { runs: 0, shrinks: 0, ms: 0, slow: [], seeds: [], finds: [] };
  const row = state[target];
  row.runs += runs;
  row.shrinks += shrinks;
  row.ms += Math.round(ms);
  if (slowest.ms > 0) {
    row.slow.push({ seed, ...slowest });
  }
  row.seeds.push([seed, runs]);
  if (failure !== null) {
    row.finds.push(failure);
  }
  writeFileSync(statePath, JSON.stringify(state, null, 1));
}
