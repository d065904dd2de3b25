import { medialAxis } from '@pourproof/geometry';
import { cleanFrom } from '../shapes/clean-from.ts';
import { type LabelledShape, labelledShapes } from './labelled-strokes.ts';
import type { StrokeRule, ThinPlace } from './stroke-rules.ts';

/** What a rule gets wrong of all labelled shapes. */
export interface Score {
  /** Shapes with a thin place where there is no label. */
  falseAlarms: number;
  /** Labels without a thin place. */
  misses: number;
  /** Found, but taken for a stroke where it is a taper, or the other way round. */
  wrongKind: number;
  /** Found, but in several places. */
  broken: number;
  /** What went wrong, shape by shape. */
  readonly faults: string[];
}

/** The rule against all labelled shapes with arcs flattened to a tolerance. */
export function scoreOf(rule: StrokeRule, toleranceMm: number): Score {
  const score: Score = { falseAlarms: 0, misses: 0, wrongKind: 0, broken: 0, faults: [] };
  for (const shape of labelledShapes) {
    const [outer, ...holes] = shape.rings(toleranceMm);
    compare(shape, rule.thinPlaces(medialAxis(cleanFrom([outer], holes)), shape.limitMm), score);
  }
  return score;
}

function compare(shape: LabelledShape, found: readonly ThinPlace[], score: Score): void {
  const labels = [
    ...(shape.strokes ?? []).map((at) => ({ at, kind: 'stroke' })),
    ...(shape.tapers ?? []).map((at) => ({ at, kind: 'taper' })),
  ];
  // labels are on middle lines, and half the limit beside one is outside of what is too thin
  const isAt = (place: ThinPlace, at: readonly [number, number]): boolean =>
    place.lines.some((line) => distance(line, at) <= shape.limitMm / 2);
  const stray = found.find((place) => !labels.some(({ at }) => isAt(place, at)));
  if (stray !== undefined) {
    score.falseAlarms++;
    score.faults.push(`${shape.name}: false alarm at ${stray.lines[0].map((v) => v.toFixed(2))}`);
  }
  for (const { at, kind } of labels) {
    const places = found.filter((place) => isAt(place, at));
    if (places.length === 0) {
      score.misses++;
      score.faults.push(`${shape.name}: nothing at ${at}`);
      continue;
    }
    // a rule that knows no tapers takes all for strokes
    if (places.some((place) => (place.kind ?? 'stroke') !== kind)) {
      score.wrongKind++;
      score.faults.push(`${shape.name}: ${kind} at ${at} taken for the other`);
    }
    if (places.length > 1) {
      score.broken++;
      score.faults.push(`${shape.name}: ${places.length} places at ${at}`);
    }
  }
}

function distance([ax, ay, bx, by]: ThinPlace['lines'][number], [px, py]: readonly [number, number]): number {
  const [dx, dy] = [bx - ax, by - ay];
  const t = ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy || 1);
  const s = Math.min(1, Math.max(0, t));
  return Math.hypot(ax + s * dx - px, ay + s * dy - py);
}
