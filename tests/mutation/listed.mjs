// The list of survivors in docs/method/mutation.md: which mutants it names, and rows for it.
import { readFileSync } from 'node:fs';

const PAGE = 'docs/method/mutation.md';

/** Longest text of a source in a cell. */
const CELL = 90;

/** Text of a source as a cell of the page shows it, where a long one ends with an ellipsis. */
const shown = (text) => text.replaceAll(/\s+/gu, ' ').replaceAll('|', '\\|');

/** A row of the list, its judgement still to be written. */
export function rowOf({ fileName, original, replacement }) {
  const cell = (text) => {
    const flat = text.replaceAll(/\s+/gu, ' ');
    return shown(flat.length > CELL ? `${flat.slice(0, CELL - 1)}…` : flat);
  };
  return `| ${fileName.replace(/^packages\/|\/src(?=\/)/gu, '')} | \`${cell(original)}\` | \`${cell(replacement)}\` | |`;
}

/** Those of the mutants that have a row in the page's lists and are not judged equivalent there. */
export function listedOnPage(mutants) {
  const rows = readFileSync(PAGE, 'utf8')
    .split('\n')
    .map((line) => line.split(/(?<!\\)\|/u).map((cell) => cell.trim()))
    .filter(({ length }) => length === 6)
    .map(([, file, original, replacement, judgement]) => ({
      fileName: `packages/${file.replace('/', '/src/')}`,
      original: original.slice(1, -1),
      replacement: replacement.slice(1, -1),
      judgement,
    }))
    .filter(({ judgement }) => !judgement.startsWith('equivalent'));
  return mutants.filter((mutant) =>
    rows.some(
      (row) =>
        row.fileName === mutant.fileName &&
        isShownAs(mutant.original, row.original) &&
        isShownAs(mutant.replacement, row.replacement),
    ),
  );
}

function isShownAs(text, cell) {
  return cell.endsWith('…') ? shown(text).startsWith(cell.slice(0, -1)) : shown(text) === cell;
}
