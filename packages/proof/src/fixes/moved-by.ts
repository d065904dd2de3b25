import {
  applyTransform,
  type Bounds,
  BoxIndex,
  boundsOf,
  type Drawing,
  type Point,
  ringCoords,
  scaling,
} from '@pourproof/plane';
import type { FindingPlace } from '../report/finding-schema.ts';
import type { FixStep } from '../report/fix-schema.ts';
import type { Moved } from './new-places.ts';

/** Places nearer to each other than this are one place beyond what a way out moves by itself, mm (our choice: what a maker points at). */
const SAME_PLACE_MM = 1;

/** How much larger some ways out make the artwork. */
export function factorOf(steps: readonly FixStep[]): number {
  return steps.reduce((factor, step) => (step.do === 'scale' ? factor * step.factor : factor), 1);
}

/** Where a drawing that some ways out have changed has what it had before. */
export function movedBy(steps: readonly FixStep[], before: Drawing, after: Drawing): Moved {
  return {
    to:
      before === after || isRedrawn(steps) ? scaledBy(factorOf(steps)) : withItsOutline(before, after, steps),
    slackMm: steps.reduce((sum, step) => sum + movedMm(step), SAME_PLACE_MM),
  };
}

/** Ways out after which outlines are others. */
function isRedrawn(steps: readonly FixStep[]): boolean {
  return steps.some((step) => step.do === 'widen' || step.do === 'part-by-wall' || step.do === 'join-ends');
}

/** Each place goes with the outline that is nearest to its middle; scaled where outlines cannot be matched. */
function withItsOutline(before: Drawing, after: Drawing, steps: readonly FixStep[]): Moved['to'] {
  const [boxes, movedBoxes] = [boxesOf(before), boxesOf(after)];
  return boxes.length !== movedBoxes.length || boxes.length === 0
    ? scaledBy(factorOf(steps))
    : withNearest(boxes, movedBoxes);
}

function withNearest(boxes: readonly Bounds[], movedBoxes: readonly Bounds[]): Moved['to'] {
  const index = new BoxIndex(Float64Array.from(boxes.flat()));
  return (place) => {
    const nearest = nearestTo(middleOf(place), boxes, index);
    return moved(place, fitted(boxes[nearest] as Bounds, movedBoxes[nearest] as Bounds));
  };
}

function scaledBy(factor: number): Moved['to'] {
  const by = scaling(factor);
  return (place) => moved(place, (point) => applyTransform(by, point));
}

function moved(place: FindingPlace, to: (point: Point) => Point): FindingPlace {
  return { ...place, atMm: to(place.atMm), outline: place.outline.map((line) => line.map(to)) };
}

function boxesOf({ shapes }: Drawing): readonly Bounds[] {
  return shapes.flatMap(({ region }) =>
    Array.from(region.ringEnds, (_, k) => boundsOf(ringCoords(region, k))),
  );
}

function middleOf({ atMm, outline }: FindingPlace): Point {
  const [left, top, right, bottom] = boundsOf([atMm, ...outline.flat()].flat());
  return [(left + right) / 2, (top + bottom) / 2];
}

/** The box that is nearest to a point; of several around it the smallest. */
function nearestTo([x, y]: Point, boxes: readonly Bounds[], index: BoxIndex): number {
  const size = ([left, top, right, bottom]: Bounds): number => right - left + bottom - top;
  let [best, least] = [0, Infinity];
  index.visitNear(
    x,
    y,
    (off) => off <= least,
    (k) => {
      const box = boxes[k] as Bounds;
      const [left, top, right, bottom] = box;
      const off = Math.hypot(Math.max(0, left - x, x - right), Math.max(0, top - y, y - bottom));
      const beyond = size(box) - size(boxes[best] as Bounds) || k - best;
      if (off < least || (off === least && beyond < 0)) {
        [best, least] = [k, off];
      }
    },
  );
  return best;
}

/** The map that takes one box to another. */
function fitted(from: Bounds, to: Bounds): (point: Point) => Point {
  const wide = (to[2] - to[0]) / (from[2] - from[0] || 1);
  const high = (to[3] - to[1]) / (from[3] - from[1] || 1);
  return ([x, y]) => [to[0] + (x - from[0]) * wide, to[1] + (y - from[1]) * high];
}

/** How far a way out moves walls at the most, beyond their outlines as a whole. */
function movedMm(step: FixStep): number {
  switch (step.do) {
    case 'widen':
    case 'track':
    case 'move-apart':
      return step.byMm;
    case 'part-by-wall':
      return step.widthMm;
    default:
      return 0;
  }
}
