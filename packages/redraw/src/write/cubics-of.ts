import type { OutlinePath, OutlinePiece, XY } from '../fit/outline-path.ts';
import { splitArc } from './split-arc.ts';

/** Arcs become cubics of at most this turn, radians, which leave them by 4e-6 of the radius. */
const MOST_TURN = (Math.PI / 4) * (1 + 1e-9);

/** A cubic Bézier from the end of the one before. */
export interface Cubic {
  readonly control: readonly [XY, XY];
  readonly to: XY;
}

/** An outline in cubic Béziers alone. */
export function cubicsOf({ start, pieces }: OutlinePath): readonly Cubic[] {
  return pieces.flatMap((piece, k) => cubicsOfPiece(pieces[k - 1]?.to ?? start, piece));
}

function cubicsOfPiece(from: XY, piece: OutlinePiece): readonly Cubic[] {
  switch (piece.kind) {
    case 'cubic':
      return [piece];
    case 'line':
      return [{ control: [between(from, piece.to, 1 / 3), between(from, piece.to, 2 / 3)], to: piece.to }];
    case 'arc':
      return splitArc(from, piece, MOST_TURN).map(({ from: a, to, bulge, centre }) => {
        // handles of 4/3·tan(turn/4) radii along the tangents
        const k = (4 / 3) * bulge;
        return {
          control: [
            [a[0] - k * (a[1] - centre[1]), a[1] + k * (a[0] - centre[0])],
            [to[0] + k * (to[1] - centre[1]), to[1] - k * (to[0] - centre[0])],
          ],
          to,
        };
      });
  }
}

function between([ax, ay]: XY, [bx, by]: XY, share: number): XY {
  return [ax + share * (bx - ax), ay + share * (by - ay)];
}
