// Times of the axis and all its measures against one opening by other libraries on real lettering, and their growth on awkward families.
// npm run bench [-- --quick] [-- --proof | --kernels | --growth [--family NAME]] [-- --page]: --page writes docs/method/performance.md from what was
// measured; --proof measures whole proofs alone, --kernels all but them, --growth the families alone, or one of them; each leaves the rest of the page
// as it is. --tables renders the tables of growth of what is kept and measures nothing.
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { medialAxis, openedArea } from '@pourproof/geometry';
import { measuredSection } from '../../proof/bench/measure-section.mjs';
import { sectionOf, withSection } from '../../proof/bench/proof-section.mjs';
import { allMeasures, RADIUS_MM } from './all-measures.mjs';
import { awkward, found, standing } from './awkward-regions.mjs';
import { boostAnchor } from './boost-anchor.mjs';
import { leastTime } from './least-time.mjs';
import { lettering } from './lettering.mjs';
import { clipper2Wasm, clipperLib, jsts, jstsAtTolerance } from './opening-peers.mjs';
import { growthSections, performancePage, withGrowth } from './performance-page.mjs';

const isQuick = process.argv.includes('--quick');
/** Sizes of awkward families; the figures are kept in growth.json. */
const SIZES = isQuick ? '5000,20000' : '20000,80000';

/** Cases that all engines are run on before any is timed, and how often, so that none is timed cold: compilers take some runs to see what counts. */
const WARM_UP = 6;
const WARM_ROUNDS = 3;
/** Times that each engine runs on each case. */
const ROUNDS = 3;

const PAGE = fileURLToPath(new URL('../../../docs/method/performance.md', import.meta.url));

const page = process.argv.includes('--growth') ? growthPage() : await wholePage();
console.log(page);
if (process.argv.includes('--page')) {
  writeFileSync(PAGE, page);
}

function growthPage() {
  if (!process.argv.includes('--tables')) {
    growFamilies();
  }
  return withGrowth(readFileSync(PAGE, 'utf8'), growthSections(keptGrowth()));
}

async function wholePage() {
  const before = process.argv.includes('--proof') ? readFileSync(PAGE, 'utf8') : await geometryPage();
  const section = process.argv.includes('--kernels')
    ? sectionOf(readFileSync(PAGE, 'utf8'))
    : await measuredSection({ isQuick });
  return withSection(before, section);
}

async function geometryPage() {
  const cases = await timeLettering();
  growFamilies();
  return performancePage({
    date: today(),
    machine: `${cpus()[0].model.trim()}, ${cpus().length} cores, Node ${process.versions.node}`,
    cases,
    growth: keptGrowth(),
  });
}

function today() {
  return new Date().toISOString().slice(0, 10);
}

/** Measures all awkward families, or the one that is asked for. */
function growFamilies() {
  const at = process.argv.indexOf('--family');
  const script = fileURLToPath(new URL('./grow.mjs', import.meta.url));
  const named = at < 0 ? [] : [process.argv[at + 1]];
  execFileSync(process.execPath, [script, '--sizes', SIZES, ...named], { stdio: 'inherit' });
}

/** What is kept of the awkward families; a family that was never measured has no row. */
function keptGrowth() {
  const figures = JSON.parse(readFileSync(new URL('./growth.json', import.meta.url), 'utf8'));
  const rowsOf = (families) =>
    Object.keys(families)
      .filter((family) => figures[family] !== undefined)
      .map((family) => ({ family, ...figures[family] }));
  return { awkward: rowsOf(awkward), found: rowsOf(found), standing: rowsOf(standing) };
}

/**
 * For each case of lettering our times and those of the peers, ms, one of each in every round: all run alternately in one process, so that what
 * else the machine does falls on all alike.
 */
async function timeLettering() {
  const peers = [
    clipperLib(),
    await clipper2Wasm('umd'),
    await clipper2Wasm('es'),
    await jsts(),
    await jstsAtTolerance(),
  ];
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
    const inputs = peers.map((peer) => peer.prepare(region));
    const rounds = Array.from({ length: ROUNDS }, () => {
      const axis = leastTime(() => medialAxis(region), 1);
      const measures = leastTime(() => allMeasures(axis.result), 1);
      const again = leastTime(() => openedArea(axis.result, RADIUS_MM * 1.1), 1);
      const theirs = peers.map((peer, k) => leastTime(() => peer.run(inputs[k], RADIUS_MM), 1).ms);
      return { axisMs: axis.ms, measuresMs: measures.ms, againMs: again.ms, theirs };
    });
    const row = {
      name,
      edges: region.coords.length / 2,
      axisMs: rounds.map(({ axisMs }) => axisMs),
      measuresMs: rounds.map(({ measuresMs }) => measuresMs),
      againMs: rounds.map(({ againMs }) => againMs),
      theirs: Object.fromEntries(peers.map((peer, k) => [peer.name, rounds.map(({ theirs }) => theirs[k])])),
      anchorMs: anchor?.time(region, ROUNDS),
    };
    console.error(JSON.stringify(row));
    return row;
  });
  anchor?.close();
  return rows;
}
