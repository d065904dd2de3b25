import { execFileSync } from 'node:child_process';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { JOBS } from './bench-jobs.mjs';
import { proofSection } from './proof-section.mjs';
import { timeProofs } from './time-proofs.mjs';
import { WAY_OUT_JOBS } from './way-out-jobs.mjs';

/**
 * Measures whole proofs and renders their section.
 *
 * @param isQuick a fifth of the artworks, up to 320 glyphs, and no trials of ways out
 */
export async function measuredSection({ isQuick }) {
  const quick = { rounds: 2, withWaysOut: false, texts: ['name'], capHeights: [15], tolerances: [0.01] };
  const cases = await timeProofs(isQuick ? quick : { rounds: 3, withWaysOut: true });
  const counts = isQuick ? [20, 80, 320] : [20, 80, 320, 1250, 5000];
  return proofSection({
    date: new Date().toISOString().slice(0, 10),
    machine: `${cpus()[0].model.trim()}, ${cpus().length} cores, Node ${process.versions.node}`,
    cases,
    growth: Object.keys(JOBS).map((job) => ({ job, rows: grown(job, counts) })),
    waysOut: waysOutRows(),
  });
}

/** As the command line asks the engine to run code before it optimizes it (apps/cli/bin/pourproof.js). */
const AS_CLI = Number.parseInt(process.versions.v8, 10) < 12 ? ['--interrupt-budget=700000'] : [];

/** What trying ways out takes, job by job. */
function waysOutRows() {
  const script = fileURLToPath(new URL('./vet-once.mjs', import.meta.url));
  return Object.keys(WAY_OUT_JOBS).map((name) => {
    const row = { name, ...JSON.parse(execFileSync(process.execPath, [...AS_CLI, script, name]).toString()) };
    console.error(JSON.stringify(row));
    return row;
  });
}

function grown(job, counts) {
  const script = fileURLToPath(new URL('./grow-proof.mjs', import.meta.url));
  const rows = JSON.parse(
    execFileSync(process.execPath, ['--expose-gc', script, job, ...counts.map(String)]).toString(),
  );
  console.error(job, JSON.stringify(rows));
  return rows;
}
