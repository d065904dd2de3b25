// Times of the axis and its measures on one awkward family at several sizes, as JSON; a process of its own, so that its peak of memory is known.
// node packages/geometry/bench/grow-family.mjs <family> <size>…
import { medialAxis } from '@pourproof/geometry';
import { allMeasures, allStanding } from './all-measures.mjs';
import { awkward, found, standing } from './awkward-regions.mjs';
import { leastTime } from './least-time.mjs';

const [family, ...sizes] = process.argv.slice(2);
const make = awkward[family] ?? found[family] ?? standing[family].make;

for (let k = 0; k < 20; k++) {
  const axis = medialAxis(make(1000));
  allMeasures(axis);
  if (k < 3) {
    timeOfStanding(axis, undefined, 1);
  }
}
const rows = sizes.map((size) => {
  const region = make(Number(size));
  const edges = region.coords.length / 2;
  const runs = edges > 300_000 ? 1 : edges > 30_000 ? 2 : 5;
  const axis = leastTime(() => medialAxis(region), runs);
  const peakBytes = process.resourceUsage().maxRSS * 1024;
  const measures = leastTime(() => allMeasures(axis.result), runs);
  const left = timeOfStanding(axis.result, standing[family]?.radius(Number(size)), runs);
  return {
    edges,
    bottlenecks: axis.result.bottleneckCount,
    axisMs: axis.ms,
    measuresMs: measures.ms,
    standingMs: left,
    restBytes: bytesOf(axis.result),
    peakBytes,
  };
});
console.log(JSON.stringify(rows));

/** Processor time, ms; undefined where it ends in an error of ours, which is told. */
function timeOfStanding(axis, radius, runs) {
  try {
    return leastTime(() => allStanding(axis, radius), runs).ms;
  } catch (error) {
    console.error(family, error.message);
    return undefined;
  }
}

/** Bytes of all arrays of an axis, those of its region among them. */
function bytesOf(value) {
  if (ArrayBuffer.isView(value)) {
    return value.byteLength;
  }
  return typeof value === 'object' && value !== null
    ? Object.values(value).reduce((sum, part) => sum + bytesOf(part), 0)
    : 0;
}
