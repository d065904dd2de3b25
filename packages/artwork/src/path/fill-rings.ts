import type { Transform } from '@pourproof/plane';
import { CubicFlattener } from '../flatten/cubic-flattener.ts';
import { flattenEllipseArc } from '../flatten/flatten-ellipse-arc.ts';
import { isLarge } from './is-large.ts';
import type { Path, Segment } from './path.ts';
import type { RingSink, RingWriter } from './ring-writer.ts';
import { transformSegment } from './transform-path.ts';

/**
 * Writes each subpath, through a map, as a closed ring for filling, within `tolerance` of the mapped curves
 * and with exactly their area. Open subpaths are closed by a straight line, as SVG fills them. Rings of fewer
 * than three points are left out: they hold no area.
 */
export function fillRings(out: RingWriter, path: Path, toMm: Transform, tolerance: number): void {
  const curves = new CubicFlattener();
  if (isLarge(path)) {
    const count = new PointCount();
    writeRings(count, path, toMm, tolerance, curves);
    out.expect(2 * count.points);
  }
  writeRings(out, path, toMm, tolerance, curves);
}

/** Counts points as a writer of rings takes them, before any are dropped. */
class PointCount implements RingSink {
  points = 0;

  push(): void {
    this.points++;
  }

  pop(): void {
    this.points--;
  }

  closeRing(): void {}
}

function writeRings(
  out: RingSink,
  path: Path,
  toMm: Transform,
  tolerance: number,
  curves: CubicFlattener,
): void {
  for (const sub of path) {
    const [a, b, c, d, e, f] = toMm;
    out.push(a * sub.x0 + c * sub.y0 + e, b * sub.x0 + d * sub.y0 + f);
    sub.segments.forEach((s) => {
      if (s.kind === 'line') {
        out.push(a * s.x + c * s.y + e, b * s.x + d * s.y + f);
      } else {
        appendCurve(out, transformSegment(toMm, s), tolerance, curves);
      }
    });
    out.closeRing();
  }
}

/** Appends a curve without its start point. */
function appendCurve(out: RingSink, s: Segment, tolerance: number, curves: CubicFlattener): void {
  if (s.kind === 'cubic') {
    curves.cubic(out, s.x0, s.y0, s.x1, s.y1, s.x2, s.y2, s.x, s.y, tolerance);
  } else if (s.kind === 'arc') {
    flattenEllipseArc(out, s.arc, tolerance);
    // the end as the file gives it, so that pieces join to the last digit
    out.pop();
    out.push(s.x, s.y);
  }
}
