// Processor time of whole runs of the command line, from an empty process to its end, against a bare `node -e 0`: the least of several rounds, in each of
// which every row runs once, so that what else the machine does falls on all alike.
// node apps/cli/bench/cold-start.mjs [rounds] [--page]: --page writes docs/method/start-up.md. Run with another release of Node it measures that one.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import module from 'node:module';
import { availableParallelism, cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { startUpPage } from './start-up-page.mjs';

const ROUNDS = Number(process.argv.slice(2).find((word) => /^\d+$/u.test(word)) ?? 5);
const root = fileURLToPath(new URL('../../..', import.meta.url));
const bin = join(root, 'apps/cli/bin/pourproof.js');
const FONT = ['--font', join(root, 'fixtures/fonts/lora-400.ttf')];

// drawings that are clear: what is judged is then judged once, and no ways out are proved
const SVG =
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40"><path d="M10 20C10 8 26 8 30 20S50 32 50 20 34 8 30 20 10 32 10 20Z"/></svg>';
const EMPTY = '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm"/>';
const DXF = [
  ...[
    '0',
    'SECTION',
    '2',
    'HEADER',
    '9',
    '$INSUNITS',
    '70',
    '4',
    '0',
    'ENDSEC',
    '0',
    'SECTION',
    '2',
    'ENTITIES',
  ],
  ...['0', 'CIRCLE', '8', '0', '10', '30', '20', '20', '40', '15', '0', 'ENDSEC', '0', 'EOF', ''],
].join('\n');

const folder = mkdtempSync(join(tmpdir(), 'pourproof-cold-start-'));
const sealed = ['--wood', 'maple', '--seal', 'epoxy'];
const rows = [
  { name: 'bare `node -e 0`', args: ['-e', '0'], aim: null },
  { name: '`--help`', args: [bin, '--help'], aim: 2 },
  { name: '`list woods`', args: [bin, 'list', 'woods'], aim: 2 },
  { name: '`explain bit-cannot-enter`', args: [bin, 'explain', 'bit-cannot-enter'], aim: null },
  { name: 'an SVG with nothing in it', args: vet([file('nothing.svg', EMPTY)], '3mm'), aim: null },
  {
    name: 'letters that the font has not',
    args: vet(['--text', '木', ...FONT, '--cap-height', '15mm'], '1mm'),
    aim: null,
  },
  { name: 'a name, clear', args: vet(['--text', 'Ilo', ...FONT, '--cap-height', '60mm'], '1mm'), aim: 4 },
  {
    name: 'a name with findings',
    args: vet(['--text', 'Ilo', ...FONT, '--cap-height', '15mm'], '1mm'),
    aim: 4,
  },
  { name: 'an SVG, clear', args: vet([file('knot.svg', SVG)], '3mm'), aim: null },
  { name: 'a DXF, clear', args: vet([file('disc.dxf', DXF)], '3mm'), aim: null },
  { name: 'the demo order', args: [bin, 'vet', '--job', join(root, 'fixtures/demo/job.json')], aim: null },
];

function vet(what, bit) {
  return [bin, 'vet', ...what, '--bit', `flat:${bit}`, '--depth', '2mm', ...sealed];
}

function file(name, text) {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

/** Processor time of one run with its threads, ms: what the shell's `time` has from getrusage. */
function milliseconds(args) {
  const script = 'TIMEFORMAT="%3U %3S"; time "$@" >/dev/null 2>&1';
  const { stderr } = spawnSync('bash', ['-c', script, 'time', process.execPath, ...args], {
    encoding: 'utf8',
  });
  const [user, system] = stderr.trim().split(' ').map(Number);
  return 1000 * (user + system);
}

const least = rows.map(() => Number.POSITIVE_INFINITY);
for (let round = 0; round < ROUNDS; round++) {
  rows.forEach(({ args }, k) => {
    least[k] = Math.min(least[k], milliseconds(args));
  });
}
rmSync(folder, { recursive: true });
const page = startUpPage({
  date: new Date().toISOString().slice(0, 10),
  machine: `${cpus()[0].model.trim()}, ${availableParallelism()} cores, Node ${process.versions.node}`,
  isCompiledKept: module.enableCompileCache !== undefined,
  rounds: ROUNDS,
  rows: rows.map(({ name, aim }, k) => ({ name, aim, ms: least[k], ratio: least[k] / least[0] })),
});
console.log(page);
if (process.argv.includes('--page')) {
  writeFileSync(join(root, 'docs/method/start-up.md'), page);
}
