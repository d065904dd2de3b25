/** What the picture shows: the cut with where colour may run, or what levelling leaves of the strokes. */
export type Layer = 'cut' | 'levelling';
