import { readFileSync } from 'node:fs';
import { type CleanRegion, packRings } from '@pourproof/plane';
import { type GlyfPoint, glyfContours } from './glyf-outline.ts';
import { FontReader } from './gpos-pairs.ts';

/** A parabola arc of an outline: start, control point, end, in mm, y down; a straight piece has its control point half way. */
type Piece = readonly [number, number, number, number, number, number];

/** The outline of one glyph as the font's own curves, read from its file without our reader. */
export interface TrueOutline {
  readonly contours: readonly (readonly Piece[])[];
}

export function trueOutline(character: string, file: string, capHeightMm: number): TrueOutline {
  const bytes = new Uint8Array(readFileSync(new URL(`../../../fixtures/fonts/${file}`, import.meta.url)));
  const font = new FontReader(bytes);
  // sCapHeight is at byte 88 of OS/2
  const scale = capHeightMm / font.data.getInt16(font.table('OS/2') + 88);
  const contours = glyfContours(font, font.glyph(character));
  return { contours: contours.map((points) => piecesOf(points, scale)) };
}

/** Between two points off the curve lies one on it, half way (OpenType 1.9.1, "glyf — Glyph Data"). */
function piecesOf(points: readonly GlyfPoint[], scale: number): Piece[] {
  const full = points.flatMap((p, i) => {
    const q = points[(i + 1) % points.length];
    const middle = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
    return p.onCurve === q.onCurve ? [p, { ...middle, onCurve: !p.onCurve }] : [p];
  });
  const first = full.findIndex((p) => p.onCurve);
  const turned = [...full.slice(first), ...full.slice(0, first)];
  return Array.from({ length: turned.length / 2 }, (_, k) => {
    const [a, b, c] = [turned[2 * k], turned[2 * k + 1], turned[(2 * k + 2) % turned.length]];
    return [a.x * scale, -a.y * scale, b.x * scale, -b.y * scale, c.x * scale, -c.y * scale];
  });
}

/** Area in mm² inside the curves, by Green's theorem on each piece. */
export function trueArea({ contours }: TrueOutline): number {
  // ½∫(x dy − y dx) over a parabola arc: a third of the cross products of its control polygon's neighbours, a sixth of that of its ends
  const cross = (ax: number, ay: number, bx: number, by: number): number => ax * by - ay * bx;
  return contours
    .flat()
    .reduce(
      (sum, [ax, ay, bx, by, cx, cy]) =>
        sum + (2 * cross(ax, ay, bx, by) + 2 * cross(bx, by, cx, cy) + cross(ax, ay, cx, cy)) / 6,
      0,
    );
}

/** Chords with their ends on the curves, `refine` times as many as leave `sagMm`: what they leave out falls with the square of `refine`. */
export function chorded({ contours }: TrueOutline, sagMm: number, refine: number): CleanRegion {
  const rings = contours.map((pieces) =>
    pieces.flatMap(([ax, ay, bx, by, cx, cy]) => {
      // a parabola arc in n equal parts leaves its chords by |a − 2b + c| / 4n²
      const bend = Math.hypot(ax - 2 * bx + cx, ay - 2 * by + cy) / 4;
      const count = bend < 1e-9 ? 1 : refine * Math.ceil(Math.sqrt(bend / sagMm));
      return Array.from({ length: count }, (_, k) => k / count).flatMap((t) => {
        const u = 1 - t;
        return [u * u * ax + 2 * u * t * bx + t * t * cx, u * u * ay + 2 * u * t * by + t * t * cy];
      });
    }),
  );
  return packRings(rings) as CleanRegion;
}
