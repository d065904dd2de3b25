// `npm run test:long [-- minutes]`: every test that draws cases, with many more of them from a seed of this run, until the time is up.
// POURPROOF_SEED repeats a run.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import process from 'node:process';

// some 160 properties share the time of two workers
const PROPERTIES_AT_A_TIME = 80;

const minutes = Number(process.argv[2] ?? 10);
const seed = Number(process.env.POURPROOF_SEED ?? Math.floor(Math.random() * 2 ** 31));
const files = testFiles().filter((file) =>
  /\bfast-check\b|\bsupport\/lane\.ts\b/u.test(readFileSync(file, 'utf8')),
);

function testFiles() {
  return spawnSync('git', ['ls-files', '*.test.ts'], { encoding: 'utf8' }).stdout.trim().split('\n');
}

console.log(`${files.length} files, seed ${seed}, at most ${minutes} min; again with POURPROOF_SEED=${seed}`);
const { status } = spawnSync(
  'npx',
  // another order each time, so that no file is always the one that the time does not reach
  ['--no-install', 'vitest', 'run', '--sequence.shuffle.files', `--sequence.seed=${seed}`, ...files],
  {
    stdio: 'inherit',
    env: {
      ...process.env,
      POURPROOF_LANE: 'long',
      POURPROOF_SEED: String(seed),
      POURPROOF_PROPERTY_MS: String((60_000 * minutes) / PROPERTIES_AT_A_TIME),
      POURPROOF_DEADLINE: String(Date.now() + 60_000 * minutes),
    },
  },
);
console.log(`seed ${seed}: ${status === 0 ? 'good' : 'FAILED'}`);
process.exit(status ?? 1);
