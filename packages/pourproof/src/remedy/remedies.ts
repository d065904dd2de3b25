import type { JobInput } from '@pourproof/job';
import type { FindingCode, Report } from '@pourproof/proof';

/** What a remedy may change. */
export type RemedyPart =
  | 'bit'
  | 'stroke'
  | 'size'
  | 'weight'
  | 'tips'
  | 'corners'
  | 'walls'
  | 'spacing'
  | 'depth'
  | 'levelling'
  | 'seal'
  | 'resin'
  | 'turn'
  | 'place'
  | 'rounds'
  | 'board'
  | 'scale'
  | 'reading';

/** All parts, those that change the look of the work least first. */
export const REMEDY_PARTS: readonly RemedyPart[] = [
  'seal',
  'levelling',
  'depth',
  'bit',
  'resin',
  'scale',
  'turn',
  'place',
  'rounds',
  'spacing',
  'tips',
  'corners',
  'walls',
  'stroke',
  'size',
  'weight',
  'board',
  'reading',
];

/** One change of a job: the settings that differ, as they were given (absent where they were not) and as they are given now. */
export interface RemedyChange {
  readonly part: RemedyPart;
  readonly from: JobInput;
  readonly to: JobInput;
}

/** What a job costs and how it looks. */
export interface RemedyCosts {
  /** Cutting, with the changes of bits where a shop says how long they take. */
  readonly minutes: number;
  readonly massG: number;
  /** Mix, sealer and bits to buy, in the maker's money; `null` where no price is known. */
  readonly price: number | null;
  /** From the start of carving until the face may be levelled at the earliest, hours. */
  readonly hours: number;
}

/** How far the artwork as drawn differs from the one before, both laid on one middle. */
export interface LookChange {
  /** Area that is in one of them only, mm². */
  readonly areaMm2: number;
  /** What of that is carved now and was not before, and the other way round. */
  readonly addedMm2: number;
  readonly removedMm2: number;
  /** All of it as a share of the area before. */
  readonly share: number;
  /** Width and height. */
  readonly sizeMm: {
    readonly before: readonly [number, number];
    readonly after: readonly [number, number];
  };
  /** Farthest that a corner of one outline lies from the other, mm. */
  readonly shiftMm: number;
  /** Area of the smallest hole of a letter or shape before and after, mm²; `null` where there is none. */
  readonly smallestHoleMm2: { readonly before: number | null; readonly after: number | null };
}

/** A changed job without what it was to clear, as a full proof of it from scratch says. */
export interface Remedy {
  readonly changes: readonly RemedyChange[];
  /** The changed job. */
  readonly job: JobInput;
  readonly verdict: Report['verdict'];
  /** What of cautions and stops remains. */
  readonly remaining: readonly FindingCode[];
  readonly costs: RemedyCosts;
  readonly look: LookChange;
}

/** What can be done about a job. */
export interface Remedies {
  /** The job as it is. */
  readonly before: {
    readonly verdict: Report['verdict'];
    readonly open: readonly FindingCode[];
    /** What of that is to go. */
    readonly toClear: readonly FindingCode[];
    readonly costs: RemedyCosts;
  };
  /** None of them beaten by another in all costs; empty where there is nothing to clear, or nothing clears it. */
  readonly remedies: readonly Remedy[];
  /** Where nothing clears it: what is left at best, and how; else `null`. */
  readonly nearest: {
    readonly changes: readonly RemedyChange[];
    readonly binds: readonly FindingCode[];
  } | null;
  /** Jobs that were tried. */
  readonly tried: number;
  /** Whether all was tried, or the search was stopped by whoever follows it, or ended at its bound: then there may be better ways. */
  readonly ended: 'all-tried' | 'stopped' | 'at-its-bound';
}
