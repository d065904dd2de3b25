// Searches for regions on which the medial axis, or what a cutter of some radius leaves standing, takes longest an edge: random choices in parametrised families at 20,000 edges, the worst of
// each climbed further, and what is left asked again at 80,000.
// node packages/geometry/bench/find-worst.mjs [--seed 1] [--tries 40] [--climbs 30] [--small 20000] [--large 80000] [--measures] [--standing] [family…]
import { parseArgs } from 'node:util';
import { CrossingsError } from '@pourproof/arrangement';
import { leftStanding, medialAxis } from '@pourproof/geometry';
import { allMeasures, clearanceAt } from './all-measures.mjs';
import { dice } from './dice.mjs';
import { hardFamilies } from './hard-families.mjs';
import { leastTime } from './least-time.mjs';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seed: { type: 'string', default: '1' },
    tries: { type: 'string', default: '40' },
    climbs: { type: 'string', default: '30' },
    small: { type: 'string', default: '20000' },
    large: { type: 'string', default: '80000' },
    measures: { type: 'boolean', default: false },
    standing: { type: 'boolean', default: false },
  },
});
const [SMALL, LARGE] = [Number(values.small), Number(values.large)];
const random = dice(Number(values.seed));
const families = positionals.length > 0 ? positionals : Object.keys(hardFamilies);
warmUp();
for (const family of families) {
  const found = climb(family);
  for (const { choice, small } of found) {
    const large = microsecondsAnEdge(family, choice, LARGE);
    if (large === undefined) {
      continue;
    }
    const exponent = 1 + Math.log(large.us / small.us) / Math.log(large.edges / small.edges);
    console.log(
      JSON.stringify({
        family,
        us: [small.us, large.us].map((us) => Number(us.toFixed(2))),
        exponent: Number(exponent.toFixed(2)),
        choice,
      }),
    );
  }
}

function warmUp() {
  for (const family of Object.keys(hardFamilies)) {
    for (let k = 0; k < 3; k++) {
      microsecondsAnEdge(family, chosen(rangesOf(family)), 2000);
    }
  }
}

/** What may be chosen of a family; with what is left standing, also for how large a share of the axis the cutter is too wide. */
function rangesOf(family) {
  const { ranges } = hardFamilies[family];
  return values.standing ? { ...ranges, narrow: { from: 0.01, to: 0.9999, isLog: false } } : ranges;
}

/** The worst choices of a family, worst first. */
function climb(family) {
  const ranges = rangesOf(family);
  let list = [];
  const ask = (choice) => {
    const small = microsecondsAnEdge(family, choice, SMALL);
    if (small !== undefined) {
      list = [...list, { choice, small }].sort((a, b) => b.small.us - a.small.us).slice(0, 6);
    }
  };
  for (let k = 0; k < Number(values.tries); k++) {
    ask(chosen(ranges));
  }
  for (let k = 0; k < Number(values.climbs); k++) {
    const from = list[Math.floor(random() * Math.min(3, list.length))];
    ask(moved(from.choice, ranges, k % 3 === 0 ? 0.3 : 0.06));
  }
  return list.slice(0, 2);
}

/** Processor time an edge, µs; undefined for a choice that makes no region of that size. */
function microsecondsAnEdge(family, choice, count) {
  const region = made(family, count, choice);
  const edges = region === undefined ? 0 : region.coords.length / 2;
  if (edges < count / 2) {
    return undefined;
  }
  const run = values.standing ? standingOf(region, choice.narrow) : () => axisOf(region);
  return { edges, us: (1000 * leastTime(run, 2).ms) / edges };
}

/** Undefined for a choice whose outlines cross too often. */
function made(family, count, choice) {
  try {
    return hardFamilies[family].make(count, choice);
  } catch (error) {
    if (error instanceof CrossingsError) {
      return undefined;
    }
    throw error;
  }
}

function axisOf(region) {
  const axis = medialAxis(region);
  return values.measures ? allMeasures(axis) : axis;
}

/** Asks for what is left by a cutter that a share of the axis' nodes is too narrow for; the axis itself is not timed. */
function standingOf(region, share) {
  const axis = medialAxis(region);
  const radius = clearanceAt(axis, share);
  return () => leftStanding(axis, radius, 0.005);
}

function chosen(ranges) {
  return moved(undefined, ranges, 1);
}

/** A choice within `share` of each range around another, or anywhere. */
function moved(choice, ranges, share) {
  return Object.fromEntries(
    Object.entries(ranges).map(([name, range]) => {
      if (range.from === undefined) {
        return [name, moved(choice?.[name], range, share)];
      }
      const [low, high] = range.isLog ? [Math.log(range.from), Math.log(range.to)] : [range.from, range.to];
      const at = choice === undefined ? low : range.isLog ? Math.log(choice[name]) : choice[name];
      const to =
        choice === undefined ? low + random() * (high - low) : at + share * (high - low) * (2 * random() - 1);
      const held = Math.min(high, Math.max(low, to));
      return [name, range.isLog ? Math.exp(held) : held];
    }),
  );
}
