// Processor time of remedies in new processes, with all that is loaded: a name, aim 2 s, and the demo, aim 5 s. npm run bench:remedy [-- RUNS]
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { remedy } from 'pourproof';

const FIXTURES = new URL('../../../fixtures/', import.meta.url);
const read = (path) => new Uint8Array(readFileSync(new URL(path, FIXTURES)));
const NAME = {
  capHeight: '15mm',
  bit: ['flat:2mm'],
  depth: '3mm',
  wood: 'maple',
  seal: 'epoxy',
  sealHours: '24h',
  level: '0.5mm',
};
const PIECES = {
  name: () => [{ kind: 'lettering', text: 'Rowan', font: read('fonts/lora-400.ttf') }, NAME],
  demo: () => {
    const { artwork: _, schema: __, ...job } = JSON.parse(new TextDecoder().decode(read('demo/job.json')));
    return [{ kind: 'file', name: 'board.svg', bytes: read('demo/board.svg') }, job];
  },
};

const [piece] = process.argv.slice(2);
if (piece in PIECES) {
  const { tried, remedies } = await remedy(...PIECES[piece]());
  const { user, system } = process.cpuUsage();
  console.log(JSON.stringify({ seconds: (user + system) / 1e6, tried, ways: remedies.length }));
} else {
  const runs = Number(piece ?? 3);
  for (const each of Object.keys(PIECES)) {
    const all = Array.from({ length: runs }, () =>
      JSON.parse(
        spawnSync(process.execPath, [fileURLToPath(import.meta.url), each], { encoding: 'utf8' }).stdout,
      ),
    ).toSorted((a, b) => a.seconds - b.seconds);
    const { seconds, tried, ways } = all[Math.floor(runs / 2)];
    console.log(`${each}: ${seconds.toFixed(1)} s of processor time, ${tried} jobs tried, ${ways} ways`);
  }
}
