// Everything that must hold before a change lands. `npm test` and CI run exactly this: two rows of checks side by side, one for each of
// two cores, then all tests.
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import process from 'node:process';
import { ensureChromium } from './support/find-chromium.mjs';

const RESULTS = 'node_modules/.cache/test-results.json';

/** Each row runs from left to right; what needs the build comes after it in the same row. */
const ROWS = [
  [
    ['types and build', 'tsc', ['-b']],
    ['command line in one', 'node', ['apps/cli/build/bundle.mjs']],
    ['viewer build', 'vite', ['build', 'apps/viewer', '--logLevel', 'warn']],
  ],
  [
    ['format and lint', 'biome', ['check', '--error-on-warnings', '.']],
    ['import boundaries', 'depcruise', ['packages', 'apps', '--config', '.dependency-cruiser.cjs']],
    ['dead code', 'knip', []],
    ['dead code behind index files', 'node', ['tests/dead-code.mjs']],
    ['API docs', 'typedoc', []],
  ],
];

const TESTS = [
  'tests',
  'vitest',
  [
    'run',
    '--reporter=default',
    '--reporter=./tests/support/slowest-reporter.mjs',
    '--reporter=json',
    `--outputFile.json=${RESULTS}`,
  ],
];

const failed = [];

/** Runs one step; what it prints is shown when it ends, so that steps side by side do not mix, or at once. */
function step([name, command, args], env, atOnce) {
  const started = Date.now();
  const child = spawn('npx', ['--no-install', command, ...args], {
    stdio: atOnce ? 'inherit' : ['ignore', 'pipe', 'pipe'],
    env,
  });
  const said = [];
  child.stdout?.on('data', (text) => said.push(text));
  child.stderr?.on('data', (text) => said.push(text));
  return new Promise((resolve) => {
    child.on('error', (error) => said.push(Buffer.from(`${error.message}\n`)));
    child.on('close', (status) => {
      process.stdout.write(Buffer.concat(said));
      const result = status === 0 ? 'good' : `FAILED (exit ${status})`;
      console.log(`── ${name}: ${result} after ${((Date.now() - started) / 1000).toFixed(1)} s`);
      if (status !== 0) {
        failed.push(name);
      }
      resolve();
    });
  });
}

async function row(steps, env) {
  for (const each of steps) {
    await step(each, env, false);
  }
}

let chromium;
try {
  chromium = ensureChromium();
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
const started = Date.now();
const env = { ...process.env, CHROMIUM: chromium };
mkdirSync('node_modules/.cache', { recursive: true });
rmSync(RESULTS, { force: true });
await Promise.all(ROWS.map((steps) => row(steps, env)));
await step(TESTS, env, true);
let counts = { numPassedTests: 0, numFailedTests: 1 };
try {
  counts = JSON.parse(readFileSync(RESULTS, 'utf8'));
} catch {
  console.error(`No test results in ${RESULTS}: the test runner did not finish.`);
}
console.log(failed.length === 0 ? '\nAll steps are good.' : `\nFailed steps: ${failed.join(', ')}.`);
console.log(`${((Date.now() - started) / 1000).toFixed(0)} s`);
console.log(`${counts.numPassedTests} passed, ${counts.numFailedTests} failed`);
process.exit(failed.length === 0 && counts.numPassedTests > 0 ? 0 : 1);
