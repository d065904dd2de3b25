import type { ComputedStyle } from './computed-style.ts';
import { type LengthContext, lengthList, userUnits } from './css-length.ts';
import { type DrawState, lengthsAt, type Scene, styleUnder } from './scene.ts';
import type { SvgElement } from './svg-element.ts';

/** Letters that are set together: one style, and no place given inside. */
export interface TextRun {
  readonly text: string;
  /** The `text`, `tspan`, `a` or `textPath` that the letters stand in. */
  readonly element: SvgElement;
  readonly style: ComputedStyle;
  /**
   * Where the run starts, in user units, where the file says so: it begins a new chunk, which is anchored by
   * itself.
   */
  readonly x?: number;
  readonly y?: number;
  /** Shift from where it would stand. */
  readonly dx: number;
  readonly dy: number;
  /** The `textPath` around it. */
  readonly along?: SvgElement;
  /** Degrees by which each character is turned about its own origin, by its UTF-16 index; empty for none. */
  readonly turns: readonly number[];
}

interface Letter {
  readonly text: string;
  readonly element: SvgElement;
  readonly style: ComputedStyle;
  readonly along?: SvgElement;
  x?: number;
  y?: number;
  dx?: number;
  dy?: number;
  turn?: number;
}

/**
 * The runs of a `text` element in reading order (SVG 2 §11.5): white space collapsed unless `xml:space` or
 * `white-space` keeps it, places from `x`, `y`, `dx` and `dy` lists and turns from `rotate` lists given to
 * their letters, the innermost element's first.
 */
export function textRuns(scene: Scene, text: SvgElement, state: DrawState): TextRun[] {
  const letters: Letter[] = [];
  collect(scene, text, state, undefined, letters);
  const kept = keepsSpace(text, state.style) ? letters : collapsed(letters);
  const runs: TextRun[] = [];
  let run: (Letter & { text: string; turns: number[] }) | undefined;
  const flush = (): void => {
    if (run !== undefined) {
      const { dx = 0, dy = 0, turn: _turn, turns, ...rest } = run;
      runs.push({ ...rest, dx, dy, turns: turns.some((t) => t !== 0) ? turns : [] });
    }
  };
  for (const letter of kept) {
    const placed =
      letter.x !== undefined || letter.y !== undefined || letter.dx !== undefined || letter.dy !== undefined;
    if (run === undefined || placed || letter.element !== run.element) {
      flush();
      run = { ...letter, turns: turnsOf(letter) };
    } else {
      run = { ...run, text: run.text + letter.text, turns: [...run.turns, ...turnsOf(letter)] };
    }
  }
  flush();
  return runs;
}

/** A character's turn for each of its UTF-16 units. */
function turnsOf({ text, turn = 0 }: Letter): number[] {
  return new Array<number>(text.length).fill(turn);
}

function collect(
  scene: Scene,
  element: SvgElement,
  state: DrawState,
  along: SvgElement | undefined,
  out: Letter[],
): void {
  const from = out.length;
  const { style } = state;
  for (let i = 0; i <= element.children.length; i++) {
    for (const text of Array.from(element.texts[i] ?? '')) {
      out.push({ text, element, style, ...(along === undefined ? {} : { along }) });
    }
    const child = element.children[i];
    if (child !== undefined && /^(?:tspan|a|textPath)$/.test(child.name)) {
      const inner = styleUnder(scene, child, style);
      if (inner.get('display').toLowerCase() !== 'none') {
        collect(scene, child, { ...state, style: inner }, child.name === 'textPath' ? child : along, out);
      }
    }
  }
  const lengths = lengthsAt(scene, state);
  const mine = out
    .slice(from)
    .filter((letter, i, all) => !isSpace(letter.text) || (i > 0 && !isSpace(all[i - 1]?.text)));
  for (const name of ['x', 'y', 'dx', 'dy'] as const) {
    const axis = name.endsWith('x') ? 'x' : 'y';
    placesIn(element.attributes.get(name), axis, lengths).forEach((value, i) => {
      const letter = mine[i];
      if (letter !== undefined) {
        letter[name] ??= value;
      }
    });
  }
  const turns = numbersIn(element.attributes.get('rotate'));
  // the last turn counts for all letters after it too
  mine.forEach((letter, i) => {
    const turn = turns[Math.min(i, turns.length - 1)];
    if (turn !== undefined) {
      letter.turn ??= turn;
    }
  });
}

/** The numbers of a list, up to the first thing that is none. */
function numbersIn(text: string | undefined): number[] {
  const numbers = (text ?? '')
    .split(/[\s,]+/)
    .filter(Boolean)
    .map(Number);
  const wrong = numbers.findIndex((n) => !Number.isFinite(n));
  return wrong < 0 ? numbers : numbers.slice(0, wrong);
}

function placesIn(text: string | undefined, axis: 'x' | 'y', lengths: LengthContext): number[] {
  return lengthList(text ?? '').map((part) => userUnits(part, axis, lengths));
}

function keepsSpace(text: SvgElement, style: ComputedStyle): boolean {
  return (
    text.attributes.get('xml:space') === 'preserve' ||
    /^(?:pre|pre-wrap|break-spaces)$/.test(style.get('white-space'))
  );
}

/**
 * White space as single spaces, none at the start and the end; places of left-out spaces go to the letter
 * after them.
 */
function collapsed(letters: readonly Letter[]): Letter[] {
  const out: Letter[] = [];
  for (const letter of letters) {
    const previous = out[out.length - 1];
    if (!isSpace(letter.text)) {
      out.push(letter);
    } else if (previous !== undefined && previous.text !== ' ') {
      out.push({ ...letter, text: ' ' });
    }
  }
  return out[out.length - 1]?.text === ' ' ? out.slice(0, -1) : out;
}

function isSpace(text: string | undefined): boolean {
  return text !== undefined && /^[ \t\r\n]$/.test(text);
}
