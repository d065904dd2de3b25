// Everything that must hold before a change lands, in the order that fails fastest. `npm test` and CI run exactly this.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import process from 'node:process';
import { ensureChromium } from './support/find-chromium.mjs';

const RESULTS = 'node_modules/.cache/test-results.json';

const STEPS = [
  ['format and lint', 'biome', ['check', '--error-on-warnings', '.']],
  ['types and build', 'tsc', ['-b']],
  ['import boundaries', 'depcruise', ['packages', 'apps', '--config', '.dependency-cruiser.cjs']],
  ['dead code', 'knip', []],
  ['API docs', 'typedoc', []],
  ['viewer build', 'vite', ['build', 'apps/viewer', '--logLevel', 'warn']],
  ['tests', 'vitest', ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${RESULTS}`]],
];

function run(name, command, args, env) {
  console.log(`\n── ${name}: ${command} ${args.join(' ')}`);
  const started = Date.now();
  const { status } = spawnSync('npx', ['--no-install', command, ...args], { stdio: 'inherit', env });
  console.log(
    `── ${name}: ${status === 0 ? 'good' : `FAILED (exit ${status})`} after ${((Date.now() - started) / 1000).toFixed(1)} s`,
  );
  return status === 0;
}

let chromium;
try {
  chromium = ensureChromium();
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
const env = { ...process.env, CHROMIUM: chromium };
mkdirSync('node_modules/.cache', { recursive: true });
rmSync(RESULTS, { force: true });
const failed = [];
for (const [name, command, args] of STEPS) {
  if (!run(name, command, args, env)) {
    failed.push(name);
  }
}
let counts = { numPassedTests: 0, numFailedTests: 1 };
try {
  counts = JSON.parse(readFileSync(RESULTS, 'utf8'));
} catch {
  console.error(`No test results in ${RESULTS}: the test runner did not finish.`);
}
console.log(failed.length === 0 ? '\nAll steps are good.' : `\nFailed steps: ${failed.join(', ')}.`);
console.log(`${counts.numPassedTests} passed, ${counts.numFailedTests} failed`);
process.exit(failed.length === 0 && counts.numPassedTests > 0 ? 0 : 1);
