import { resolveRegions } from '@pourproof/arrangement';
import { medialAxis } from '@pourproof/geometry';
import { settleJob } from '@pourproof/job';
import { judgeDrawing, Stages, vetDrawing } from '@pourproof/proof';
import { allMeasures, RADIUS_MM } from '../../geometry/bench/all-measures.mjs';
import { leastTime } from '../../geometry/bench/least-time.mjs';
import { lettering } from '../../geometry/bench/lettering.mjs';
import { clipperLib } from '../../geometry/bench/opening-peers.mjs';
import { CHANGES, changed, JOBS } from './bench-jobs.mjs';

/** Rounds over the first cases before any is timed, so that none is timed cold. */
const WARM_CASES = 1;
const WARM_ROUNDS = 3;

/**
 * For each case of lettering the processor times of axis with measures, of one opening by clipper-lib, and of proofs, ms, the least of some
 * rounds; all run in turn in one process.
 *
 * @param options `rounds` and what {@link lettering} takes
 * @returns `[{ name, edges, axisMs, openingMs, proofs: { [job]: { wholeMs, changesMs, proposedMs, waysOutMs } } }]`
 */
export async function timeProofs({ rounds, withWaysOut, ...which }) {
  const cases = await lettering(which);
  const peer = clipperLib();
  for (let k = 0; k < WARM_ROUNDS; k++) {
    for (const each of cases.slice(0, WARM_CASES)) {
      timeCase(each, peer, 1, false);
    }
  }
  return cases.map((each) => {
    const row = timeCase(each, peer, rounds, withWaysOut);
    console.error(JSON.stringify(row));
    return row;
  });
}

function timeCase({ name, drawing, region }, peer, rounds, withWaysOut) {
  const input = peer.prepare(region);
  const shapes = drawing.shapes.map((shape) => shape.region);
  return {
    name,
    edges: region.coords.length / 2,
    axisMs: leastTime(() => allMeasures(medialAxis(region)), 2 * rounds).ms,
    resolveMs: leastTime(() => resolveRegions(shapes), rounds).ms,
    openingMs: leastTime(() => peer.run(input, RADIUS_MM), rounds).ms,
    proofs: Object.fromEntries(
      Object.entries(JOBS).map(([job, settings]) => [job, timeJob(drawing, settings, rounds, withWaysOut)]),
    ),
  };
}

/** What one job takes: with nothing kept, with one setting changed and the rest kept, and the trials of its ways out. */
function timeJob(drawing, settings, rounds, withWaysOut) {
  const job = settleJob({ ...settings });
  const whole = leastTime(() => {
    const stages = new Stages();
    return { stages, proof: judgeDrawing(drawing, 'bench', job, stages, 'none') };
  }, rounds);
  const { stages } = whole.result;
  const changesMs = CHANGES.map(([, , change, besides]) => {
    const other = settleJob(changed(settings, change));
    if (besides !== undefined) {
      judgeDrawing(drawing, 'bench', settleJob({ ...settings, ...besides }), stages, 'none');
    }
    return leastTime(() => judgeDrawing(drawing, 'bench', other, stages.aside(), 'none'), rounds).ms;
  });
  const proposed = leastTime(() => judgeDrawing(drawing, 'bench', job, stages.aside()), rounds);
  // ways out are tried at length: once is enough to see what they take
  const tried = withWaysOut && leastTime(() => vetDrawing(drawing, 'bench', job, stages.aside()), 1);
  return {
    wholeMs: whole.ms,
    changesMs,
    proposedMs: proposed.ms,
    ...(withWaysOut ? { waysOutMs: tried.ms } : {}),
  };
}
