const NUMBER_UNIT = /(\d)[ ](mm²|mm|in²|in|ml|fl oz|g|h|%|°)(?![\p{L}\d])/gu;

/**
 * Breaks words into lines of at most `columns` characters; a longer word stands alone, and a number stays with its unit.
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

/** The text with no-break spaces between numbers and their units, which belong on one line. */
export function keepUnits(text: string): string {
  return text.replace(
    NUMBER_UNIT,
    (_, digit: string, unit: string) => `${digit}\u00a0${unit.replace(' ', '\u00a0')}`,
  );
}
