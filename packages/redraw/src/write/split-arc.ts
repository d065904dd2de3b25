import type { XY } from '../fit/outline-path.ts';

/** A part of an arc. */
export interface ArcPart {
  readonly from: XY;
  readonly to: XY;
  readonly radius: number;
  readonly bulge: number;
  readonly centre: XY;
}

/** An arc in equal parts that turn by at most `mostTurn` radians each. */
export function splitArc(
  from: XY,
  { to, bulge }: { readonly to: XY; readonly bulge: number },
  mostTurn: number,
): readonly ArcPart[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const up = (1 - bulge * bulge) / (4 * bulge);
  const centre: XY = [(from[0] + to[0]) / 2 - dy * up, (from[1] + to[1]) / 2 + dx * up];
  const radius = (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const turn = 4 * Math.atan(bulge);
  const count = Math.max(1, Math.ceil(Math.abs(turn) / mostTurn));
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const at = (k: number): XY => {
    const t = start + (turn * k) / count;
    return k === 0
      ? from
      : k === count
        ? to
        : [centre[0] + radius * Math.cos(t), centre[1] + radius * Math.sin(t)];
  };
  return Array.from({ length: count }, (_, k) => ({
    from: at(k),
    to: at(k + 1),
    radius,
    bulge: Math.tan(turn / count / 4),
    centre,
  }));
}
