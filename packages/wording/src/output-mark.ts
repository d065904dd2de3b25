/**
 * Stands near the start of every sheet, overlay and file of artwork, so that a program can tell its own files before it
 * replaces one.
 */
export const OUTPUT_MARK = 'pourproof-output';
