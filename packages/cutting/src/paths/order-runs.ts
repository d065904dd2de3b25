import { inGrains, pollStep, TIE_GRAIN_MM } from '@pourproof/plane';

/** Which runs should follow each other if they can. */
export interface Preference {
  /** Whether run b can follow run a without a retract. */
  readonly isReachable: (a: number, b: number) => boolean;
  /** Greatest distance from the end of a to the start of b, mm. */
  readonly limit: number;
}

/**
 * Candidates tried for a preferred run before giving up: beyond so many, one is rarely found (our choice).
 */
const TRIES = 24;

/**
 * Nearest-neighbour order of runs from the first one on: next comes the nearest that is preferred after the
 * current one, else the one whose start is nearest to its end. Near-linear time for evenly spread starts, on
 * a grid that is rebuilt whenever half of the runs are done.
 *
 * @param starts `[x, y, …]` of each run's start, mm
 * @param ends `[x, y, …]` of each run's end, mm
 */
export function orderRuns(
  starts: ArrayLike<number>,
  ends: ArrayLike<number>,
  preference?: Preference,
): number[] {
  const count = starts.length / 2;
  const order: number[] = [];
  if (count === 0) {
    return order;
  }
  let left = Array.from({ length: count }, (_, k) => k);
  let current = 0;
  const isDone = new Uint8Array(count);
  const take = (k: number): void => {
    isDone[k] = 1;
    order.push(k);
    current = k;
  };
  take(0);
  while (order.length < count) {
    pollStep();
    left = left.filter((k) => isDone[k] === 0);
    const grid = gridOf(left, starts);
    for (let n = Math.ceil(left.length / 2); n > 0; n--) {
      const at = [ends[2 * current], ends[2 * current + 1]] as const;
      const preferred =
        preference === undefined
          ? undefined
          : nearest(grid, starts, at, {
              limit: preference.limit,
              tries: TRIES,
              isGood: (run) => preference.isReachable(current, run),
            });
      const found =
        preferred ?? nearest(grid, starts, at, { limit: Infinity, tries: Infinity, isGood: () => true });
      if (found !== undefined) {
        found.cell.splice(found.cell.indexOf(found.run), 1);
        take(found.run);
      }
    }
  }
  return order;
}

interface Grid {
  readonly minX: number;
  readonly minY: number;
  readonly size: number;
  readonly columns: number;
  readonly rows: number;
  readonly cells: number[][];
}

/** A grid of the runs by their starts, about one to a cell. */
function gridOf(runs: readonly number[], starts: ArrayLike<number>): Grid {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const k of runs) {
    pollStep();
    minX = Math.min(minX, starts[2 * k]);
    maxX = Math.max(maxX, starts[2 * k]);
    minY = Math.min(minY, starts[2 * k + 1]);
    maxY = Math.max(maxY, starts[2 * k + 1]);
  }
  const width = maxX - minX;
  const height = maxY - minY;
  // starts in one long row get no more cells than there are runs
  const size =
    Math.max(Math.sqrt((width * height) / runs.length), Math.max(width, height) / runs.length) || 1;
  const columns = Math.floor(width / size) + 1;
  const rows = Math.floor(height / size) + 1;
  const cells: number[][] = Array.from({ length: columns * rows }, () => []);
  for (const k of runs) {
    pollStep();
    const column = Math.floor((starts[2 * k] - minX) / size);
    const row = Math.floor((starts[2 * k + 1] - minY) / size);
    cells[row * columns + column].push(k);
  }
  return { minX, minY, size, columns, rows, cells };
}

interface Search {
  readonly limit: number;
  /** Greatest number of candidates that may be refused. */
  readonly tries: number;
  readonly isGood: (run: number) => boolean;
}

/** The good run that starts nearest to a point, within the limit, and the cell that contains it. */
function nearest(
  grid: Grid,
  starts: ArrayLike<number>,
  [px, py]: readonly [number, number],
  { limit, tries, isGood }: Search,
): { run: number; cell: number[] } | undefined {
  const { minX, minY, size, columns, rows, cells } = grid;
  const column = Math.min(Math.max(Math.floor((px - minX) / size), 0), columns - 1);
  const row = Math.min(Math.max(Math.floor((py - minY) / size), 0), rows - 1);
  // distance from the point to its cell, to know when a ring of cells is too far away
  const away = Math.hypot(
    Math.max(minX + column * size - px, px - minX - (column + 1) * size, 0),
    Math.max(minY + row * size - py, py - minY - (row + 1) * size, 0),
  );
  let best: { run: number; cell: number[] } | undefined;
  let least = limit;
  let refused = 0;
  const look = (c: number, r: number): void => {
    if (c < 0 || r < 0 || c >= columns || r >= rows) {
      return;
    }
    const cell = cells[r * columns + c];
    for (const run of cell) {
      pollStep();
      const d = TIE_GRAIN_MM * inGrains(Math.hypot(starts[2 * run] - px, starts[2 * run + 1] - py));
      if (d > least || (best !== undefined && d === least) || refused >= tries) {
        continue;
      }
      if (isGood(run)) {
        least = d;
        best = { run, cell };
      } else {
        refused++;
      }
    }
  };
  const farthest = columns + rows;
  for (let reach = 0; reach <= farthest && (reach - 1) * size - away <= least; reach++) {
    for (let c = column - reach; c <= column + reach; c++) {
      look(c, row - reach);
      if (reach > 0) {
        look(c, row + reach);
      }
    }
    for (let r = row - reach + 1; r < row + reach; r++) {
      look(column - reach, r);
      look(column + reach, r);
    }
  }
  return best;
}
