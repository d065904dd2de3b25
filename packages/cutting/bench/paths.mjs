// Times of clearing and following paths against the axis that they are read from: real lettering, and growth on awkward families.
import {
  carve,
  clearingPath,
  cutterEfforts,
  cuttingTime,
  flatCutter,
  followingPath,
} from '@pourproof/cutting';
import { medialAxis } from '@pourproof/geometry';
import { awkward } from '../../geometry/bench/awkward-regions.mjs';
import { lettering } from '../../geometry/bench/lettering.mjs';

const BITS_MM = [3.175, 1.5875, 1];
const SIZES = process.argv.includes('--quick') ? [1000, 10000] : [1000, 10000, 100000];

/** Time of one run in ms, and its result; the first of a kind is not warm. */
function time(run) {
  const start = performance.now();
  const result = run();
  return { ms: performance.now() - start, result };
}

function all(region, diameterMm, earlierDiameterMm) {
  const axis = time(() => medialAxis(region));
  const clearing = { stepoverMm: 0.4 * diameterMm, depthMm: 3, deepestPassMm: 3 };
  const clear = time(() => clearingPath(axis.result, { ...clearing, diameterMm }));
  const rest = time(() => clearingPath(axis.result, { ...clearing, diameterMm, earlierDiameterMm }));
  const follow = time(() => followingPath(axis.result, { includedRad: Math.PI / 3, depthMm: 4 }));
  const minutes = time(() => cuttingTime(clear.result).minutes + cuttingTime(follow.result.path).minutes);
  return { axis, clear, rest, follow, minutes };
}

function show(name, region, { axis, clear, rest, follow, minutes }) {
  const runs = (path) => `${cuttingTime(path).cutMm.toFixed(0)} mm in ${path.runEnds.length} runs`;
  console.log(
    `${name.padEnd(34)} ${String(region.coords.length / 2).padStart(7)} edges  axis ${axis.ms.toFixed(0)} ms` +
      `  clear ${clear.ms.toFixed(0)} ms (${runs(clear.result)})  rest ${rest.ms.toFixed(0)} ms (${runs(rest.result)})` +
      `  follow ${follow.ms.toFixed(0)} ms (${follow.result.lengthMm.toFixed(0)} mm in ${follow.result.path.runEnds.length} runs)` +
      `  times ${minutes.ms.toFixed(0)} ms (${minutes.result.toFixed(1)} min)`,
  );
}

const cases = await lettering({ texts: ['name'], capHeights: [15, 40], tolerances: [0.01] });
for (const { name, region } of cases) {
  show(name, region, all(region, 1, 3.175));
}
for (const { name, region } of cases.slice(0, 4)) {
  const { ms, result } = time(() => {
    const axis = medialAxis(region);
    const steps = BITS_MM.map((mm) => ({ cutter: flatCutter(mm), way: 'clear' }));
    const tasks = BITS_MM.map((widthMm) => ({ way: 'clear', widthMm, depthMm: 3 }));
    const efforts = cutterEfforts({ clear: axis, follow: axis }, tasks);
    return carve(axis, steps, { depthMm: 3 }).perCutter.map((added, k) => ({ ...added, ...efforts[k] }));
  });
  const text = result.map(
    (e, k) =>
      `${BITS_MM[k]} mm adds ${e.areaMm2.toFixed(1)} mm² in ${e.places.length} places, ${e.time.retracts} retracts, ${e.pathMm.toFixed(0)} mm, ${e.minutes.toFixed(1)} min`,
  );
  console.log(`${name}: ${text.join('; ')} (${ms.toFixed(0)} ms)`);
}
for (const [family, make] of Object.entries(awkward)) {
  for (const n of SIZES) {
    const region = make(n);
    show(family, region, all(region, 0.5, 2));
  }
}
