import type { MaterialsBook } from '@pourproof/materials';
import type { JobFile, Refusal, Source, Vetted } from 'pourproof';

/** What the page asks its worker. */
export interface Question {
  readonly id: number;
  readonly source: Source;
  readonly job: Partial<JobFile>;
  readonly materials: MaterialsBook;
}

/** What the worker answers, under the id of the question. */
export type Answer =
  | { readonly id: number; readonly kind: 'vetted'; readonly vetted: Vetted }
  | { readonly id: number; readonly kind: 'refused'; readonly refusal: Refusal }
  | { readonly id: number; readonly kind: 'fault'; readonly message: string };
