/** A file in memory. */
export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What is to be vetted, as it came in. `key` tells one source from the next, so that the worker reads each only once. */
export type ArtworkSource =
  | {
      readonly kind: 'file';
      readonly key: number;
      readonly name: string;
      readonly bytes: Uint8Array;
      /** For live text in the drawing. */
      readonly font: NamedBytes | null;
    }
  | {
      readonly kind: 'lettering';
      readonly key: number;
      readonly name: string;
      readonly text: string;
      /** `null` for letters of single strokes. */
      readonly font: NamedBytes | null;
    };

/** Artwork without the key that the page gives it. */
export type NewSource = ArtworkSource extends infer S
  ? S extends ArtworkSource
    ? Omit<S, 'key'>
    : never
  : never;
