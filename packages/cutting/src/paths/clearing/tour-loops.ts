import { pollStep } from '@pourproof/plane';
import { arcCentre } from '../arc-centre.ts';

/** A closed curve to be walked once. */
export interface Loop {
  /** `[x, y, bulge, …]`. */
  readonly points: readonly number[];
  /** Whether the move from the last point back to the first cuts nothing and only closes the loop. */
  readonly isLoose: boolean;
  /** Centre of a disc, cut before, in which a loose loop starts and ends. */
  readonly hub?: readonly [number, number];
}

/** A run over loops and links. */
export interface Tour {
  /** `[x, y, bulge, …]`. */
  readonly points: number[];
  /** The loop at which it starts. */
  readonly first: Loop;
}

/** A link between two loops; it starts and ends on moves of theirs, at points that need not be corners. */
export interface LoopLink {
  readonly loopA: number;
  readonly moveA: number;
  readonly ax: number;
  readonly ay: number;
  readonly loopB: number;
  readonly moveB: number;
  readonly bx: number;
  readonly by: number;
  /** A point that the link passes; undefined where it is straight. */
  readonly via: readonly [number, number] | undefined;
}

/**
 * One run for each connected set of loops: it walks every loop once and every link in both directions, and
 * ends where it began, or at the last point of its first loop if that is loose. The links must not form a
 * cycle. Linear time, save for sorting the links along their loops.
 */
export function tourLoops(loops: readonly Loop[], links: readonly LoopLink[]): Tour[] {
  const stops = loops.map((): Stop[] => []);
  links.forEach((link, k) => {
    stops[link.loopA].push(stopAt(loops[link.loopA], link.moveA, link.ax, link.ay, 2 * k));
    stops[link.loopB].push(stopAt(loops[link.loopB], link.moveB, link.bx, link.by, 2 * k + 1));
  });
  const laid = loops.map((loop, k) => layOut(loop.points, stops[k]));
  const isWalked = new Uint8Array(loops.length);
  const runs: Tour[] = [];
  for (let k = 0; k < loops.length; k++) {
    pollStep();
    if (isWalked[k] === 0) {
      runs.push({ points: tourFrom(k, loops[k].isLoose, laid, links, isWalked), first: loops[k] });
    }
  }
  return runs;
}

interface Stop {
  readonly move: number;
  /**
   * Distance from the start of the move, squared: it grows along lines and along arcs of less than half a
   * turn.
   */
  readonly along: number;
  readonly x: number;
  readonly y: number;
  /** Link k has the end 2k on its loop A and 2k + 1 on its loop B. */
  readonly end: number;
}

function stopAt({ points }: Loop, move: number, x: number, y: number, end: number): Stop {
  const at = move % (points.length / 3);
  return { move: at, along: (x - points[3 * at]) ** 2 + (y - points[3 * at + 1]) ** 2, x, y, end };
}

/** A loop with its stops among its points; `end[i]` is the end of the link at point i, -1 for none. */
interface LaidLoop {
  readonly points: readonly number[];
  readonly end: readonly number[];
  /** Index of the point at which each end of a link lies. */
  readonly indexOf: ReadonlyMap<number, number>;
}

function layOut(loop: readonly number[], stops: Stop[]): LaidLoop {
  stops.sort((a, b) => a.move - b.move || a.along - b.along);
  const points: number[] = [];
  const end: number[] = [];
  const indexOf = new Map<number, number>();
  const count = loop.length / 3;
  let s = 0;
  for (let i = 0; i < count; i++) {
    pollStep();
    points.push(loop[3 * i], loop[3 * i + 1], loop[3 * i + 2]);
    end.push(-1);
    if (s >= stops.length || stops[s].move !== i) {
      continue;
    }
    const j = (i + 1) % count;
    const bend = arcOf(loop[3 * i], loop[3 * i + 1], loop[3 * j], loop[3 * j + 1], loop[3 * i + 2]);
    for (; s < stops.length && stops[s].move === i; s++) {
      const n = points.length;
      points[n - 1] = bend(points[n - 3], points[n - 2], stops[s].x, stops[s].y);
      indexOf.set(stops[s].end, end.length);
      points.push(stops[s].x, stops[s].y, bend(stops[s].x, stops[s].y, loop[3 * j], loop[3 * j + 1]));
      end.push(stops[s].end);
    }
  }
  return { points, end, indexOf };
}

/** The bulge of a part of an arc between two of its points. */
function arcOf(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  bulge: number,
): (px: number, py: number, qx: number, qy: number) => number {
  if (bulge === 0) {
    return () => 0;
  }
  const [cx, cy] = arcCentre(ax, ay, bx, by, bulge);
  return (px, py, qx, qy) => {
    const [ux, uy, vx, vy] = [px - cx, py - cy, qx - cx, qy - cy];
    return Math.tan(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) / 4);
  };
}

interface Frame {
  readonly loop: number;
  /** Point at which the loop was entered. */
  readonly start: number;
  /** End, on this loop, of the link by which it was entered; -1 for the first loop. */
  readonly entry: number;
  /** Points walked so far. */
  walked: number;
  /** Whether the link at the current point is being walked. */
  isOnLink: boolean;
}

function tourFrom(
  first: number,
  isLoose: boolean,
  laid: readonly LaidLoop[],
  links: readonly LoopLink[],
  isWalked: Uint8Array,
): number[] {
  const run: number[] = [];
  const frames: Frame[] = [];
  const enter = (loop: number, start: number, entry: number): void => {
    isWalked[loop] = 1;
    frames.push({ loop, start, entry, walked: 0, isOnLink: false });
  };
  enter(first, 0, -1);
  for (let frame = frames.at(-1); frame !== undefined; frame = frames.at(-1)) {
    pollStep();
    const { points, end } = laid[frame.loop];
    const count = end.length;
    if (frame.walked > count || (isLoose && frame.entry < 0 && frame.walked === count)) {
      // back at the point of entry, from which the link leads back
      frames.pop();
      pushVia(run, links, frame.entry);
      continue;
    }
    const at = (frame.start + frame.walked) % count;
    const out = end[at];
    const isLeaving = !frame.isOnLink && frame.walked < count && out >= 0 && out !== frame.entry;
    pushPoint(
      run,
      points[3 * at],
      points[3 * at + 1],
      isLeaving || frame.walked === count ? 0 : points[3 * at + 2],
    );
    if (isLeaving) {
      frame.isOnLink = true;
      pushVia(run, links, out);
      const loop = (out & 1) === 0 ? links[out >> 1].loopB : links[out >> 1].loopA;
      enter(loop, laid[loop].indexOf.get(out ^ 1) ?? 0, out ^ 1);
    } else {
      frame.isOnLink = false;
      frame.walked++;
    }
  }
  return run;
}

/** Adds a point; where the run is there already, only the bulge of the next move. */
function pushPoint(run: number[], x: number, y: number, bulge: number): void {
  const n = run.length;
  if (n > 0 && run[n - 3] === x && run[n - 2] === y) {
    run[n - 1] = bulge;
  } else {
    run.push(x, y, bulge);
  }
}

function pushVia(run: number[], links: readonly LoopLink[], end: number): void {
  const via = end < 0 ? undefined : links[end >> 1].via;
  if (via !== undefined) {
    pushPoint(run, via[0], via[1], 0);
  }
}
