import type { OutlinePath, OutlinePiece, XY } from './outline-path.ts';
import { direction, unit } from './polyline.ts';

type Arc = Extract<OutlinePiece, { kind: 'arc' }>;

/** Tangents at a joint with an arc that differ by less are one, radians: 0.3°, far below what shows or is felt (our choice). */
const SMOOTH_RAD = 0.005;

/** A piece, and where it begins. */
interface Placed {
  readonly from: XY;
  readonly piece: OutlinePiece;
}

/**
 * An outline with arcs exactly tangent to what they go on into. Each arc was fitted for its area, from points that are rounded, so
 * that its tangents are off by some hundredths of a degree: an arc between two lines becomes the arc that touches both, whose ends move along them; one after a
 * line or another arc takes over its tangent; the handle of a curve beside it turns. By how much that moves the outline is added to `offMm`; what would
 * move it by more than `mostMm` stays: it was drawn with that kink.
 */
export function withSmoothJoints({ start, pieces, offMm }: OutlinePath, mostMm: number): OutlinePath {
  const placed = pieces.map((piece, k): Placed => ({ from: pieces[k - 1]?.to ?? start, piece }));
  const outline = new Smoother(placed, mostMm);
  outline.smooth();
  const [first] = outline.placed;
  return {
    start: first?.from ?? start,
    pieces: outline.placed.map(({ piece }) => piece),
    offMm: offMm + outline.movedMm,
  };
}

class Smoother {
  readonly placed: Placed[];
  readonly #mostMm: number;
  movedMm = 0;

  constructor(placed: readonly Placed[], mostMm: number) {
    this.placed = [...placed];
    this.#mostMm = mostMm;
  }

  smooth(): void {
    const n = this.placed.length;
    for (let k = 0; k < n; k++) {
      if (this.#at(k).piece.kind === 'arc' && n > 2) {
        this.#smoothArc(k);
      }
    }
  }

