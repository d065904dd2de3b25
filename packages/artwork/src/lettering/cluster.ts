/** One glyph at its place in its cluster, in ems, y up. */
export interface PlacedGlyph {
  readonly glyph: number;
  readonly x: number;
  readonly y: number;
}

/** Glyphs that belong together: a letter with its marks, or a ligature. */
export interface Cluster {
  /** UTF-16 index of its first character in the line, and of the character after its last. */
  readonly start: number;
  readonly end: number;
  /** ISO 15924 tag, `Zyyy` when shared by all. */
  readonly script: string;
  readonly rightToLeft: boolean;
  /** Distance to the next cluster's origin in ems, kerning included. */
  readonly advance: number;
  readonly glyphs: readonly PlacedGlyph[];
  /** Whether it holds a mark for which the font gives no place on its letter. */
  readonly looseMark: boolean;
}
