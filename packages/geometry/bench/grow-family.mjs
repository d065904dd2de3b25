// Times of the axis and its measures on one awkward family at several sizes, as JSON; a process of its own, so that its peak of memory is known.
// node packages/geometry/bench/grow-family.mjs <family> <size>…
import { leftStanding, medialAxis } from '@pourproof/geometry';
import { allMeasures, RADIUS_MM } from './all-measures.mjs';
import { awkward, found } from './awkward-regions.mjs';
import { leastTime } from './least-time.mjs';

const [family, ...sizes] = process.argv.slice(2);
const make = awkward[family] ?? found[family];
/** Largest number of edges for which the pieces left standing are asked for. */
const LARGEST_STANDING = 6000;

for (let k = 0; k < 20; k++) {
  allMeasures(medialAxis(make(1000)));
}
const rows = sizes.map((size) => {
  const region = make(Number(size));
  const edges = region.coords.length / 2;
  const runs = edges > 300_000 ? 1 : edges > 30_000 ? 2 : 5;
  const axis = leastTime(() => medialAxis(region), runs);
  const peakBytes = process.resourceUsage().maxRSS * 1024;
  const measures = leastTime(() => allMeasures(axis.result), runs);
  // not linear on all of them (docs/method/medial-axis.md): asked once, and of small ones only
  const standing =
    edges > LARGEST_STANDING ? undefined : leastTime(() => leftStanding(axis.result, RADIUS_MM, 0.005), 1);
  return {
    edges,
    bottlenecks: axis.result.bottleneckCount,
    axisMs: axis.ms,
    measuresMs: measures.ms,
    standingMs: standing?.ms,
    restBytes: bytesOf(axis.result),
    peakBytes,
  };
});
console.log(JSON.stringify(rows));

/** Bytes of all arrays of an axis, those of its region among them. */
function bytesOf(value) {
  if (ArrayBuffer.isView(value)) {
    return value.byteLength;
  }
  return typeof value === 'object' && value !== null
    ? Object.values(value).reduce((sum, part) => sum + bytesOf(part), 0)
    : 0;
}
