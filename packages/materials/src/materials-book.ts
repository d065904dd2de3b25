import type { Cited } from './cited.ts';
import { type CutterSize, cutterSizes } from './cutter.ts';
import { type Resin, resins } from './resin.ts';
import { type Sealer, sealers } from './sealer.ts';
import { type Scale, scales } from './smallest-batch.ts';
import { type Wood, woods } from './wood.ts';

/** All materials that a job may name, by id: those that ship with pourproof and the maker's own. */
export interface MaterialsBook {
  readonly woods: Readonly<Record<string, Wood>>;
  readonly sealers: Readonly<Record<string, Sealer>>;
  readonly resins: Readonly<Record<string, Resin>>;
  readonly scales: Readonly<Record<string, Scale>>;
  readonly cutters: Cited<readonly CutterSize[]>;
  /** Ids of what the maker has of these tables, the first to be taken first; absent where nobody said. */
  readonly atHand?: Readonly<Record<'sealers' | 'resins' | 'scales', readonly string[]>>;
}

/** Rows of a table with their ids: what the maker has at hand, then the others, each in its order. */
export function rowsAtHandFirst<Row>(
  rows: Readonly<Record<string, Row>>,
  atHand: readonly string[] = [],
): readonly (readonly [id: string, row: Row])[] {
  const all = Object.entries(rows);
  const first = atHand.flatMap((id) => all.filter(([each]) => each === id));
  return [...first, ...all.filter(([id]) => !atHand.includes(id))];
}

/** The materials that ship with pourproof: species averages, class defaults and priors. */
export const defaultMaterials: MaterialsBook = {
  woods,
  sealers,
  resins,
  scales,
  cutters: cutterSizes,
};
