import { type Cited, type CitedRange, cited, citedRange } from './cited.ts';

/** Id of a seal coat that ships with pourproof; `none` is bare wood. */
export type SealId = 'none' | 'sanding-sealer' | 'shellac' | 'epoxy';

/** Share of the unsealed travel that remains when the seal has cured for `hours` at 25 °C (one coat). */
export interface SealCurePoint {
  readonly hours: number;
  readonly factor: number;
}

/** A seal coat: what stops, or does not stop, colour at the pore mouths. */
export interface Sealer {
  readonly name: string;
  /**
   * Travel left by hours of cure, by rising hours; empty for bare wood. See `sealFactor` for the rule between
   * points.
   */
  readonly curve: Cited<readonly SealCurePoint[]>;
  /** Solids by volume, 0 to 1: what stays of the wet film. */
  readonly solids: Cited;
  /** Density of the liquid in g/ml, for the mass to prepare; 0 for bare wood. */
  readonly densityGPerMl: Cited;
  /** Wet film of one brushed coat in mm. */
  readonly wetFilmMm: CitedRange;
  /** Hours at 25 °C until the next coat or the pour may follow. */
  readonly readyHours: CitedRange;
  /** Coats that practice gives on end grain. */
  readonly coats: Cited;
  /** By reaction the hours follow the temperature; by drying they are taken as they stand. */
  readonly hardens: 'reaction' | 'drying';
  /**
   * Hours at 25 °C between which a further coat of the same chemistry bonds without sanding; `null` where
   * none does.
   */
  readonly tackyHours: CitedRange | null;
  /** Hours at 25 °C from which a coat is washed and abraded before resin holds on it; `null` where none has to be. */
  readonly abradeAfterHours: Cited | null;
}

/** Sealers by id. */
export const sealers: Readonly<Record<SealId, Sealer>> = {
  none: {
    name: 'no seal',
    curve: cited<readonly SealCurePoint[]>([], 'prior', 'own-prior'),
    solids: cited(0, 'computed', 'computed-here'),
    densityGPerMl: cited(0, 'computed', 'computed-here'),
    wetFilmMm: citedRange(0, [0, 0], 'computed', 'computed-here'),
    readyHours: citedRange(0, [0, 0], 'computed', 'computed-here'),
    coats: cited(0, 'computed', 'computed-here'),
    hardens: 'drying',
    tackyHours: null,
    abradeAfterHours: null,
  },
  'sanding-sealer': {
    name: 'sanding sealer',
    curve: cited([{ hours: 1, factor: 0.6 }], 'prior', 'own-prior', 'common-practice'),
    solids: cited(0.25, 'memory', 'from-memory'),
    densityGPerMl: cited(0.92, 'memory', 'from-memory'),
    wetFilmMm: citedRange(0.1, [0.05, 0.15], 'inference', 'own-inference'),
    readyHours: citedRange(2, [1, 2], 'memory', 'from-memory'),
    coats: cited(2, 'memory', 'from-memory'),
    hardens: 'drying',
    tackyHours: null,
    abradeAfterHours: null,
  },
  shellac: {
    name: 'shellac, 2 lb per US gallon',
    curve: cited([{ hours: 1, factor: 0.35 }], 'prior', 'own-prior', 'common-practice'),
    solids: cited(0.175, 'computed', 'computed-here', 'from-memory'),
    densityGPerMl: cited(0.849, 'computed', 'computed-here', 'from-memory'),
    wetFilmMm: citedRange(0.1, [0.05, 0.15], 'inference', 'own-inference'),
    readyHours: citedRange(1, [1, 2], 'memory', 'from-memory'),
    coats: cited(2, 'memory', 'from-memory'),
    hardens: 'drying',
    tackyHours: null,
    abradeAfterHours: null,
  },
  epoxy: {
    name: 'clear epoxy',
    curve: cited(
      [
        { hours: 1, factor: 0.18 },
        { hours: 2, factor: 0.18 },
        { hours: 24, factor: 0.02 },
      ],
      'prior',
      'own-prior',
      'common-practice',
    ),
    solids: cited(1, 'memory', 'resin-data-sheets'),
    densityGPerMl: cited(1.1, 'memory', 'resin-data-sheets'),
    wetFilmMm: citedRange(0.1, [0.05, 0.15], 'inference', 'own-inference'),
    readyHours: citedRange(24, [12, 24], 'memory', 'from-memory'),
    coats: cited(1, 'practice', 'common-practice'),
    hardens: 'reaction',
    tackyHours: citedRange(5, [2, 8], 'memory', 'recoat-pages', 'from-memory'),
    abradeAfterHours: cited(24, 'seen', 'recoat-pages'),
  },
};
