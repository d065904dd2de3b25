import { pollStep } from '@pourproof/plane';
import type { StoppedDiscs } from './level-crossings.ts';
import { neighbouringDiscs } from './neighbouring-discs.ts';

/**
 * The parts of the arcs at level crossings that no other crossing of the same narrow part covers, crossing by
 * crossing, by rising angle. Angles are relative to the crossing's `angle`. Where an arc starts or ends on
 * another crossing's arc, `startBy` or `endBy` names that crossing; -1 is the wall.
 */
export interface OpenArcs {
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly startBy: Int32Array;
  readonly endBy: Int32Array;
  /** Index of the first arc of each crossing, with the total at the end. */
  readonly first: Int32Array;
  /** 1 for crossings whose arc is trimmed. */
  readonly isTrimmed: Uint8Array;
}

/**
 * Cuts from each arc what lies inside the disc of another crossing of the same narrow part: such discs
 * overlap at short bottlenecks.
 */
export function openArcs(crossings: StoppedDiscs): OpenArcs {
  const cover = coveredParts(crossings);
  const count = crossings.x.length;
  let most = count;
  for (const parts of cover.values()) {
    pollStep();
    most += parts.length;
  }
  const from = new Float64Array(most);
  const to = new Float64Array(most);
  const startBy = new Int32Array(most);
  const endBy = new Int32Array(most);
  const first = new Int32Array(count + 1);
  const isTrimmed = new Uint8Array(count);
  let made = 0;
  for (let k = 0; k < count; k++) {
    pollStep();
    first[k] = made;
    let at = 0;
    let by = -1;
    const parts = cover.get(k);
    if (parts !== undefined) {
      isTrimmed[k] = 1;
      for (const part of parts) {
        if (part.from >= at) {
          from[made] = at;
          to[made] = part.from;
          startBy[made] = by;
          endBy[made] = part.by;
          made++;
        }
        if (part.to > at) {
          at = part.to;
          by = part.by;
        }
      }
    }
    from[made] = at;
    to[made] = crossings.sweep[k];
    startBy[made] = by;
    endBy[made] = -1;
    made++;
  }
  first[count] = made;
  return {
    from: from.subarray(0, made),
    to: to.subarray(0, made),
    startBy: startBy.subarray(0, made),
    endBy: endBy.subarray(0, made),
    first,
    isTrimmed,
  };
}

interface Part {
  readonly from: number;
  readonly to: number;
  readonly by: number;
}

/** What other discs of the same narrow part cover of each arc, by rising angle. */
function coveredParts(crossings: StoppedDiscs): Map<number, Part[]> {
  const { x, y, closes } = crossings;
  const groups = new Map<number, number[]>();
  for (let k = 0; k < closes.length; k++) {
    pollStep();
    const c = closes[k];
    if (c === 0) {
      continue;
    }
    const group = groups.get(c);
    if (group === undefined) {
      groups.set(c, [k]);
    } else {
      group.push(k);
    }
  }
  const cover = new Map<number, Part[]>();
  for (const group of groups.values()) {
    group.sort((a, b) => x[a] - x[b]);
    const neighbours = neighbouringDiscs(
      group.map((k) => x[k]),
      group.map((k) => y[k]),
    );
    for (const [place, k] of group.entries()) {
      pollStep();
      const parts: Part[] = [];
      for (const l of neighbours[place]) {
        const j = group[l];
        const d = Math.sqrt((x[j] - x[k]) ** 2 + (y[j] - y[k]) ** 2);
        const middle = aheadOf(crossings, k, j);
        if (d > 0 && d < 2 * crossings.radius && middle > 0 && middle < crossings.sweep[k]) {
          const half = Math.acos(d / (2 * crossings.radius));
          const to = Math.min(crossings.sweep[k], middle + half);
          parts.push({ from: Math.max(0, middle - half), to, by: j });
        }
      }
      if (parts.length > 0) {
        parts.sort((a, b) => a.from - b.from);
        cover.set(k, parts);
      }
    }
  }
  return cover;
}

/** Angle, 0 … 2π, from the beginning of the arc of disc k on to the direction in which disc j lies. */
function aheadOf({ x, y, angle }: StoppedDiscs, k: number, j: number): number {
  const turn = 2 * Math.PI;
  return (((Math.atan2(y[j] - y[k], x[j] - x[k]) - angle[k]) % turn) + turn) % turn;
}
