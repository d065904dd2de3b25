// Processor times of one job vetted with its ways out, as JSON: the first time in its process, and the least of some more.
// node packages/proof/bench/vet-once.mjs <job of way-out-jobs.mjs>
import { resolveRegions } from '@pourproof/arrangement';
import { medialAxis } from '@pourproof/geometry';
import { settleJob } from '@pourproof/job';
import { allMeasures } from '../../geometry/bench/all-measures.mjs';
import { leastTime } from '../../geometry/bench/least-time.mjs';
import { WAY_OUT_JOBS } from './way-out-jobs.mjs';

const AGAIN = 3;
// the front door, which reads the artwork anew for some ways out
const { readDrawing, vet } = await import(new URL('../../pourproof/dist/index.js', import.meta.url));
const { source, job } = await WAY_OUT_JOBS[process.argv[2]]();

const seconds = async (waysOut) => {
  const start = process.cpuUsage();
  await vet(source, job, { waysOut });
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
};

const first = await seconds('tried');
let warm = Infinity;
let judged = Infinity;
for (let k = 0; k < AGAIN; k++) {
  warm = Math.min(warm, await seconds('tried'));
  judged = Math.min(judged, await seconds('none'));
}
const settled = settleJob(job, { source: source.kind, hasFont: source.kind === 'lettering' });
const { shapes } = await readDrawing(source, settled);
const { region } = resolveRegions(shapes.map((shape) => shape.region));
const { ms } = leastTime(() => allMeasures(medialAxis(region)), 20);
console.log(JSON.stringify({ edges: region.coords.length / 2, first, warm, judged, axisMs: ms }));
