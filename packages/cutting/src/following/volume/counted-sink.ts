import type { FollowingProfile } from '../following-profile.ts';
import type { EdgeRun } from './edge-run.ts';

/** Share by which a clearance may seem to lie above the rounded tip through rounding. */
const SAME_SHARE = 1e-9;
/** Steps by which the place is found from which on sinking is too fast: a millionth of its stretch. */
const HALVINGS = 20;

/** A stretch of one axis edge without kinks of the profile. */
export interface SinkStretch {
  /** Positions. */
  readonly from: number;
  readonly to: number;
  /** What the tip sinks at the start, mm for each mm of way. */
  readonly fromSink: number;
  /** What is counted of that. */
  readonly countedSink: number;
}

/** How much sinking is counted after a way from the start of a stretch, where the tip sinks as given. */
export type CountedSink = (wayMm: number, sink: number) => number;

/**
 * The sinking, mm for each mm of way, up to which points behind the cutter are counted as following it up the axis: those over which the profile rises by less.
 * The counted ones must have been so all the way from their own contact's normal, so what is counted may rise no faster than the slowest of
 * those left behind: on a ball of radius b, with ω its arc tangent, sin ω by 1/b for each mm of a straight way, less where the axis bends. On
 * other profiles it does not rise.
 */
export function countedSink(profile: FollowingProfile, run: EdgeRun, stretch: SinkStretch): CountedSink {
  const { from, to, fromSink } = stretch;
  const { ballMm: ball } = profile;
  if (ball === undefined) {
    return notRising(profile, run, stretch);
  }
  run.at(to);
  const isInBall = run.clearance <= Math.min(ball, profile.flankFromMm) * (1 + SAME_SHARE);
  if (run.isParabola && isInBall && stretch.countedSink >= fromSink && isWhole(run, to, ball)) {
    return (_, sink) => sink;
  }
  const start = sineOf(stretch.countedSink);
  const rise = sineRise(run, from, ball, stretch.countedSink);
  // within the ball the tip's own sine rises ever faster, beyond ever more slowly
  const fast = isInBall ? fastFrom(run, [from, to], ball, rise) : to;
  const fastWay = run.wayBetween(from, fast);
  const fastSine = fast < to ? sineAt(run, fast, ball) : 1;
  return (wayMm, sink) => {
    const most = Math.min(start + rise * wayMm, fastSine + rise * Math.max(0, wayMm - fastWay));
    return most >= sineOf(sink) ? sink : most / Math.sqrt((1 - most) * (1 + most));
  };
}

function sineOf(tangent: number): number {
  return tangent === Infinity ? 1 : tangent / Math.sqrt(1 + tangent * tangent);
}

/** What the sine may rise for each mm of way from a position on where at least `sink` is counted. */
function sineRise(run: EdgeRun, from: number, ball: number, sink: number): number {
  if (!run.isParabola) {
    return 1 / ball;
  }
  const excess = 1 + sink * sink;
  const bend = (run.bendAt(from) * ball) / excess;
  // points lie no farther off than the wall, and the axis bends no more than once in twice that
  const within = 1 - Math.cos(run.turnAt(from)) / (2 * excess);
  return Math.max(within, bend < 1 ? Math.sqrt((1 - bend) * (1 + bend)) : 0) / ball;
}

/** Sine of the arc tangent of what a ball sinks at a position where it touches both walls. */
function sineAt(run: EdgeRun, position: number, ball: number): number {
  run.at(position);
  const { clearance: r, rise } = run;
  const across = Math.sqrt((1 - rise) * (1 + rise));
  const far = (ball - r * across) * (ball + r * across);
  return far > 0 ? Math.min(1, (r * rise) / Math.sqrt(far)) : 1;
}

/** Position from which on that sine rises faster than `rise` for each mm of way; the end where it does not. */
function fastFrom(run: EdgeRun, [from, to]: readonly [number, number], ball: number, rise: number): number {
  const isFast = (position: number): boolean => run.sineRate(position, ball) > rise * (1 + SAME_SHARE);
  if (!isFast(to)) {
    return to;
  }
  let [low, high] = isFast(from) ? [from, from] : [from, to];
  for (let k = 0; k < HALVINGS && high > low; k++) {
    const middle = (low + high) / 2;
    [low, high] = isFast(middle) ? [low, middle] : [middle, high];
  }
  return low;
}

/** Whether on a parabola arc up to a position the point site itself is the one that is left behind the slowest: then nothing is lost. */
function isWhole(run: EdgeRun, to: number, ball: number): boolean {
  run.at(to);
  const { clearance, rise } = run;
  const above = (ball - clearance) * (ball + clearance);
  return above > 0 && 1 + (clearance * rise) ** 2 / above <= (ball / clearance) ** 2 / 2;
}

/** What is sure whatever the profile: no more than at the start, less what the axis turns times the steepest slope. */
function notRising(profile: FollowingProfile, run: EdgeRun, stretch: SinkStretch): CountedSink {
  const turn = run.turnAt(stretch.to) - run.turnAt(stretch.from);
  run.at(stretch.to);
  // at the depth limit the slope there is that below it
  const clearance = Math.min(run.clearance, profile.reachMm * (1 - SAME_SHARE));
  const lost = turn > 0 ? turn * profile.sinkAt(clearance) : 0;
  return (_, sink) => Math.max(0, Math.min(sink, stretch.countedSink - lost));
}
