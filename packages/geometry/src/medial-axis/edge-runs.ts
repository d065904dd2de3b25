import type { Boundary } from './boundary.ts';

/** Edges in a run at most. */
export const RUN_EDGES = 4;

/** The edges of a boundary in runs of consecutive ones; no run reaches from one ring into the next. */
export interface EdgeRuns {
  readonly count: number;
  /** First edge of each run, and the edge after its last. */
  readonly from: Int32Array;
  readonly to: Int32Array;
}

/** The runs of a boundary, in the order of its edges; those of one ring are equally long but for one edge. */
export function edgeRuns({ count, next }: Boundary): EdgeRuns {
  let runs = 0;
  let start = 0;
  for (let i = 0; i < count; i++) {
    if (next[i] === start) {
      runs += Math.ceil((i + 1 - start) / RUN_EDGES);
      start = i + 1;
    }
  }
  const from = new Int32Array(runs);
  const to = new Int32Array(runs);
  let made = 0;
  start = 0;
  for (let i = 0; i < count; i++) {
    if (next[i] === start) {
      const size = i + 1 - start;
      const pieces = Math.ceil(size / RUN_EDGES);
      for (let k = 0; k < pieces; k++) {
        from[made] = start + Math.floor((k * size) / pieces);
        to[made++] = start + Math.floor(((k + 1) * size) / pieces);
      }
      start = i + 1;
    }
  }
  return { count: runs, from, to };
}
