import {
  type MedialAxis,
  type NarrowStretch,
  narrowStretches,
  type SeparatePart,
  type StrokeLine,
  separateParts,
  strokeLines,
} from '@pourproof/geometry';

/** Widths whose narrow stretches are kept of an axis: the checks of one job ask for about as many (our choice). */
const KEPT_WIDTHS = 8;

/** What several checks ask of an axis, kept as long as the axis is. */
interface OfAxis {
  lines?: readonly StrokeLine[];
  parts?: readonly SeparatePart[];
  readonly narrower: Map<number, readonly NarrowStretch[]>;
}

const known = new WeakMap<MedialAxis, OfAxis>();

/** The strokes of an axis as lines. */
export function linesOf(axis: MedialAxis): readonly StrokeLine[] {
  const kept = keptOf(axis);
  kept.lines ??= strokeLines(axis);
  return kept.lines;
}

/** The separate parts of an artwork, by its axis. */
export function partsOf(axis: MedialAxis): readonly SeparatePart[] {
  const kept = keptOf(axis);
  kept.parts ??= separateParts(axis);
  return kept.parts;
}

/** Stretches of stroke narrower than a width in mm. */
export function narrowerOf(axis: MedialAxis, widthMm: number): readonly NarrowStretch[] {
  const { narrower } = keptOf(axis);
  const stretches = narrower.get(widthMm) ?? narrowStretches(axis, widthMm);
  // the one asked for last comes last
  narrower.delete(widthMm);
  narrower.set(widthMm, stretches);
  const [oldest] = narrower.keys();
  if (narrower.size > KEPT_WIDTHS && oldest !== undefined) {
    narrower.delete(oldest);
  }
  return stretches;
}

function keptOf(axis: MedialAxis): OfAxis {
  const kept = known.get(axis) ?? { narrower: new Map() };
  known.set(axis, kept);
  return kept;
}
