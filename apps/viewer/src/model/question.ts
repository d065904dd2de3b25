import type { FaultBundle, JobInput, Refusal, Source, VetOptions, Vetted } from 'pourproof';
import type { PackedReport } from './packed-report.ts';
import type { SheetPicture } from './sheet-picture.ts';
import type { WorkPart } from './work-part.ts';

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

/** What the page tells its worker: a question, or that nobody waits for the answer to one any more. */
export type Posted =
  | { readonly kind: 'ask'; readonly question: Question }
  | { readonly kind: 'stop'; readonly id: number };

/** What the worker is at, or how it ended without a proof. */
type Word =
  | { readonly id: number; readonly kind: 'working'; readonly at: WorkPart }
  | { readonly id: number; readonly kind: 'stopped' }
  | { readonly id: number; readonly kind: 'refused'; readonly refusal: Refusal }
  | {
      readonly id: number;
      readonly kind: 'fault';
      readonly message: string;
      /** What replays it, where it showed in a proof. */
      readonly bundle?: FaultBundle;
    };

/**
 * What the worker answers, under the id of the question: what it is at; the verdict with its findings, while their ways out are still
 * tried; and one of the others at the end.
 */
export type Answer =
  | Word
  | { readonly id: number; readonly kind: 'judged'; readonly vetted: PageVetted }
  /** The whole proof; what was judged of it had its picture. */
  | { readonly id: number; readonly kind: 'vetted'; readonly report: PageVetted['report'] };

/** An answer on its way to the page. */
export type PackedAnswer =
  | Word
  | {
      readonly id: number;
      readonly kind: 'judged';
      readonly vetted: Pick<PageVetted, 'job' | 'picture'> & { readonly report: PackedReport };
    }
  | { readonly id: number; readonly kind: 'vetted'; readonly report: PackedReport };
