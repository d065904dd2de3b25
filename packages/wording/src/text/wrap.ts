import { keepUnits } from '@pourproof/plane';

/**
 * Breaks words into lines of at most `columns` characters; a longer word stands alone, and a number stays
 * with its unit.
 *
 * @param first what the first line starts with; the others are indented as far
 */
export function wrap(words: string, columns: number, first = ''): string[] {
  const indent = ' '.repeat([...first].length);
  const lines: string[] = [];
  let line = first;
  let isEmpty = true;
  const glued = keepUnits(words);
  for (const word of glued.split(/[ \t\n]+/u).filter((each) => each !== '')) {
    if (!isEmpty && [...line].length + 1 + [...word].length > columns) {
      lines.push(line);
      line = indent;
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  lines.push(line);
  return lines.map((each) => each.replaceAll('\u00a0', ' ').trimEnd());
}
