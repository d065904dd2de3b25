/**
 * What tells a chord of a flattened curve from a drawn straight edge, by the outline alone: who flattens makes chords that are told so, and who
 * measures reads them.
 */

/**
 * A chord between two others of one curve is as high as its length times the turn at its ends over 8. Tolerance on that, as a multiple of
 * the flattening tolerance: neighbours may differ, and the curve ends where a chord of it meets a straight wall at half the turn.
 */
export const CHORD_HEIGHT_SLACK = 2;

/** Edges of a straight wall that are divided by points turn by rounding alone, radians. */
export const STRAIGHT_TURN_RAD = 1e-9;

/** Where the outline turns by more than this, radians, it has a corner: no curve is flattened so coarsely. */
export const CORNER_TURN_RAD: number = Math.PI / 3;

/**
 * Beside a chord an edge counts as one whatever its turns while it is shorter than this multiple of the flattening tolerance: the tips of hairpins.
 */
export const SHORT_CHORD_TOLERANCES = 2;
