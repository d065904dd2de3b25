// Steps of the axis of one awkward family at several sizes, as JSON; a process of its own, because only code that has not run yet is counted in full.
// node packages/geometry/bench/count-family.mjs <family> <size>…
import { medialAxis } from '@pourproof/geometry';
import { awkward, found, standing } from './awkward-regions.mjs';
import { stepCounter } from './count-steps.mjs';

const [family, ...sizes] = process.argv.slice(2);
const make = awkward[family] ?? found[family] ?? standing[family].make;
const steps = await stepCounter();
const rows = [];
for (const size of sizes) {
  const region = make(Number(size));
  rows.push(await steps.count(() => medialAxis(region)));
}
steps.stop();
console.log(JSON.stringify(rows));
