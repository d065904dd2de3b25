/** What is to be vetted, as it came in. `key` tells one source from the next, so that the worker reads each only once. */
export type ArtworkSource =
  | { readonly kind: 'file'; readonly key: number; readonly name: string; readonly bytes: Uint8Array }
  | {
      readonly kind: 'lettering';
      readonly key: number;
      readonly name: string;
      readonly text: string;
      readonly font: Uint8Array;
    };
