// Times and peak memory of whole proofs of lettering of several lengths, as JSON; a process of its own, so that its peak is known.
// node packages/proof/bench/grow-proof.mjs <job> <glyphs>…
import { readFile } from 'node:fs/promises';
import { openFont, readLettering } from '@pourproof/artwork';
import { settleJob } from '@pourproof/job';
import { judgeDrawing, Stages } from '@pourproof/proof';
import { leastTime } from '../../geometry/bench/least-time.mjs';
import { JOBS } from './bench-jobs.mjs';

/** Glyphs of one line, and the lines that are repeated. */
const LINE = 'HamburgefonstivWillowBrok';
const [job, ...counts] = process.argv.slice(2);
const settings = settleJob({ ...JOBS[job] });
const bytes = await readFile(new URL('../../../fixtures/fonts/lora-400.ttf', import.meta.url));
const font = await openFont(new Uint8Array(bytes));

const warm = await drawn(20);
for (let k = 0; k < 8; k++) {
  judgeDrawing(warm, 'bench', settings, new Stages(), 'none');
}
globalThis.gc?.();
const restBytes = process.memoryUsage().rss;
const rows = [];
for (const count of counts.map(Number)) {
  const drawing = await drawn(count);
  const edges = drawing.shapes.reduce((sum, { region }) => sum + region.coords.length / 2, 0);
  const { ms } = leastTime(
    () => judgeDrawing(drawing, 'bench', settings, new Stages(), 'none'),
    count > 500 ? 1 : count > 100 ? 2 : 4,
  );
  // the peak so far, less what the process holds of itself
  rows.push({ count, edges, ms, peakBytes: process.resourceUsage().maxRSS * 1024 - restBytes });
}
console.log(JSON.stringify(rows));

/** So many glyphs in lines of equal length, or in one shorter. */
async function drawn(count) {
  const lines = Array.from({ length: Math.ceil(count / LINE.length) }, (_, k) =>
    LINE.slice(0, Math.min(LINE.length, count - k * LINE.length)),
  );
  return readLettering(lines.join('\n'), { font, capHeightMm: 15, toleranceMm: 0.01 });
}
