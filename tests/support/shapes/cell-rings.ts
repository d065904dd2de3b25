/**
 * Outer rings and holes around the filled cells of a grid, the cell in column x and row y at (x, y), with every cell corner kept as a
 * point. Cells that meet in a corner only stay apart there.
 */
export function cellRings(cells: readonly (readonly boolean[])[]): [outers: number[][], holes: number[][]] {
  const size = cells.length;
  const cell = Array.from({ length: size + 2 }, (_, x) =>
    Array.from({ length: size + 2 }, (_, y) => cells[x - 1]?.[y - 1] ?? false),
  );
  const from = new Map<string, number[][]>();
  const add = (x: number, y: number, dx: number, dy: number): void => {
    const key = `${x},${y}`;
    from.set(key, [...(from.get(key) ?? []), [x, y, dx, dy]]);
  };
  for (let x = 1; x <= size; x++) {
    for (let y = 1; y <= size; y++) {
      if (cell[x][y]) {
        if (!cell[x][y - 1]) {
          add(x, y, 1, 0);
        }
        if (!cell[x + 1][y]) {
          add(x + 1, y, 0, 1);
        }
        if (!cell[x][y + 1]) {
          add(x + 1, y + 1, -1, 0);
        }
        if (!cell[x - 1][y]) {
          add(x, y + 1, 0, -1);
        }
      }
    }
  }
  const rings: number[][] = [];
  for (const list of from.values()) {
    for (let start = list[0]; start !== undefined; start = list[0]) {
      rings.push(walk(from, start));
    }
  }
  const outer = (ring: number[]): boolean => area(ring) > 0;
  return [rings.filter(outer), rings.filter((ring) => !outer(ring))];
}

/** Takes steps out of the map from a first one on, turning towards the inside where two ways are open, until it is closed. */
function walk(from: Map<string, number[][]>, start: number[]): number[] {
  const ring: number[] = [];
  let step = start;
  for (;;) {
    const [x, y, dx, dy] = step;
    const here = from.get(`${x},${y}`) ?? [];
    here.splice(here.indexOf(step), 1);
    ring.push(x, y);
    const ahead = from.get(`${x + dx},${y + dy}`) ?? [];
    const inward = (s: number[]): number => dx * s[3] - dy * s[2];
    const options = x + dx === start[0] && y + dy === start[1] ? [...ahead, start] : ahead;
    const next = options.reduce((best, s) => (inward(s) > inward(best) ? s : best));
    if (next === start) {
      return ring;
    }
    step = next;
  }
}

function area(ring: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    sum += ring[i] * ring[j + 1] - ring[j] * ring[i + 1];
  }
  return sum / 2;
}
