import { execFileSync } from 'node:child_process';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { JOBS } from './bench-jobs.mjs';
import { proofSection } from './proof-section.mjs';
import { timeProofs } from './time-proofs.mjs';

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
