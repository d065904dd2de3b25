import { escapeXml } from '../sheet/escape-xml.ts';

/** Rows of a text that the first page has room for, and a page of its own (our choice; that six colours and all else have room beside them on Letter is tested). */
const FIRST_ROWS = 2;
const PAGE_ROWS = 24;
/** Letters that a row of large letters holds whatever they are; longer lines run on (the widest, an em each, are tried in a test). */
const ROW_LETTERS = 24;
/** Texts are spelled letter by letter as long as that helps (our choice). */
const SPELLED_LETTERS = 60;

/** A text to be read aloud: on the first page, or, if it is long, on pages of its own. */
interface ReadBack {
  readonly first: string;
  readonly pages: readonly string[];
}

/**
 * What is lettered, line by line, in HTML.
 *
 * @param text `null` where the artwork is a drawing
 */
export function readBack(text: string | null): ReadBack {
  if (text === null) {
    const first =
      '<h2>Read it</h2><p>The artwork is a drawing of shapes: read its words on the next sheets, aloud, letter by letter.</p>';
    return { first, pages: [] };
  }
  // a line break, or as it is typed on a command line
  const lines = text.split(/\n|\\n/u);
  if (lines.reduce((sum, line) => sum + rowsOf(line), 0) <= FIRST_ROWS) {
    const isSpelled = [...text].length <= SPELLED_LETTERS;
    return {
      first: `<h2>Read it aloud</h2>${lines.map((line) => lineHtml(line, isSpelled)).join('')}`,
      pages: [],
    };
  }
  // a page of its own is full of rows
  const set = lines.map((line) => lineHtml(line, false));
  const pages = pagesOf(lines).map(
    ([from, to]) => `<h2>Read it aloud, line ${from + 1} to ${to}</h2>${set.slice(from, to).join('')}`,
  );
  const where = pages.length === 1 ? 'the next page' : `the next ${pages.length} pages`;
  return {
    first: `<h2>Read it aloud</h2><p>${lines.length} lines on ${where}.</p>`,
    pages,
  };
}

/** Which lines stand on which page; a line longer than a page has one to itself. */
function pagesOf(lines: readonly string[]): readonly (readonly [number, number])[] {
  const pages: [number, number][] = [];
  let rows = Infinity;
  for (const [k, line] of lines.entries()) {
    const last = pages.at(-1);
    if (last === undefined || rows + rowsOf(line) > PAGE_ROWS) {
      pages.push([k, k + 1]);
      rows = 0;
    } else {
      last[1] = k + 1;
    }
    rows += rowsOf(line);
  }
  return pages;
}

function rowsOf(line: string): number {
  return Math.max(1, Math.ceil([...line].length / ROW_LETTERS));
}

function lineHtml(line: string, isSpelled: boolean): string {
  const spelled = isSpelled
    ? `<p class="spelled"><bdi>${escapeXml(graphemes(line).map(shown).join(' '))}</bdi></p>`
    : '';
  return `<p class="read"><bdi>${line === '' ? '&nbsp;' : escapeXml(line)}</bdi></p>${spelled}`;
}

/** Letters as a reader counts them, with their marks (Unicode's grapheme clusters). */
function graphemes(line: string): readonly string[] {
  const segments = new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(line);
  return Array.from(segments, ({ segment }) => segment);
}

/** A space, which nobody sees, as the open box of Unicode. */
function shown(letter: string): string {
  return letter.trim() === '' ? '␣' : letter;
}
