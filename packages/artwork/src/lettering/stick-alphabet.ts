/**
 * Letters as centre lines, drawn for this project on a grid: baseline 0, capitals and digits 12 high, small
 * letters 8, descenders −4, y up. Strokes are parted by `/`; points are `x,y`; `l90` or `r90` between two
 * points is an arc that turns left or right by so many degrees on its way from one to the other; a stroke of
 * one point is a dot.
 *
 * Only lines and circle arcs occur, so that a round bit of the stroke's width cuts every letter exactly, and
 * openings stay wider than two units. Origin: original drawing data of this project, under its licence; made
 * from lines and arcs on the grid, not after any font.
 */
// biome-ignore format: one letter a line
const DRAWN: Readonly<Record<string, string>> = {
  A: '0,0 4,12 8,0 / 1.3333,4 6.6667,4',
  B: '0,0 0,12 4,12 r180 4,6.5 0,6.5 / 4,6.5 4.75,6.5 r180 4.75,0 0,0',
  C: '6.8284,10.8284 l135 0,8 0,4 l135 6.8284,1.1716',
  D: '0,0 0,12 3,12 r90 8,7 8,5 r90 3,0 0,0',
  E: '7,0 0,0 0,12 7,12 / 0,6 5.5,6',
  F: '0,0 0,12 7,12 / 0,6 5.5,6',
  G: '6.8284,10.8284 l135 0,8 0,4 l180 8,4 8,6 5,6',
  H: '0,0 0,12 / 8,0 8,12 / 0,6 8,6',
  I: '0,0 0,12',
  J: '6,12 6,3 r180 0,3',
  K: '0,0 0,12 / 7.5,12 0,4.5 / 2.75,7.25 8,0',
  L: '0,12 0,0 7,0',
  M: '0,0 0,12 5,4 10,12 10,0',
  N: '0,0 0,12 8,0 8,12',
  O: '0,4 l180 8,4 8,8 l180 0,8 0,4',
  P: '0,0 0,12 4.5,12 r180 4.5,5.5 0,5.5',
  Q: '0,4 l180 8,4 8,8 l180 0,8 0,4 / 5,3.5 9,-0.5',
  R: '0,0 0,12 4.5,12 r180 4.5,5.5 0,5.5 / 4,5.5 8,0',
  S: '6,9 l270 3,6 r270 0,3',
  T: '0,12 8,12 / 4,12 4,0',
  U: '0,12 0,4 l180 8,4 8,12',
  V: '0,12 4,0 8,12',
  W: '0,12 3,0 6,10 9,0 12,12',
  X: '0,0 8,12 / 0,12 8,0',
  Y: '0,12 4,6 8,12 / 4,6 4,0',
  Z: '0,12 8,12 0,0 8,0',
  a: '6,8 6,0 / 6,5 l180 0,5 0,3 l180 6,3',
  b: '0,12 0,0 / 0,5 r180 6,5 6,3 r180 0,3',
  c: '5.1213,7.1213 l135 0,5 0,3 l135 5.1213,0.8787',
  d: '6,12 6,0 / 6,5 l180 0,5 0,3 l180 6,3',
  e: '0,4.25 6,4.25 6,5 l180 0,5 0,3 l135 5.1213,0.8787',
  f: '4,12 l90 1.5,9.5 1.5,0 / 0,8 4,8',
  g: '6,8 6,-1 r135 0.8787,-3.1213 / 6,5 l180 0,5 0,3 l180 6,3',
  h: '0,12 0,0 / 0,5 r180 6,5 6,0',
  i: '0,8 0,0 / 0,11.25',
  'ı': '0,8 0,0',
  j: '2,8 2,-2 r90 0,-4 / 2,11.25',
  'ȷ': '2,8 2,-2 r90 0,-4',
  k: '0,12 0,0 / 5.5,8 0,2.5 / 1.75,4.25 6,0',
  l: '0,12 0,2 l90 2,0',
  m: '0,8 0,0 / 0,5.5 r180 5,5.5 5,0 / 5,5.5 r180 10,5.5 10,0',
  n: '0,8 0,0 / 0,5 r180 6,5 6,0',
  o: '0,3 l180 6,3 6,5 l180 0,5 0,3',
  p: '0,8 0,-4 / 0,5 r180 6,5 6,3 r180 0,3',
  q: '6,8 6,-4 / 6,5 l180 0,5 0,3 l180 6,3',
  r: '0,8 0,0 / 0,5 r90 3,8 4,8',
  s: '4,6 l270 2,4 r270 0,2',
  t: '1.5,12 1.5,2.5 l90 4,0 / 0,8 4,8',
  u: '0,8 0,3 l180 6,3 / 6,8 6,0',
  v: '0,8 3,0 6,8',
  w: '0,8 2.5,0 5,8 7.5,0 10,8',
  x: '0,8 6,0 / 0,0 6,8',
  y: '0,8 3,0 / 6,8 1.5,-4',
  z: '0,8 6,8 0,0 6,0',
  'ß': '0,0 0,9 r180 6,9 r90 3,6.5 / 3,6.5 r180 3,0 2,0',
  'Ø': '0,4 l180 8,4 8,8 l180 0,8 0,4 / 0,-0.5 8,12.5',
  'ø': '0,3 l180 6,3 6,5 l180 0,5 0,3 / 0,-0.5 6,8.5',
  0: '0,3.5 l180 7,3.5 7,8.5 l180 0,8.5 0,3.5',
  1: '0,9.5 3,12 3,0',
  2: '0,8.5 r225 5.9749,6.0251 0,0 7,0',
  3: '0.5,9.25 r270 3.25,6.5 r270 0,3.25',
  4: '5.5,0 5.5,12 0,3.5 7.5,3.5',
  5: '6.5,12 0.5,12 0.5,7.5 3.25,7.5 r180 3.25,0 0,0',
  6: '5.5,12 l90 0,6.5 0,3.5 l180 7,3.5 l180 0,3.5',
  7: '0,12 7,12 2.5,0',
  8: '3.5,6.5 l180 3.5,12 l180 3.5,6.5 l180 3.5,0 l180 3.5,6.5',
  9: '1.5,0 l90 7,5.5 7,8.5 l180 0,8.5 l180 7,8.5',
  '.': '0,0',
  ',': '0.75,0.25 0,-2',
  ':': '0,0 / 0,7',
  ';': '0.75,0.25 0,-2 / 0.5,7',
  '!': '0,12 0,4 / 0,0',
  '?': '0,9 r225 5.1213,6.8787 3,4.5 3,4 / 3,0',
  '-': '0,5 5,5',
  '‐': '0,5 5,5',
  '–': '0,5 8,5',
  '—': '0,5 12,5',
  '&': '8.8603,0 1.5554,7.3054 r270 5.4446,7.3054 2.0643,3.9251 l135 3.6906,0 l90 7.6906,4',
  "'": '0,12 0,9.5',
  '’': '0.75,12 0,9.5',
  '‘': '0.75,9.5 0,12',
  '"': '0,12 0,9.5 / 2.5,12 2.5,9.5',
  '“': '0.75,9.5 0,12 / 3.25,9.5 2.5,12',
  '”': '0.75,12 0,9.5 / 3.25,12 2.5,9.5',
  '(': '2.5,13.5 l70 2.5,-2.5',
  ')': '0,13.5 r70 0,-2.5',
  '/': '0,-1 5,13',
  '+': '0,5 7,5 / 3.5,1.5 3.5,8.5',
  '=': '0,6.75 7,6.75 / 0,3.25 7,3.25',
  '×': '0,2.5 5,7.5 / 0,7.5 5,2.5',
  '·': '0,5',
  '°': '0,10 l180 4,10 l180 0,10',
  '_': '0,-1 8,-1',
  '*': '2,8 2,12 / 0.268,9 3.732,11 / 0.268,11 3.732,9',
};

