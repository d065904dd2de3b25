import { type JobInput, SETTINGS, type SettingKey } from '@pourproof/job';
import type { Varied } from './row.ts';

/** Every choice of one value for each setting, the last setting changing fastest. */
export function rowsOf(vary: Varied): readonly JobInput[] {
  return entriesOf(vary).reduce<readonly JobInput[]>(
    (rows, [key, values]) => rows.flatMap((row) => values.map((value) => ({ ...row, [key]: value }))),
    [{}],
  );
}

/** How many rows that makes, without making them. */
export function countOf(vary: Varied): number {
  return entriesOf(vary).reduce((product, [, values]) => product * values.length, 1);
}

/**
 * Indices of rows in an order in which neighbours share most of a proof: what changes the reading of the artwork changes last, then bits
 * and depths, then the board, then seal and resin.
 */
export function byCost(vary: Varied): readonly number[] {
  const sizes = entriesOf(vary).map(([key, values]) => ({ key, size: values.length }));
  const places = sizes.map((_, k) => sizes.slice(k + 1).reduce((product, { size }) => product * size, 1));
  const order = sizes.map((_, k) => k).toSorted((a, b) => costOf(sizes[a]?.key) - costOf(sizes[b]?.key));
  const digit = (row: number, k: number): number =>
    Math.floor(row / (places[k] ?? 1)) % (sizes[k]?.size ?? 1);
  return Array.from({ length: countOf(vary) }, (_, k) => k).toSorted((a, b) => {
    const first = order.find((k) => digit(a, k) !== digit(b, k));
    return first === undefined ? 0 : digit(a, first) - digit(b, first);
  });
}

function entriesOf(vary: Varied): readonly (readonly [string, readonly unknown[]])[] {
  return Object.entries(vary).filter(([, values]) => values !== undefined && values.length > 0);
}

const CUT: ReadonlySet<string> = new Set<SettingKey>(['rounds', 'bit', 'depth']);
const BOARD: ReadonlySet<string> = new Set<SettingKey>(['wood', 'grain', 'dive']);

/** The less, the more of a proof is made anew when the setting changes (docs/method/stages.md). */
function costOf(key = ''): number {
  const group = SETTINGS[key as SettingKey]?.group;
  if (group === 'lettering' || group === 'size' || group === 'outlines' || group === 'reading') {
    return 0;
  }
  if (CUT.has(key)) {
    return 1;
  }
  if (group === 'board' || BOARD.has(key)) {
    return 2;
  }
  return group === 'seal' || key === 'seal' || group === 'resin' || group === 'shop' ? 3 : 4;
}
