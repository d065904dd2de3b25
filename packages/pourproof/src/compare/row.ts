import type { JobInput, SettingKey } from '@pourproof/job';
import type { Picture, Report } from '@pourproof/proof';
import type { Refusal } from '../refusal.ts';
import type { Source } from '../source.ts';
import type { VetOptions } from '../vet.ts';

/** Values of settings that are compared, each as a job gives it; a setting that is left out stays as the job has it. */
export type Varied = { readonly [Key in SettingKey]?: readonly JobInput[Key][] };

/** What is compared: every source with every choice of one value for each setting. */
export interface Comparison {
  readonly sources: readonly Source[];
  /** What all rows have in common. */
  readonly job: JobInput;
  readonly vary: Varied;
  /** Shop, materials and coupons of the maker's own. */
  readonly options?: Pick<VetOptions, 'shop' | 'materials' | 'coupons'>;
}

/** What a row comes to, each figure as the report of `vet` has it. */
export interface Figures {
  readonly verdict: Report['verdict'];
  /** Findings that count, the gravest first. */
  readonly findings: readonly Pick<Report['findings'][number], 'code' | 'severity'>[];
  /** Length of stroke that is narrower than the smallest bit, mm. */
  readonly lostLengthMm: number;
  /** Length of stroke that levelling takes away, mm. */
  readonly levelledAwayMm: number;
  readonly leftStandingMm2: number;
  /** `null` where there is no stroke. */
  readonly narrowestMm: number | null;
  readonly minutes: number;
  /** To put in the bits; `null` where no shop says it. */
  readonly changeMinutes: number | null;
  /** Mix of all colours for all boards, g. */
  readonly massG: number;
  /** Of the mix, in the maker's money; `null` where no price is known. */
  readonly price: number | null;
  /** Colour travel in the wood where it runs farthest, mm; `null` where no wood is cut. */
  readonly travelMm: { readonly median: number; readonly low: number; readonly high: number } | null;
}

/** Shapes of a row to draw it small. */
export type RowPicture = Pick<Picture, 'artwork' | 'cut' | 'standing' | 'boundsMm'>;

/** What came of a row: figures, why it is refused, or a fault of pourproof. */
export type RowOutcome =
  | { readonly is: 'judged'; readonly figures: Figures; readonly picture?: RowPicture }
  | { readonly is: 'refused'; readonly refusal: Refusal }
  | { readonly is: 'fault'; readonly what: string };

/** A row of a comparison. */
export interface ComparedRow {
  /** Which of the sources, from 0. */
  readonly source: number;
  /** The values that it has of the settings compared. */
  readonly values: JobInput;
  readonly outcome: RowOutcome;
}

/** Rows of one source as they go to a thread. */
export interface PostedRows {
  readonly source: Source;
  readonly job: JobInput;
  readonly rows: readonly JobInput[];
  readonly options: NonNullable<Comparison['options']>;
  readonly names: Readonly<Record<string, string>>;
  readonly isPictured: boolean;
}
