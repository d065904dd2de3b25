/** What is vetted: a drawing's file, or words set in a font. `bytes` are the files as they are. */
export type Source =
  | {
      readonly kind: 'file';
      /** Its name, for the report and for messages. */
      readonly name: string;
      readonly bytes: Uint8Array;
      /** A font for live text in the drawing. */
      readonly font?: Uint8Array | null;
    }
  | {
      readonly kind: 'lettering';
      /** The words; lines end at a line break, or at `\n` as it is typed on a command line. */
      readonly text: string;
      /** `null` for letters of single strokes, which the job asks for as `singleLine`. */
      readonly font: Uint8Array | null;
    };

/** What a report calls a source: the file's name, or the words with a stroke between their lines. */
export function sourceName(source: Source): string {
  if (source.kind === 'file') {
    return source.name;
  }
  const lines = wordsOf(source.text)
    .split('\n')
    .map((line) => line.replaceAll(/\s+/gu, ' ').trim());
  return lines.filter((line) => line !== '').join(' / ');
}

/** The words with their line breaks, however those were typed. */
export function wordsOf(text: string): string {
  return text.replaceAll('\\n', '\n');
}

/** Whether two sources are the same, byte for byte. */
export function isSameSource(a: Source, b: Source): boolean {
  if (!areSameBytes(a.font ?? null, b.font ?? null)) {
    return false;
  }
  return a.kind === 'file'
    ? b.kind === 'file' && a.name === b.name && areSameBytes(a.bytes, b.bytes)
    : b.kind === 'lettering' && a.text === b.text;
}

function areSameBytes(a: Uint8Array | null, b: Uint8Array | null): boolean {
  if (a === null || b === null || a === b) {
    return a === b;
  }
  return a.length === b.length && a.every((byte, k) => byte === b[k]);
}
