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
}

/** The materials that ship with pourproof: species averages, class defaults and priors. */
export const defaultMaterials: MaterialsBook = {
  woods,
  sealers,
  resins,
  scales,
  cutters: cutterSizes,
};
