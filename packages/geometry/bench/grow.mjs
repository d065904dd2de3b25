// Measures how the axis and its measures grow on awkward families and keeps the figures, family by family, in growth.json, of which the page is rendered.
// node packages/geometry/bench/grow.mjs [--sizes 20000,80000] [family…]: all families by default
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { awkward, found, standing } from './awkward-regions.mjs';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { sizes: { type: 'string', default: '20000,80000' } },
});
const FIGURES = new URL('./growth.json', import.meta.url);
const sizes = values.sizes.split(',');
const families = positionals.length > 0 ? positionals : Object.keys({ ...awkward, ...found, ...standing });
for (const family of families) {
  const rows = run('grow-family.mjs', family);
  const steps = run('count-family.mjs', family);
  const measured = new Date().toISOString().slice(0, 10);
  const kept = {
    measured,
    rows: rows.map((row, k) => ({ ...row, steps: steps[k] })),
  };
  console.error(family, JSON.stringify(kept));
  // read anew each time: another run may have written
  const figures = JSON.parse(readFileSync(FIGURES, 'utf8'));
  figures[family] = { ...kept, memory: memoryOf(rows[rows.length - 1], measured, figures[family]?.memory) };
  writeFileSync(FIGURES, `${JSON.stringify(figures, undefined, 2)}\n`);
}

function run(script, family) {
  const path = fileURLToPath(new URL(script, import.meta.url));
  return JSON.parse(
    execFileSync(process.execPath, [path, family, ...sizes], { stdio: ['ignore', 'pipe', 'inherit'] }),
  );
}

/** Memory at the largest size that was ever measured: bytes an edge mean little where Node itself takes most of them. */
function memoryOf({ edges, restBytes, peakBytes }, measured, before) {
  return before !== undefined && before.edges > edges ? before : { measured, edges, restBytes, peakBytes };
}