/** Accents over a letter whose top is at 0, with x from its middle; keyed by their combining character. */
const OVER: Readonly<Record<string, string>> = {
  '\u0300': '-1,4 1,2.25',
  '\u0301': '1,4 -1,2.25',
  '\u0302': '-2,2.25 0,4 2,2.25',
  '\u0303': '-2.5,2.5 r90 0,3 l90 2.5,3.5',
  '\u0304': '-2,3 2,3',
  '\u0306': '-2,4 l180 2,4',
  '\u0307': '0,3.25',
  '\u0308': '-1.75,3.25 / 1.75,3.25',
  '\u030a': '-1.5,4 l180 1.5,4 l180 -1.5,4',
  '\u030b': '-0.25,4 -1.75,2.25 / 2.25,4 0.75,2.25',
  '\u030c': '-2,4 0,2.25 2,4',
};

/** Accents below the baseline, with x from the letter's middle. */
const UNDER: Readonly<Record<string, string>> = {
  '\u0323': '0,-3',
  '\u0327': '0,0 0,-1.25 r180 0,-3.75 -1,-3.75',
  '\u0331': '-2,-3 2,-3',
};

/**
 * One step of a stroke: to (x, y), straight or on an arc that turns by `turn` radians, positive to the left
 * (y up).
 */
