/**
 * Stands near the start of every sheet and overlay, so that a program can tell its own files before it
 * replaces one.
 */
export const OUTPUT_MARK = 'pourproof-output';
