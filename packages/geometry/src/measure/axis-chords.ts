import type { Point } from '@pourproof/plane';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { AxisEdge } from './axis-edge.ts';

/** A straight piece of the medial axis, or a chord of a curved one; mm. */
export interface AxisChord {
  readonly from: Point;
  readonly to: Point;
}

/** Curved pieces shorter than this, mm, are taken as straight: their sag is far below what a clamp is placed to. */
const STRAIGHT_BELOW_MM = 0.1;
/** Chords of a longer curved piece. */
const CURVE_CHORDS = 8;

/** The whole medial axis, corners and all, as chords: what has the same distance from two places of the outline. Linear time. */
export function axisChords(axis: MedialAxis): readonly AxisChord[] {
  const { edgeFrom, boundary } = axis;
  const edge = new AxisEdge(axis);
  const pointAt = (share: number): Point => {
    edge.atShare(share);
    return [edge.x + boundary.originX, edge.y + boundary.originY];
  };
  const chords: AxisChord[] = [];
  for (let e = 0; e < edgeFrom.length; e++) {
    if (edge.isSecondary(e)) {
      // only the border between an edge and its own end
      continue;
    }
    edge.load(e);
    const isCurved = edge.kind === 'segment-vertex' || edge.kind === 'vertices';
    const count = isCurved && edge.lengthBetween(0, 1) > STRAIGHT_BELOW_MM ? CURVE_CHORDS : 1;
    for (let k = 0; k < count; k++) {
      chords.push({ from: pointAt(k / count), to: pointAt((k + 1) / count) });
    }
  }
  return chords;
}
