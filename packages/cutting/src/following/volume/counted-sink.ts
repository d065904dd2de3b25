import type { FollowingProfile } from '../following-profile.ts';
import type { EdgeRun } from './edge-run.ts';

/**
 * Clearances and rates that differ by less than this, relatively, are equal: rounding at joints of the
 * profile.
 */
const JOINT_REL_TOL = 1e-9;
/** Bisection steps for the position from which the tip sinks too fast: a millionth of the stretch. */
const FAST_BISECTIONS = 20;

/** A stretch of one axis edge on which the profile has no kinks. */
export interface SinkStretch {
  /** Its ends, as positions on the edge. */
  readonly from: number;
  readonly to: number;
  /** Sink rate of the tip at the start: mm of depth per mm along the axis. */
  readonly fromSink: number;
  /** The part of it that is counted. */
  readonly countedSink: number;
}

/**
 * Counted sink rate at a distance along the axis from the start of a stretch, where the tip sinks at `sink`.
 */
export type CountedSink = (alongMm: number, sink: number) => number;

/**
 * The sink rate up to which points behind the cutter count as cut deeper by its way up the axis: those over
 * which the profile rises at a lower rate. A point may count only if it counted all the way from its own
 * contact's normal, so the counted rate may rise no faster than the rise over the slowest point left behind.
 * On a ball of radius b the sine of its arc tangent rises by 1/b per mm of straight axis, less where the axis
 * bends; on other profiles it does not rise.
 */
export function countedSink(profile: FollowingProfile, run: EdgeRun, stretch: SinkStretch): CountedSink {
  const { from, to, fromSink } = stretch;
  const { ballMm: ball } = profile;
  if (ball === undefined) {
    return notRising(profile, run, stretch);
  }
  run.at(to);
  const isInBall = run.clearance <= Math.min(ball, profile.flankFromMm) * (1 + JOINT_REL_TOL);
  if (run.isParabola && isInBall && stretch.countedSink >= fromSink && isWhole(run, to, ball)) {
    return (_, sink) => sink;
  }
  const start = sineOf(stretch.countedSink);
  const rise = sineRise(run, from, ball, stretch.countedSink);
  // within the ball the sine of the tip's own rate rises ever faster, beyond it ever more slowly
  const fast = isInBall ? fastFrom(run, [from, to], ball, rise) : to;
  const fastMm = run.lengthBetween(from, fast);
  const fastSine = fast < to ? sineAt(run, fast, ball) : 1;
  return (alongMm, sink) => {
    const most = Math.min(start + rise * alongMm, fastSine + rise * Math.max(0, alongMm - fastMm));
    return most >= sineOf(sink) ? sink : most / Math.sqrt((1 - most) * (1 + most));
  };
}

function sineOf(tangent: number): number {
  return tangent === Infinity ? 1 : tangent / Math.sqrt(1 + tangent * tangent);
}

/** Upper bound on the rise of the sine per mm from a position on where at least `sink` is counted. */
function sineRise(run: EdgeRun, from: number, ball: number, sink: number): number {
  if (!run.isParabola) {
    return 1 / ball;
  }
  const excess = 1 + sink * sink;
  const bend = (run.bendAt(from) * ball) / excess;
  // points lie no farther away than the wall, and the radius of curvature is at least twice that distance
  const within = 1 - Math.cos(run.turnAt(from)) / (2 * excess);
  return Math.max(within, bend < 1 ? Math.sqrt((1 - bend) * (1 + bend)) : 0) / ball;
}

/** Sine of the arc tangent of the sink rate of a ball at a position where it touches both walls. */
function sineAt(run: EdgeRun, position: number, ball: number): number {
  run.at(position);
  const { clearance: r, rise } = run;
  const across = Math.sqrt((1 - rise) * (1 + rise));
  const far = (ball - r * across) * (ball + r * across);
  return far > 0 ? Math.min(1, (r * rise) / Math.sqrt(far)) : 1;
}

/** Position from which that sine rises faster than `rise` per mm; the end of the stretch if it never does. */
function fastFrom(run: EdgeRun, [from, to]: readonly [number, number], ball: number, rise: number): number {
  const isFast = (position: number): boolean => run.sineRate(position, ball) > rise * (1 + JOINT_REL_TOL);
  if (!isFast(to)) {
    return to;
  }
  let [low, high] = isFast(from) ? [from, from] : [from, to];
  for (let k = 0; k < FAST_BISECTIONS && high > low; k++) {
    const middle = (low + high) / 2;
    [low, high] = isFast(middle) ? [low, middle] : [middle, high];
  }
  return low;
}

/**
 * Whether, on a parabola arc up to a position, the slowest point left behind is the reflex vertex itself:
 * nothing is lost.
 */
function isWhole(run: EdgeRun, to: number, ball: number): boolean {
  run.at(to);
  const { clearance, rise } = run;
  const above = (ball - clearance) * (ball + clearance);
  return above > 0 && 1 + (clearance * rise) ** 2 / above <= (ball / clearance) ** 2 / 2;
}

/**
 * What is certain for any profile: the rate at the start, less the turn of the axis times the steepest slope.
 */
function notRising(profile: FollowingProfile, run: EdgeRun, stretch: SinkStretch): CountedSink {
  const turn = run.turnAt(stretch.to) - run.turnAt(stretch.from);
  run.at(stretch.to);
  // at the depth limit, take the slope just below it
  const clearance = Math.min(run.clearance, profile.reachMm * (1 - JOINT_REL_TOL));
  const lost = turn > 0 ? turn * profile.sinkAt(clearance) : 0;
  return (_, sink) => Math.max(0, Math.min(sink, stretch.countedSink - lost));
}
