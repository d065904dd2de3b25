import type { StoppedDiscs } from '../outline/level-crossings.ts';
import type { OpenArcs } from '../outline/open-arcs.ts';

/** Area, mm², that the discs at level crossings cover in the narrow parts that they close. */
export function sectorArea(crossings: StoppedDiscs, arcs: OpenArcs): number {
  const { radius, sweep } = crossings;
  let sum = 0;
  for (let k = 0; k < sweep.length; k++) {
    sum += arcs.isTrimmed[k] === 0 ? (radius * radius * sweep[k]) / 2 : 0;
  }
  return sum + trimmedArea(crossings, arcs);
}

/**
 * The same where discs overlap: twice the area is the integral of x·dy − y·dx along the radii and the open
 * arcs.
 */
function trimmedArea(crossings: StoppedDiscs, arcs: OpenArcs): number {
  const { radius: r, x, y, angle, sweep, closes } = crossings;
  const originOf = new Map<number, number>();
  let sum = 0;
  for (let k = 0; k < sweep.length; k++) {
    if (arcs.isTrimmed[k] === 0) {
      continue;
    }
    // relative to one crossing of the same narrow part, so that no large terms cancel
    const o = originOf.get(closes[k]) ?? k;
    originOf.set(closes[k], o);
    const cx = x[k] - x[o];
    const cy = y[k] - y[o];
    const end = angle[k] + sweep[k];
    sum += r * (cx * (Math.sin(angle[k]) - Math.sin(end)) - cy * (Math.cos(angle[k]) - Math.cos(end)));
    for (let a = arcs.first[k]; a < arcs.first[k + 1]; a++) {
      const from = angle[k] + arcs.from[a];
      const to = angle[k] + arcs.to[a];
      sum +=
        r * (cx * (Math.sin(to) - Math.sin(from)) - cy * (Math.cos(to) - Math.cos(from)) + r * (to - from));
    }
  }
  return sum / 2;
}
