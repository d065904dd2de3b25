// Times of the axis and all its measures against one opening by other libraries on real lettering, and their growth on awkward families.
// npm run bench [-- --quick] [-- --page]: --page writes docs/method/performance.md from what was measured.
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { medialAxis, openedArea } from '@pourproof/geometry';
import { allMeasures, RADIUS_MM } from './all-measures.mjs';
import { awkward } from './awkward-regions.mjs';
import { boostAnchor } from './boost-anchor.mjs';
import { leastTime } from './least-time.mjs';
import { lettering } from './lettering.mjs';
import { clipper2Wasm, clipperLib, jsts, jstsAtTolerance } from './opening-peers.mjs';
import { performancePage } from './performance-page.mjs';

const isQuick = process.argv.includes('--quick');
const SIZES = isQuick ? [1000, 4000, 16_000] : [1000, 4000, 16_000, 64_000, 250_000, 1_000_000];

/** Cases that all engines are run on before any is timed, and how often, so that none is timed cold: compilers take some runs to see what counts. */
const WARM_UP = 6;
const WARM_ROUNDS = 3;

const cases = await timeLettering();
const families = Object.keys(awkward).map(timeFamily);
const page = performancePage({
  date: new Date().toISOString().slice(0, 10),
  machine: `${cpus()[0].model.trim()}, ${cpus().length} cores, Node ${process.versions.node}`,
  cases,
  families,
});
console.log(page);
if (process.argv.includes('--page')) {
  writeFileSync(fileURLToPath(new URL('../../../docs/method/performance.md', import.meta.url)), page);
}

/** For each case of lettering our times and those of the peers, ms. */
async function timeLettering() {
  const peers = [clipperLib(), await clipper2Wasm(), await jsts(), await jstsAtTolerance()];
  const anchor = boostAnchor();
  const regions = await lettering(isQuick ? { texts: ['name'], capHeights: [15] } : {});
  const warming = Array.from({ length: WARM_ROUNDS }, () => regions.slice(0, WARM_UP)).flat();
  for (const { region } of warming) {
    allMeasures(medialAxis(region));
    for (const peer of peers) {
      peer.run(peer.prepare(region), RADIUS_MM);
    }
  }
  const rows = regions.map(({ name, region }) => {
    const axis = leastTime(() => medialAxis(region));
    const measures = leastTime(() => allMeasures(axis.result));
    const again = leastTime(() => openedArea(axis.result, RADIUS_MM * 1.1));
    const theirs = Object.fromEntries(
      peers.map((peer) => {
        const input = peer.prepare(region);
        // the slowest runs for so long that one run will do
        const runs = peer === peers[0] ? 1 : 2;
        return [peer.name, leastTime(() => peer.run(input, RADIUS_MM), runs).ms];
      }),
    );
    const edges = region.coords.length / 2;
    const row = {
      name,
      edges,
      axisMs: axis.ms,
      measuresMs: measures.ms,
      againMs: again.ms,
      theirs,
      anchorMs: anchor?.time(region, 2),
    };
    console.error(JSON.stringify(row));
    return row;
  });
  anchor?.close();
  return rows;
}

function timeFamily(family) {
  const script = fileURLToPath(new URL('./grow-family.mjs', import.meta.url));
  const rows = JSON.parse(execFileSync(process.execPath, [script, family, ...SIZES.map(String)]));
  console.error(family, JSON.stringify(rows));
  return { family, rows };
}
