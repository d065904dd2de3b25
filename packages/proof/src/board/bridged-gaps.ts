import { fibreVector } from '@pourproof/geometry';
import { type CleanRegion, type Point, radians, ringStart } from '@pourproof/plane';
import type { BlockMeasures } from './block-measures.ts';
import { inFace } from './block-measures.ts';
import { clipSegment } from './clip-segment.ts';

/** Wood between two walls that colour can cross along the fibres. */
export interface BridgedGap {
  /** Shortest way along the fibres from wall to wall, mm. */
  readonly gapMm: number;
  /** How far it extends across the fibres, mm. */
  readonly widthMm: number;
  readonly atMm: Point;
  /** Along the middle of the gap. */
  readonly path: Float64Array;
}

/** Distance between the fibres that are looked along, mm: finer than a streak that is seen. */
const STEP_MM = 0.2;

/**
 * Gaps of wood within one block that colour bridges at the median travel, looked along fibres 0.2 mm apart.
 *
 * A gap that a glue line parts is not bridged. Gaps that lie beside each other are one.
 */
export function bridgedGaps(cut: CleanRegion, { block, travel }: BlockMeasures): readonly BridgedGap[] {
  const reach = travel.medianMm * inFace(radians(block.diveDeg));
  if (!(reach > 0)) {
    return [];
  }
  const [fx, fy] = fibreVector(radians(block.grainDeg));
  const toPlane = (u: number, v: number): Point => [u * fx - v * fy, u * fy + v * fx];
  const open: Strip[] = [];
  const done: Strip[] = [];
  for (const [line, crossings] of [...crossingsByLine(cut, fx, fy)].toSorted(([a], [b]) => a - b)) {
    const v = (line + 0.5) * STEP_MM;
    const us = crossings.toSorted((a, b) => a - b);
    // odd gaps between crossings are wood
    for (let k = 1; k + 1 < us.length; k += 2) {
      const from = us[k] as number;
      const to = us[k + 1] as number;
      if (to - from > 0 && to - from <= reach && isWhole(block.region, toPlane(from, v), toPlane(to, v))) {
        const strip = open.find((each) => each.line === line - 1 && each.from < to && from < each.to);
        if (strip === undefined) {
          open.push({
            line,
            from,
            to,
            points: [[(from + to) / 2, v]],
            least: to - from,
            at: [(from + to) / 2, v],
          });
        } else {
          extend(strip, line, from, to, v);
        }
      }
    }
    for (let k = open.length - 1; k >= 0; k--) {
      if ((open[k] as Strip).line < line) {
        done.push(...open.splice(k, 1));
      }
    }
  }
  return [...done, ...open].map((strip) => ({
    gapMm: strip.least,
    widthMm: strip.points.length * STEP_MM,
    atMm: toPlane(...strip.at),
    path: Float64Array.from(strip.points.flatMap(([u, v]) => toPlane(u, v))),
  }));
}

interface Strip {
  line: number;
  from: number;
  to: number;
  least: number;
  at: Point;
  readonly points: Point[];
}

function extend(strip: Strip, line: number, from: number, to: number, v: number): void {
  strip.line = line;
  strip.from = from;
  strip.to = to;
  strip.points.push([(from + to) / 2, v]);
  if (to - from < strip.least) {
    strip.least = to - from;
    strip.at = [(from + to) / 2, v];
  }
}

/** Places along the fibre where each looked-along fibre meets the cut's outline. */
function crossingsByLine(cut: CleanRegion, fx: number, fy: number): ReadonlyMap<number, number[]> {
  const lines = new Map<number, number[]>();
  const { coords } = cut;
  for (let k = 0; k < cut.ringEnds.length; k++) {
    const start = ringStart(cut, k);
    const end = cut.ringEnds[k] as number;
    for (let i = start; i < end; i++) {
      const j = i + 1 === end ? start : i + 1;
      const [ax, ay] = [coords[2 * i] as number, coords[2 * i + 1] as number];
      const [bx, by] = [coords[2 * j] as number, coords[2 * j + 1] as number];
      const [ua, va] = [ax * fx + ay * fy, ay * fx - ax * fy];
      const [ub, vb] = [bx * fx + by * fy, by * fx - bx * fy];
      const first = Math.ceil(Math.min(va, vb) / STEP_MM - 0.5);
      const last = Math.ceil(Math.max(va, vb) / STEP_MM - 0.5) - 1;
      for (let line = first; line <= last; line++) {
        const u = ua + (((line + 0.5) * STEP_MM - va) / (vb - va)) * (ub - ua);
        const list = lines.get(line);
        if (list === undefined) {
          lines.set(line, [u]);
        } else {
          list.push(u);
        }
      }
    }
  }
  return lines;
}

function isWhole(region: CleanRegion | null, [ax, ay]: Point, [bx, by]: Point): boolean {
  if (region === null) {
    return true;
  }
  const parts = clipSegment(region, [ax, ay, bx, by], [0, 0]);
  const [first] = parts;
  return parts.length === 1 && first !== undefined && first[1] - first[0] > 1 - 1e-9;
}
