// Times of the axis and all its measures against one opening by other libraries, on real lettering and on awkward families.
import {
  arcRingsArea,
  erodedArea,
  medialAxis,
  openedArea,
  openedOutline,
  strokeWidths,
  vVolume,
} from '@pourproof/geometry';
import { awkward } from './awkward-regions.mjs';
import { lettering } from './lettering.mjs';
import { clipper2Wasm, clipperLib, jsts } from './opening-peers.mjs';

const RADIUS_MM = 0.8;
const isQuick = process.argv.includes('--quick');

/** Median time of some runs in ms, and the last result; the result keeps the work from being left out. */
function time(run, times = 5) {
  const spent = [];
  let result;
  for (let k = 0; k < times; k++) {
    const start = performance.now();
    result = run();
    spent.push(performance.now() - start);
  }
  return { ms: spent.sort((a, b) => a - b)[times >> 1], result };
}

/** All that a proof asks: one cut with its outline, erosion, widths and a V cut. */
function measures(axis) {
  return (
    openedArea(axis, RADIUS_MM) +
    erodedArea(axis, RADIUS_MM) +
    arcRingsArea(openedOutline(axis, RADIUS_MM)) +
    strokeWidths(axis).lengthMm +
    vVolume(axis, { includedRad: Math.PI / 3, depthMm: 3 })
  );
}

const peers = [clipperLib(), await clipper2Wasm(), await jsts()];
const cases = await lettering(isQuick ? { texts: ['name'], capHeights: [15] } : {});
for (const { region } of cases) {
  measures(medialAxis(region));
}
const ratios = new Map(peers.map((peer) => [peer.name, []]));
const second = [];
console.log(`One opening at ${RADIUS_MM} mm; ours is the axis plus all measures. Times in ms, medians.`);
for (const { name, region } of cases) {
  const axis = time(() => medialAxis(region));
  const all = time(() => measures(axis.result));
  const again = time(() => openedArea(axis.result, RADIUS_MM * 1.1));
  const ours = axis.ms + all.ms;
  second.push(again.ms / ours);
  const area = openedArea(axis.result, RADIUS_MM);
  const cells = peers.map((peer) => {
    const input = peer.prepare(region);
    const theirs = time(() => peer.run(input, RADIUS_MM), 3);
    ratios.get(peer.name).push(ours / theirs.ms);
    return `${peer.name} ${theirs.ms.toFixed(1)} (area ${(peer.area(theirs.result) - area).toExponential(1)})`;
  });
  const n = region.coords.length / 2;
  console.log(
    `${name.padEnd(34)} ${String(n).padStart(6)} edges  axis ${axis.ms.toFixed(1)}  measures ${all.ms.toFixed(1)}  ${cells.join('  ')}`,
  );
}
const median = (list) => [...list].sort((a, b) => a - b)[list.length >> 1];
for (const [name, list] of ratios) {
  console.log(`ours / ${name}: median ${median(list).toFixed(3)}, worst ${Math.max(...list).toFixed(3)}`);
}
console.log(
  `another radius / first: median ${median(second).toFixed(3)}, worst ${Math.max(...second).toFixed(3)}`,
);

console.log('Growth on awkward families, one run each.');
for (const [family, make] of Object.entries(awkward)) {
  const cells = [];
  let before;
  for (const size of isQuick ? [1000, 4000] : [1000, 10_000, 100_000]) {
    const region = make(size);
    const n = region.coords.length / 2;
    const { ms, result } = time(() => medialAxis(region), size > 10_000 ? 1 : 3);
    const exponent =
      before === undefined
        ? ''
        : ` exponent ${(Math.log(ms / before.ms) / Math.log(n / before.n)).toFixed(2)}`;
    cells.push(`${n}: ${((1000 * ms) / n).toFixed(2)} µs an edge, ${result.neckCount} necks${exponent}`);
    before = { ms, n };
    if (ms > 4000) {
      break;
    }
  }
  console.log(`${family.padEnd(16)} ${cells.join('   ')}`);
}
