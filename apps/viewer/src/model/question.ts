import type { JobFile } from '@pourproof/job';
import type { MaterialsBook } from '@pourproof/materials';
import type { Proof } from '@pourproof/proof';
import type { ArtworkSource } from './artwork-source.ts';

/** What the page asks its worker. */
export interface Question {
  readonly id: number;
  readonly source: ArtworkSource;
  readonly job: Partial<JobFile>;
  readonly materials: MaterialsBook;
}

/** Why there is no proof: what is wrong, where in the file, and what to do about it; `''` where that is not known. */
export interface Failure {
  readonly what: string;
  readonly where: string;
  readonly remedy: string;
}

/** What the worker answers, under the id of the question. */
export type Answer =
  | { readonly id: number; readonly kind: 'proof'; readonly proof: Proof }
  | { readonly id: number; readonly kind: 'failure'; readonly failure: Failure };
