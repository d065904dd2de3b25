import type { Lab } from './colour-difference.ts';
import type { CutterSize } from './cutter.ts';
import type { MixRatio } from './resin.ts';
import type { SealCurePoint } from './sealer.ts';

/**
 * What a maker may say of a wood; what is left out keeps its default. A new id needs `like`, the id it starts
 * from.
 */
export interface WoodEntry {
  readonly like?: string;
  readonly name?: string;
  readonly botanical?: string;
  readonly lab?: Lab;
  /** Median streak length in mm in the unsealed wood, from the maker's own tests. */
  readonly bleedPriorMm?: number;
  readonly heartFactor?: number;
  readonly sapFactor?: number;
  readonly oily?: boolean;
}

/** What a maker may say of a sealer. */
export interface SealerEntry {
  readonly like?: string;
  readonly name?: string;
  /** Travel left by hours of cure, hours rising. */
  readonly curve?: readonly SealCurePoint[];
  /** Solids by volume, 0 to 1. */
  readonly solids?: number;
  readonly densityGPerMl?: number;
  readonly wetFilmMm?: number;
  readonly readyHours?: number;
}

/** What the label of a resin says. */
export interface ResinEntry {
  readonly like?: string;
  readonly name?: string;
  readonly viscosityPaS?: number;
  readonly potLifeMin?: number;
  readonly gelMin?: number;
  readonly hardHours?: number;
  readonly fullCureDays?: number;
  readonly ratioByVolume?: MixRatio;
  readonly ratioByWeight?: MixRatio;
  readonly ratioTolerancePct?: number;
  readonly densityAGPerMl?: number;
  readonly densityBGPerMl?: number;
  readonly densityMixedGPerMl?: number;
  readonly deepestPourMm?: number;
  readonly largestMixG?: number;
  readonly minTempC?: number;
  readonly maxTempC?: number;
  readonly shrinkagePct?: number;
}

/** A scale in the shop. */
export interface ScaleEntry {
  readonly name: string;
  readonly resolutionG: number;
  readonly capacityG?: number;
}

/**
 * The maker's own materials: `materials.json` beside the job, units in the names, as class defaults have
 * them.
 */
export interface MaterialsOverrides {
  readonly woods?: Readonly<Record<string, WoodEntry>>;
  readonly sealers?: Readonly<Record<string, SealerEntry>>;
  readonly resins?: Readonly<Record<string, ResinEntry>>;
  readonly scales?: Readonly<Record<string, ScaleEntry>>;
  /** The cutters at hand: they replace the sizes in common use. */
  readonly cutters?: readonly CutterSize[];
}
