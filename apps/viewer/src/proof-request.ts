import type { JobFile, Proof } from '@pourproof/proof';

/** Artwork as the maker gave it. */
export type Source =
  | {
      readonly kind: 'file';
      readonly name: string;
      readonly bytes: Uint8Array;
      readonly widthMm: number | null;
    }
  | {
      readonly kind: 'lettering';
      readonly text: string;
      readonly fontName: string;
      readonly font: Uint8Array;
      readonly capHeightMm: number;
    };

/** What the page asks of the worker. */
export interface ProofRequest {
  /** Counts up; answers to older requests are thrown away. */
  readonly id: number;
  readonly source: Source;
  readonly job: JobFile;
}

/** A message in three parts: what, where, what to do. */
export interface Trouble {
  readonly what: string;
  readonly where: string;
  readonly remedy: string;
}

/** What the worker answers. */
export type ProofAnswer =
  | { readonly id: number; readonly proof: Proof }
  | { readonly id: number; readonly trouble: Trouble };
