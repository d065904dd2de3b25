import type { Point } from './point.ts';
import type { TextInUnits } from './text-in-units.ts';

/** Where in a file or on the artwork a notice belongs; each part is present where it is known. */
export interface NoticePlace {
  /** Place on the artwork in mm (x right, y down). */
  readonly atMm?: Point;
  /** Line of the file, from 1. */
  readonly line?: number;
  /** Column of the file, from 1. */
  readonly column?: number;
  /** The element or entity, in words: `path#name`, `LWPOLYLINE handle 2F on layer ENGRAVE`. */
  readonly element?: string;
  /** Key of the setting of a job that it is about. */
  readonly setting?: string;
  /** Size of the gap that is open here, or was closed, mm. */
  readonly gapMm?: number;
}

/** Parameters of a notice by name. */
export type NoticeParams = Readonly<Record<string, string | number | readonly string[] | readonly number[]>>;

/**
 * How the artwork differs from the drawing: something drawn is not in it, its size or unit was guessed, or something is in it
 * otherwise than drawn.
 */
export type NoticeEffect = 'left-out' | 'assumed' | 'changed';

/**
 * What a reader did, or could not do, with part of a file. Nothing is skipped, closed, merged or scaled
 * without a notice.
 */
export interface Notice {
  /** Stable kebab-case id; all ids are listed in docs/unsupported.md. */
  readonly code: string;
  /** What `text` is made of, for programs: counts, names, and measures whose names bear their unit. */
  readonly params?: NoticeParams;
  /** One or two sentences: what, and what to do. */
  readonly text: TextInUnits;
  /** The places; several of one kind share one notice. */
  readonly where: readonly NoticePlace[];
  /** `caution`: the result may not be what the maker meant; `note`: for information. */
  readonly severity: 'caution' | 'note';
  /**
   * Set where the artwork that is vetted is not the drawing as drawn; such a notice is a caution. It stands right under the
   * verdict, which holds for the artwork alone.
   */
  readonly effect?: NoticeEffect;
}
