// Steps an edge of the axis of all awkward families at several sizes, as JSON; a process of its own, because only code that has not run yet is counted in full.
// node packages/geometry/bench/count-families.mjs <size>…
import { medialAxis } from '@pourproof/geometry';
import { awkward, found, standing } from './awkward-regions.mjs';
import { stepCounter } from './count-steps.mjs';

const sizes = process.argv.slice(2).map(Number);
const families = {
  ...awkward,
  ...found,
  ...Object.fromEntries(Object.entries(standing).map(([name, { make }]) => [name, make])),
};
const steps = await stepCounter();
const rows = {};
for (const [name, make] of Object.entries(families)) {
  rows[name] = [];
  for (const size of sizes) {
    // nothing in these families crosses or touches
    const region = make(size);
    rows[name].push((await steps.count(() => medialAxis(region))) / (region.coords.length / 2));
  }
}
steps.stop();
console.log(JSON.stringify(rows));
