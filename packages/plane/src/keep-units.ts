const NUMBER_UNIT = /(\d)[ ](mm²|mm|in²|in|ml|fl oz|g|h|min|%|°)(?![\p{L}\d])/gu;

/** The text with no-break spaces between numbers and their units, which belong on one line. */
export function keepUnits(text: string): string {
  return text.replace(
    NUMBER_UNIT,
    (_, digit: string, unit: string) => `${digit}\u00a0${unit.replace(' ', '\u00a0')}`,
  );
}
