// `node tests/publish/on-node.mjs`: the demo and the packed install on the releases of Node beside the one that runs this. They come
// from the npm registry, where each is a package named node. Run `npm run test:packed` first: it packs what is installed here.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';
import process from 'node:process';

const MAJORS = ['22', '24', '26'];
const TARBALLS = 'node_modules/.cache/packed';

/** Installs the newest release of a major version apart from this checkout. Returns the folder of its `node`, or null if there is none. */
function fetchNode(major) {
  const prefix = resolve(`node_modules/.cache/node-${major}`);
  const bin = join(prefix, 'node_modules', '.bin');
  if (!existsSync(join(bin, 'node'))) {
    mkdirSync(prefix, { recursive: true });
    const { status, stderr } = spawnSync(
      'npm',
      ['install', '--prefix', prefix, '--no-audit', '--no-fund', '--loglevel=error', `node@${major}`],
      { encoding: 'utf8' },
    );
    if (status !== 0) {
      console.error(stderr.trim());
      return null;
    }
  }
  return existsSync(join(bin, 'node')) ? bin : null;
}

const runWith = (bin, args) =>
  spawnSync(join(bin, 'node'), args, {
    encoding: 'utf8',
    env: { ...process.env, PATH: `${bin}${delimiter}${process.env.PATH}` },
  });

/** What goes wrong on a release; empty when all is well. */
function faultsOn(bin, expectedDemo) {
  const faults = [];
  const demo = runWith(bin, ['apps/cli/dist/demo.js']);
  if (demo.status !== 0 || demo.stdout !== expectedDemo || demo.stderr !== '') {
    faults.push(`the demo answers otherwise (exit ${demo.status}):\n${demo.stdout}${demo.stderr}`);
  }
  const installed = runWith(bin, ['tests/publish/installed.mjs', TARBALLS]);
  if (installed.status !== 0) {
    faults.push(`the packed install fails:\n${installed.stdout}${installed.stderr}`);
  }
  return faults;
}

if (!existsSync(TARBALLS)) {
  console.error(`${TARBALLS} is not there: run npm run test:packed first.`);
  process.exit(1);
}
const here = spawnSync(process.execPath, ['apps/cli/dist/demo.js'], { encoding: 'utf8' });
let good = 0;
let bad = 0;
const missing = [];
for (const major of MAJORS) {
  const bin = fetchNode(major);
  const version = bin === null ? '' : runWith(bin, ['--version']).stdout.trim();
  // a package of another system or a script that was not allowed to run leaves no node that starts
  if (bin === null || !version.startsWith(`v${major}.`)) {
    missing.push(major);
    console.error(`\n!!! NODE ${major} CANNOT BE HAD FROM THE REGISTRY: NOTHING WAS TRIED ON IT !!!\n`);
    continue;
  }
  const started = Date.now();
  const faults = faultsOn(bin, here.stdout);
  for (const fault of faults) {
    console.error(`node ${version}: ${fault}`);
  }
  const seconds = ((Date.now() - started) / 1000).toFixed(1);
  console.log(`── node ${version}: ${faults.length === 0 ? 'good' : 'FAILED'} after ${seconds} s`);
  faults.length === 0 ? good++ : bad++;
}
console.log(
  `${good} releases of Node are good beside ${process.version}, ${bad} are not, ${missing.length} could not be had.`,
);
process.exitCode = bad === 0 && good > 0 ? 0 : 1;
