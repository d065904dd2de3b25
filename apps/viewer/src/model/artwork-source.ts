import { type Source, sourceName } from 'pourproof';

/** A file in memory. */
export interface NamedBytes {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What is to be vetted, with the names that the page shows and saves. */
export type ArtworkSource =
  | {
      readonly kind: 'file';
      readonly name: string;
      readonly bytes: Uint8Array;
      /** For live text in the drawing. */
      readonly font: NamedBytes | null;
    }
  | {
      readonly kind: 'lettering';
      readonly name: string;
      readonly text: string;
      /** `null` for letters of single strokes. */
      readonly font: NamedBytes | null;
    };

/** Words as artwork, under the name that a report gives them. */
export function letteringSource(text: string, font: NamedBytes | null): ArtworkSource {
  const source: Source = { kind: 'lettering', text, font: font?.bytes ?? null };
  return { ...source, name: sourceName(source), font };
}

/** The same as the worker takes it. */
export function bareSource(source: ArtworkSource): Source {
  const font = source.font?.bytes ?? null;
  return source.kind === 'file'
    ? { kind: 'file', name: source.name, bytes: source.bytes, font }
    : { kind: 'lettering', text: source.text, font };
}

/** Whether two sources are the same artwork under the same name. */
export function isSameArtwork(a: ArtworkSource, b: ArtworkSource): boolean {
  const isSameContent =
    a.kind === 'file'
      ? b.kind === 'file' && a.bytes === b.bytes
      : b.kind === 'lettering' && a.text === b.text;
  return isSameContent && a.name === b.name && a.font?.bytes === b.font?.bytes;
}