export interface StickStep {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

/** A centre line: its start and its steps; a dot has none. */
export interface StickStroke {
  readonly x: number;
  readonly y: number;
  readonly steps: readonly StickStep[];
}

/** Height of capitals in grid units. */
export const STICK_CAP_HEIGHT = 12;

/**
 * Centre lines of one written character (with its accents) in grid units, y up; `undefined` when it is not in
 * the alphabet.
 */
export function stickLetter(grapheme: string): readonly StickStroke[] | undefined {
  const [first, ...marks] = [...grapheme.normalize('NFD')] as [string, ...string[]];
  const raised = marks.some((mark) => OVER[mark] !== undefined);
  const dotless = { i: 'ı', j: 'ȷ' }[first];
  const base = raised && dotless !== undefined ? dotless : first;
  const drawn = Object.hasOwn(DRAWN, base) ? DRAWN[base] : undefined;
  if (drawn === undefined) {
    return undefined;
  }
  const letter = parseStrokes(drawn, 0, 0);
  const xs = letter.flatMap((stroke) => [stroke.x, ...stroke.steps.map((step) => step.x)]);
  const ys = letter.flatMap((stroke) => [stroke.y, ...stroke.steps.map((step) => step.y)]);
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
  const all = [...letter];
  // arcs of small letters reach above their points, to 8; capitals and letters with an ascender to 12
  let top = Math.max(...ys) > 8.5 ? STICK_CAP_HEIGHT : 8;
  for (const mark of marks) {
    const over = OVER[mark];
    const under = UNDER[mark];
    if (over !== undefined) {
      all.push(...parseStrokes(over, middle, top + 0.5));
      top += 4;
    } else if (under !== undefined) {
      all.push(...parseStrokes(under, middle, 0));
    } else {
      return undefined;
    }
  }
  return all;
}

function parseStrokes(text: string, dx: number, dy: number): StickStroke[] {
  return text.split(' / ').map((part) => {
    const points: StickStep[] = [];
    let turn = 0;
    for (const word of part.split(' ')) {
      if (/^[lr]/.test(word)) {
        turn = ((word.startsWith('l') ? 1 : -1) * Number(word.slice(1)) * Math.PI) / 180;
      } else {
        const [x, y] = word.split(',').map(Number) as [number, number];
        points.push({ x: x + dx, y: y + dy, turn });
        turn = 0;
      }
    }
    const [start, ...steps] = points as [StickStep, ...StickStep[]];
    return { x: start.x, y: start.y, steps };
  });
}
