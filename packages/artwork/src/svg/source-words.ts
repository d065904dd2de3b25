import { elementName, type SvgElement } from './svg-element.ts';

/**
 * Elements in words with their line, as shapes carry them: `path#wing, line 12`. Elements that would be
 * called the same share one string.
 */
export class SourceWords {
  /** Of each name the last line and its words: elements of one line follow one another. */
  readonly #last = new Map<string, { line: number; words: string }>();

  of(element: SvgElement): string {
    const { line } = element;
    if (element.attributes.has('id')) {
      return `${elementName(element)}, line ${line}`;
    }
    const last = this.#last.get(element.name);
    if (last?.line === line) {
      return last.words;
    }
    const words = `${element.name}, line ${line}`;
    this.#last.set(element.name, { line, words });
    return words;
  }
}