  #at(k: number): Placed {
    const n = this.placed.length;
    return this.placed[(k + n) % n] as Placed;
  }

  #set(k: number, placed: Placed): void {
    const n = this.placed.length;
    this.placed[(k + n) % n] = placed;
  }

  #smoothArc(k: number): void {
    const [before, arc, after] = [this.#at(k - 1), this.#at(k), this.#at(k + 1)];
    const [incoming, outgoing] = [tangents(before)[1], tangents(after)[0]];
    const [start, end] = tangents(arc);
    const [isBefore, isAfter] = [goesOn(incoming, start), goesOn(end, outgoing)];
    if (isBefore && isAfter && before.piece.kind === 'line' && after.piece.kind === 'line') {
      this.#touchLines(k, incoming, outgoing);
      return;
    }
    if (isBefore && before.piece.kind !== 'cubic') {
      this.#leaveAlong(k, incoming);
    } else if (isAfter && after.piece.kind === 'line') {
      this.#arriveAlong(k, outgoing);
    }
    // what follows a handle turns with it
    const [now, then] = tangents(this.#at(k));
    if (isBefore && before.piece.kind === 'cubic') {
      this.#turnHandle(k - 1, now, 1);
    }
    if (isAfter && after.piece.kind === 'cubic') {
      this.#turnHandle(k + 1, then, 0);
    }
  }

  /** The arc that touches the lines on both sides: its ends lie equally far from where they meet. */
  #touchLines(k: number, [ux, uy]: XY, [vx, vy]: XY): void {
    const { from, piece } = this.#at(k);
    const [dx, dy] = [piece.to[0] - from[0], piece.to[1] - from[1]];
    const cross = ux * vy - uy * vx;
    const [along, back] = [(dx * vy - dy * vx) / cross, (dx * -uy + dy * ux) / cross];
    const reach = (along + back) / 2;
    // lines that are nearly parallel meet nowhere near
    if (!(reach > 0 && Math.abs(cross) > 10 * SMOOTH_RAD)) {
      this.#leaveAlong(k, [ux, uy]);
      return;
    }
    const [x, y] = [from[0] + along * ux, from[1] + along * uy];
    const [a, b]: readonly XY[] = [
      [x - reach * ux, y - reach * uy],
      [x + reach * vx, y + reach * vy],
    ];
    const bulge = Math.tan(Math.atan2(cross, ux * vx + uy * vy) / 4);
    const shift = Math.abs(along - back) / 2;
    if (this.#mayMove(shift + arcMoved(this.#at(k), bulge))) {
      this.#moveJoint(k, a as XY);
      this.#moveJoint(k + 1, b as XY);
      this.#setBulge(k, bulge);
    }
  }

  /** Whether pieces may move by so much, which is kept in mind. */
  #mayMove(byMm: number): boolean {
    const may = byMm <= this.#mostMm;
    this.movedMm = may ? Math.max(this.movedMm, byMm) : this.movedMm;
    return may;
  }

  /** Another bulge, so that the arc begins along a tangent, or ends along it. */
  #leaveAlong(k: number, tangent: XY): void {
    this.#takeBulge(k, Math.tan(turnFrom(tangent, chordOf(this.#at(k))) / 2));
  }

  #arriveAlong(k: number, tangent: XY): void {
    this.#takeBulge(k, Math.tan(turnFrom(chordOf(this.#at(k)), tangent) / 2));
  }

  #takeBulge(k: number, bulge: number): void {
    if (this.#mayMove(arcMoved(this.#at(k), bulge))) {
      this.#setBulge(k, bulge);
    }
  }

  #setBulge(k: number, bulge: number): void {
    const { from, piece } = this.#at(k);
    this.#set(k, { from, piece: { kind: 'arc', to: piece.to, bulge } });
  }

  /** Moves the point in which piece k begins and the one before it ends. */
  #moveJoint(k: number, to: XY): void {
    const before = this.#at(k - 1);
    this.#set(k - 1, { from: before.from, piece: { ...before.piece, to } });
    this.#set(k, { from: to, piece: this.#at(k).piece });
  }

  /** Turns a handle of a curve into a direction: that at its end (1) or at its beginning (0). */
  #turnHandle(k: number, [tx, ty]: XY, side: 0 | 1): void {
    const { from, piece } = this.#at(k);
    if (piece.kind !== 'cubic') {
      return;
    }
    const [first, second] = piece.control;
    const [foot, tip, sign] = side === 1 ? [piece.to, second, -1] : [from, first, 1];
    const length = sign * Math.hypot(tip[0] - foot[0], tip[1] - foot[1]);
    const turned: XY = [foot[0] + length * tx, foot[1] + length * ty];
    // a control point moves the curve by 4/9 of its way at most
    if (this.#mayMove((4 / 9) * Math.hypot(turned[0] - tip[0], turned[1] - tip[1]))) {
      this.#set(k, { from, piece: { ...piece, control: side === 1 ? [first, turned] : [turned, second] } });
    }
  }
}

/** Unit tangents at both ends. */
function tangents({ from, piece }: Placed): readonly [XY, XY] {
  const { to } = piece;
  switch (piece.kind) {
    case 'line': {
      const along = direction(from, to);
      return [along, along];
    }
    case 'cubic':
      return [direction(from, piece.control[0]), direction(piece.control[1], to)];
    case 'arc': {
      const [ux, uy] = direction(from, to);
      const { bulge } = piece;
      // half the arc's turn is twice the angle whose tangent is the bulge
      const [c, s] = unit(1 - bulge * bulge, 2 * bulge);
      return [
        [ux * c + uy * s, uy * c - ux * s],
        [ux * c - uy * s, uy * c + ux * s],
      ];
    }
  }
}

/** How far an arc moves at most when it takes another bulge: its height over the chord is half that times the bulge. */
function arcMoved({ from, piece }: Placed, bulge: number): number {
  const half = Math.hypot(piece.to[0] - from[0], piece.to[1] - from[1]) / 2;
  return half * Math.abs(bulge - (piece as Arc).bulge);
}

function chordOf({ from, piece }: Placed): XY {
  return direction(from, piece.to);
}

/** Angle from one direction to another, radians. */
function turnFrom([ax, ay]: XY, [bx, by]: XY): number {
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
}

function goesOn(a: XY, b: XY): boolean {
  return Math.abs(turnFrom(a, b)) <= 2 * SMOOTH_RAD;
}
