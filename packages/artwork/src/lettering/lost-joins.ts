import { boundsOf, compose, scaling, type Transform, translation } from '@pourproof/plane';
import { glyphRings } from './glyph-outline.ts';
import type { OpenedFont } from './opened-font.ts';
import type { Layout, Letter } from './place-lines.ts';

/** Outlines nearer than this part of the em count as joined: fonts round to about a thousandth. */
const TOUCH_EM = 0.002;

/**
 * Letters that would touch their right neighbour as the font sets them, but do not in this layout, because of
 * tracking or because they are turned on an arc. Found from the outlines, so it holds for joined scripts of
 * every language and for script faces.
 */
export function lostJoins(font: OpenedFont, { letters, mmPerEm }: Layout): readonly Letter[] {
  const [em, reach] = [scaling(1, -1), TOUCH_EM * mmPerEm];
  return letters.filter((letter, i) => {
    const next = letters[i + 1];
    if (next?.line !== letter.line) {
      return false;
    }
    const beside = compose(em, translation(letter.cluster.advance, 0));
    const joined = touch(outline(font, letter, em, 1), outline(font, next, beside, 1), TOUCH_EM);
    return (
      joined &&
      !touch(outline(font, letter, letter.emToMm, mmPerEm), outline(font, next, next.emToMm, mmPerEm), reach)
    );
  });
}

function outline(font: OpenedFont, letter: Letter, emTo: Transform, scale: number): number[][] {
  return letter.cluster.glyphs.flatMap((g) =>
    glyphRings(font, g.glyph, compose(emTo, translation(g.x, g.y)), TOUCH_EM * scale),
  );
}

/** Whether any edges of two sets of rings come as near as `reach`. */
function touch(a: readonly number[][], b: readonly number[][], reach: number): boolean {
  return a.some((ring) =>
    b.some((other) => {
      const [p, q] = [boundsOf(ring), boundsOf(other)];
      const apart = p[0] - q[2] > reach || q[0] - p[2] > reach || p[1] - q[3] > reach || q[1] - p[3] > reach;
      return !apart && (ringsMeet(ring, other, reach) || ringsMeet(other, ring, reach));
    }),
  );
}

// edges that cross, or a corner of the first near an edge of the second
function ringsMeet(ring: readonly number[], other: readonly number[], reach: number): boolean {
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    const a = [ring[i], ring[i + 1], ring[j], ring[j + 1]] as [number, number, number, number];
    for (let k = 0; k < other.length; k += 2) {
      const l = (k + 2) % other.length;
      const b = [other[k], other[k + 1], other[l], other[l + 1]] as [number, number, number, number];
      if (cornerNear(a[0], a[1], b, reach) || edgesCross(a, b)) {
        return true;
      }
    }
  }
  return false;
}

type Edge = readonly [x0: number, y0: number, x1: number, y1: number];

function cornerNear(x: number, y: number, [x0, y0, x1, y1]: Edge, reach: number): boolean {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const t = Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(x0 + t * dx - x, y0 + t * dy - y) <= reach;
}

function edgesCross(a: Edge, b: Edge): boolean {
  return (
    sideOf(a, b[0], b[1]) * sideOf(a, b[2], b[3]) < 0 && sideOf(b, a[0], a[1]) * sideOf(b, a[2], a[3]) < 0
  );
}

function sideOf([x0, y0, x1, y1]: Edge, x: number, y: number): number {
  return (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0);
}
