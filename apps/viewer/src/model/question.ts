import type { FaultBundle, JobInput, Refusal, Source, VetOptions, Vetted } from 'pourproof';
import type { SheetPicture } from './sheet-picture.ts';

/** What the page asks its worker. */
export interface Question {
  readonly id: number;
  readonly source: Source;
  readonly job: JobInput;
  /** Materials and coupons of the maker's own. */
  readonly options: VetOptions;
}

/** What a worker hands to the page of a vetted job. */
export interface PageVetted extends Pick<Vetted, 'report' | 'job'> {
  readonly picture: SheetPicture;
}

/** What the worker answers, under the id of the question. */
export type Answer =
  | { readonly id: number; readonly kind: 'vetted'; readonly vetted: PageVetted }
  | { readonly id: number; readonly kind: 'refused'; readonly refusal: Refusal }
  | {
      readonly id: number;
      readonly kind: 'fault';
      readonly message: string;
      /** What replays it, where it showed in a proof. */
      readonly bundle?: FaultBundle;
    };
