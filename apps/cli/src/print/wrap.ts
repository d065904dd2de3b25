/**
 * Breaks words into lines of at most `columns` characters; a longer word stands alone.
 *
 * @param first what the first line starts with; the others are indented as far
 */
export function wrap(words: string, columns: number, first = ''): string[] {
  const indent = ' '.repeat([...first].length);
  const lines: string[] = [];
  let line = first;
  let isEmpty = true;
  for (const word of words.split(/\s+/u).filter((each) => each !== '')) {
    if (!isEmpty && [...line].length + 1 + [...word].length > columns) {
      lines.push(line.trimEnd());
      line = indent;
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  lines.push(line.trimEnd());
  return lines;
}
