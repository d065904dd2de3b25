import { arcSegment } from '../path/arc-segment.ts';
import { type Path, PathBuilder } from '../path/path.ts';

/** Path data as segments, and where in the text the first error is, if any. */
export interface PathDataResult {
  readonly path: Path;
  /**
   * Index in the text of the first thing that is not path data; everything before it is drawn (SVG 2 §9.5.4).
   */
  readonly errorAt?: number;
}

/** How many numbers each command takes at a time. */
const ARGUMENTS: ReadonlyMap<string, number> = new Map([
  ['m', 2],
  ['l', 2],
  ['h', 1],
  ['v', 1],
  ['c', 6],
  ['s', 4],
  ['q', 4],
  ['t', 2],
  ['a', 7],
  ['z', 0],
]);

/**
 * Reads SVG path data (SVG 2 §9.3). Every command is taken; a path is drawn up to its first error. Numbers
 * too large to be held count as an error.
 */
export function parsePathData(text: string): PathDataResult {
  const reader = new Reader(text);
  const pen = new Pen();
  let command = '';
  reader.space();
  while (!reader.atEnd()) {
    const at = reader.at;
    const letter = reader.letter();
    if (
      letter === undefined ||
      !ARGUMENTS.has(letter.toLowerCase()) ||
      (command === '' && !/m/i.test(letter))
    ) {
      return { path: pen.path(), errorAt: at };
    }
    command = letter;
    const errorAt = readCommand(reader, pen, command);
    if (errorAt !== undefined) {
      return { path: pen.path(), errorAt };
    }
  }
  return { path: pen.path() };
}

/** Reads all the number groups of one command; returns where it fails. */
function readCommand(reader: Reader, pen: Pen, command: string): number | undefined {
  const name = command.toLowerCase();
  const count = ARGUMENTS.get(name) as number;
  reader.space();
  if (count === 0) {
    pen.draw(command, []);
    return undefined;
  }
  let drawing = command;
  do {
    const at = reader.at;
    const values: number[] = [];
    for (let i = 0; i < count; i++) {
      if (i > 0) {
        reader.separator();
      }
      const isFlag = name === 'a' && (i === 3 || i === 4);
      const value = isFlag ? reader.flag() : reader.number();
      if (value === undefined) {
        return Math.max(at, reader.at);
      }
      values.push(value);
    }
    pen.draw(drawing, values);
    // more pairs after a moveto are linetos
    drawing = command === 'm' ? 'l' : command === 'M' ? 'L' : command;
  } while (reader.another());
  return undefined;
}

/** Reads numbers, flags and letters with the separators of path data. */
class Reader {
  at = 0;
  private readonly number_ = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  atEnd(): boolean {
    return this.at >= this.text.length;
  }

  space(): void {
    for (; this.at < this.text.length; this.at++) {
      const c = this.text.charCodeAt(this.at);
      if (c !== 32 && !(c >= 9 && c <= 13 && c !== 11)) {
        return;
      }
    }
  }

  /** White space with at most one comma in it; tells whether there was a comma. */
  separator(): boolean {
    this.space();
    if (this.text.charCodeAt(this.at) !== 44) {
      return false;
    }
    this.at++;
    this.space();
    return true;
  }

  /** Whether another group of numbers follows; a comma that nothing follows stays unread, as an error. */
  another(): boolean {
    const before = this.at;
    const comma = this.separator();
    const c = this.text.charCodeAt(this.at);
    const more = (c >= 48 && c <= 57) || c === 43 || c === 45 || c === 46;
    if (!more && comma) {
      this.at = before;
    }
    return more;
  }

  letter(): string | undefined {
    const c = this.text[this.at];
    if (c === undefined || !/[A-Za-z]/.test(c)) {
      return undefined;
    }
    this.at++;
    return c;
  }

  flag(): number | undefined {
    const c = this.text[this.at];
    if (c !== '0' && c !== '1') {
      return undefined;
    }
    this.at++;
    return c === '1' ? 1 : 0;
  }

  number(): number | undefined {
    this.number_.lastIndex = this.at;
    const match = this.number_.exec(this.text);
    const value = match === null ? Number.NaN : Number(match[0]);
    if (match === null || !Number.isFinite(value)) {
      return undefined;
    }
    this.at += match[0].length;
    return value;
  }
}

/** Turns commands into absolute segments; remembers what smooth commands mirror. */
class Pen {
  private readonly out = new PathBuilder();
  private last = '';
  private controlX = 0;
  private controlY = 0;

  path(): Path {
    return this.out.path();
  }

  draw(command: string, v: readonly number[]): void {
    const { out } = this;
    const name = command.toLowerCase();
    const ox = command === name ? out.x : 0;
    const oy = command === name ? out.y : 0;
    const p = (i: number): [number, number] => [ox + (v[i] as number), oy + (v[i + 1] as number)];
    switch (name) {
      case 'm':
        out.moveTo(...p(0));
        break;
      case 'l':
        out.lineTo(...p(0));
        break;
      case 'h':
        out.lineTo(ox + (v[0] as number), out.y);
        break;
      case 'v':
        out.lineTo(out.x, oy + (v[0] as number));
        break;
      case 'c':
        this.cubic(p(0), p(2), p(4));
        break;
      case 's':
        this.cubic(this.mirrored('cs'), p(0), p(2));
        break;
      case 'q':
        this.quadratic(p(0), p(2));
        break;
      case 't':
        this.quadratic(this.mirrored('qt'), p(0));
        break;
      case 'a':
        this.arc(v, p(5));
        break;
      default:
        out.close();
    }
    this.last = name;
  }

  /** The last control point mirrored at the current point, if the command before was of the kind. */
  private mirrored(kind: string): [number, number] {
    const { x, y } = this.out;
    return this.last !== '' && kind.includes(this.last)
      ? [2 * x - this.controlX, 2 * y - this.controlY]
      : [x, y];
  }

  private cubic(c1: [number, number], c2: [number, number], end: [number, number]): void {
    this.out.cubicTo(...c1, ...c2, ...end);
    [this.controlX, this.controlY] = c2;
  }

  private quadratic(c: [number, number], end: [number, number]): void {
    this.out.quadraticTo(...c, ...end);
    [this.controlX, this.controlY] = c;
  }

  private arc(v: readonly number[], [x, y]: [number, number]): void {
    const { out } = this;
    const [rx, ry, turn, large, sweep] = v as [number, number, number, number, number];
    const arc = arcSegment(out.x, out.y, rx, ry, turn, large === 1, sweep === 1, x, y);
    if (arc !== undefined) {
      out.arcTo(arc, x, y);
    } else {
      // radius 0 is a line; start = end draws nothing, which a line of no length does not either, yet it can
      // carry a cap
      out.lineTo(x, y);
    }
  }
}
