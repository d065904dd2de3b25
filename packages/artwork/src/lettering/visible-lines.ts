import { splitLines } from './lay-out-text.ts';

/** How many lines of a text have something to see: alignment and the distance of lines need two. */
export function visibleLines(text: string): number {
  return splitLines(text).filter((line) => line.trim() !== '').length;
}
