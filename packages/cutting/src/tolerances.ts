/**
 * Places into which a cutter's centre gets no farther than this, mm, count for nothing: too little to see
 * (our choice). Below twice the flattening tolerance, corners between the chords of a flattened curve would
 * count.
 */
export const UNSEEN_REACH_MM = 0.02;

/**
 * Length of cut, mm, that takes about as long as a retract with the move to the next run, at common feeds
 * (our choice): up to this, staying down is cheaper.
 */
export const RETRACT_EQUIVALENT_MM = 40;

/**
 * Default tolerance of outlines and paths with chords for curves, mm: a fifth of the flattening tolerance
 * (our choice).
 */
export const CHORD_TOLERANCE_MM = 0.001;
