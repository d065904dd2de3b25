import { type LengthContext, parseLength, userUnits } from './css-length.ts';
import type { SvgElement } from './svg-element.ts';
import type { TextRun } from './text-runs.ts';

/** How a run is made longer or shorter to fit its element's `textLength`. */
export interface RunFit {
  /** Room after each letter, in user units. */
  readonly gap: number;
  /** Factor on the letters along the line. */
  readonly factor: number;
  /** Room to take back after the run: there is none after an element's last letter. */
  readonly surplus: number;
}

/** A run as it is. */
export const NO_FIT: RunFit = { gap: 0, factor: 1, surplus: 0 };

/**
 * The fit of each run of a chunk to the `textLength` of the `text` or `tspan` that it stands in (SVG 2
 * §11.5): with `spacing` the room that is lacking is shared out between the letters, with `spacingAndGlyphs`
 * the letters are stretched along the line. Elements whose letters do not all stand in this chunk, or that
 * hold others with a length of their own, are not fitted, nor are letters stretched that are turned or stand
 * on a path; `unfitted` says which.
 *
 * @param sizes advance and number of letters of each run of the chunk
 * @param all the runs of the whole text
 */
export function fitRuns(
  chunk: readonly TextRun[],
  all: readonly TextRun[],
  sizes: readonly { readonly advance: number; readonly letters: number }[],
  lengths: LengthContext,
): { readonly fits: readonly RunFit[]; readonly unfitted: readonly SvgElement[] } {
  const fits: RunFit[] = chunk.map(() => NO_FIT);
  const unfitted: SvgElement[] = [];
  for (const element of elementsWithLength(chunk)) {
    const mine = chunk.flatMap((run, i) => (isWithin(run.element, element) ? [i] : []));
    const isWhole = all.filter((run) => isWithin(run.element, element)).length === mine.length;
    const isAlone = mine.every((i) => nearestWithLength((chunk[i] as TextRun).element) === element);
    const stretched = element.attributes.get('lengthAdjust') === 'spacingAndGlyphs';
    if (!isWhole || !isAlone || (stretched && mine.some((i) => isMoved(chunk[i] as TextRun)))) {
      unfitted.push(element);
      continue;
    }
    const wanted = userUnits(element.attributes.get('textLength'), 'x', lengths);
    const shifts = mine.slice(1).reduce((sum, i) => sum + (chunk[i] as TextRun).dx, 0);
    const natural = mine.reduce((sum, i) => sum + (sizes[i]?.advance ?? 0), shifts);
    const letters = mine.reduce((sum, i) => sum + (sizes[i]?.letters ?? 0), 0);
    const gap = letters > 1 ? (wanted - natural) / (letters - 1) : 0;
    mine.forEach((i, k) => {
      fits[i] = stretched
        ? { gap: 0, factor: natural > 0 ? wanted / natural : 1, surplus: 0 }
        : { gap, factor: 1, surplus: k === mine.length - 1 ? gap : 0 };
    });
  }
  return { fits, unfitted };
}

/**
 * Whether letters stand on a path or are turned: then stretching along the line is not one map for all of
 * them.
 */
function isMoved({ along, turns }: TextRun): boolean {
  return along !== undefined || turns.length > 0;
}

function elementsWithLength(chunk: readonly TextRun[]): Set<SvgElement> {
  const found = new Set<SvgElement>();
  for (const { element } of chunk) {
    for (
      let at: SvgElement | undefined = element;
      at !== undefined && /^(?:text|tspan|a|textPath)$/.test(at.name);
      at = at.parent
    ) {
      if (hasLength(at)) {
        found.add(at);
      }
    }
  }
  return found;
}

function nearestWithLength(element: SvgElement): SvgElement | undefined {
  let at: SvgElement | undefined = element;
  while (at !== undefined && !hasLength(at)) {
    at = at.parent;
  }
  return at;
}

/** A length that is not above 0 counts as none. */
function hasLength(element: SvgElement): boolean {
  const length = parseLength(element.attributes.get('textLength') ?? '');
  return length !== undefined && (length.value > 0 || length.unit === 'math');
}

function isWithin(element: SvgElement, outer: SvgElement): boolean {
  let at: SvgElement | undefined = element;
  while (at !== undefined && at !== outer) {
    at = at.parent;
  }
  return at === outer;
}
