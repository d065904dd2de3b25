import type { OutlineGap } from '@pourproof/plane';

/** An opening at least this share of the line's extent beside it is a mouth and no slip (our choice). */
const MOUTH_SHARE = 0.5;
/** An outline that misses a side has this many others at least: a quadrilateral. */
const SIDES_OF_OUTLINE = 3;
/** A stretch is a side where it is this share of the mouth long; shorter ones are facets of curves (our choice). */
const SIDE_SHARE = 0.25;
/** Stretches that turn less than this, as a cosine, go straight on: 1° (our choice). */
const STRAIGHT_COS = Math.cos(Math.PI / 180);

/**
 * Whether a chain that could be closed by one straight line is more likely meant as a line, such as a centre line in the shape of
 * a U, a C, a V or a spiral: it is open across half of its extent or more and has not the sides of a figure that only misses one, or the
 * closing line would cross it.
 *
 * @param coords the chain as a ring, not repeating its first point
 */
export function isOpenLine(coords: readonly number[], gap: OutlineGap): boolean {
  const chain = fromEndToEnd(coords, gap);
  if (chain.length < 6) {
    return false;
  }
  return isCrossed(chain) || (isMouth(chain, gap) && sideCount(chain, gap.widthMm) < SIDES_OF_OUTLINE);
}

/** The ring turned so that it begins and ends at the gap. */
function fromEndToEnd(coords: readonly number[], { fromMm, toMm }: OutlineGap): readonly number[] {
  const indexOf = ([x, y]: readonly number[]): number => {
    for (let i = 0; i < coords.length; i += 2) {
      if (coords[i] === x && coords[i + 1] === y) {
        return i;
      }
    }
    return -1;
  };
  const [a, b] = [indexOf(fromMm), indexOf(toMm)];
  if (a < 0 || b < 0) {
    return [];
  }
  // the two ends stand beside each other in the ring; the chain begins at the later of them
  const start = (a + 2) % coords.length === b ? b : a;
  return [...coords.slice(start), ...coords.slice(0, start)];
}

/** Whether the gap is about as wide as the whole line in its direction. */
function isMouth(chain: readonly number[], { fromMm, toMm, widthMm }: OutlineGap): boolean {
  const [ux, uy] = [(toMm[0] - fromMm[0]) / widthMm, (toMm[1] - fromMm[1]) / widthMm];
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < chain.length; i += 2) {
    const along = (chain[i] as number) * ux + (chain[i + 1] as number) * uy;
    least = Math.min(least, along);
    most = Math.max(most, along);
  }
  return widthMm >= MOUTH_SHARE * (most - least);
}

/** How many straight stretches the chain has that are no facets of a curve. */
function sideCount(chain: readonly number[], mouthMm: number): number {
  const least = SIDE_SHARE * mouthMm;
  let count = 0;
  let [length, ux, uy] = [0, 0, 0];
  for (let i = 2; i < chain.length; i += 2) {
    const dx = (chain[i] as number) - (chain[i - 2] as number);
    const dy = (chain[i + 1] as number) - (chain[i - 1] as number);
    const step = Math.hypot(dx, dy);
    if (step === 0) {
      continue;
    }
    if (length > 0 && (dx * ux + dy * uy) / step >= STRAIGHT_COS) {
      length += step;
    } else {
      count += length >= least ? 1 : 0;
      [length, ux, uy] = [step, dx / step, dy / step];
    }
  }
  return count + (length >= least ? 1 : 0);
}

/** Whether a straight line between the ends of a chain crosses it on its way. */
function isCrossed(chain: readonly number[]): boolean {
  const n = chain.length;
  const [ax, ay] = [chain[n - 2] as number, chain[n - 1] as number];
  const [bx, by] = [chain[0] as number, chain[1] as number];
  const side = (x: number, y: number): number => (bx - ax) * (y - ay) - (by - ay) * (x - ax);
  // the stretches at the two ends meet the line there
  for (let i = 2; i + 4 < n; i += 2) {
    const [x, y, u, v] = chain.slice(i, i + 4) as [number, number, number, number];
    const [s, t] = [side(x, y), side(u, v)];
    if (s > 0 !== t > 0) {
      const at = s / (s - t);
      const along = (x + at * (u - x) - ax) * (bx - ax) + (y + at * (v - y) - ay) * (by - ay);
      if (along > 0 && along < (bx - ax) ** 2 + (by - ay) ** 2) {
        return true;
      }
    }
  }
  return false;
}
