import type { EdgeRun } from './edge-run.ts';
import type { FollowProfile } from './follow-profile.ts';

/** Share by which a clearance may seem to lie above the rounded tip through rounding. */
const SAME_SHARE = 1e-9;

/** How much of the tip's sinking is counted along a stretch of the axis, for each way from its start and what the tip sinks there in full. */
export type CountedSink = (wayMm: number, sink: number) => number;

/**
 * The sinking, mm for each mm of way, up to which points behind the cutter are counted as following it up the axis: those that a point's own height on the profile
 * rises less fast than. Such a point must have been so all the way from its own contact's normal, so counted sinking may rise no faster than the
 * slowest of those left behind: on a ball of radius b, with ω its arc tangent, sin ω by 1/b for each mm of a straight way (then all
 * left behind stay so), and less where the axis bends. On other profiles it does not rise.
 *
 * @param fromSink what is counted at the start; the whole of `wholeSink` where nothing is lost
 */
export function countedSink(
  profile: FollowProfile,
  run: EdgeRun,
  [from, to]: readonly [from: number, to: number],
  [fromSink, wholeSink]: readonly [fromSink: number, wholeSink: number],
): CountedSink {
  const { cutter, flankFromMm } = profile;
  const { arc } = cutter.pieces[0];
  const sloped = cutter.pieces.filter((piece) => piece.toRadiusMm > piece.fromRadiusMm);
  if (arc === undefined || arc.centreRadiusMm > 0 || sloped.length > 2) {
    return notRising(profile, run, [from, to], fromSink);
  }
  const ball = arc.radiusMm;
  const excess = 1 + fromSink * fromSink;
  let share = 1;
  if (run.isParabola) {
    if (fromSink >= wholeSink && isWhole(run, to, ball, flankFromMm)) {
      return (_, sink) => sink;
    }
    const bend = (run.bendAt(from) * ball) / excess;
    // points lie no farther off than the wall, and the axis bends no more than once in twice that
    const within = 1 - Math.cos(run.turnAt(from)) / (2 * excess);
    share = Math.max(within, bend < 1 ? Math.sqrt((1 - bend) * (1 + bend)) : 0);
  }
  const sine = fromSink / Math.sqrt(excess);
  return (wayMm, sink) => {
    const most = sine + (share * wayMm) / ball;
    return most >= 1 ? sink : Math.min(sink, most / Math.sqrt((1 - most) * (1 + most)));
  };
}

/** Whether on a parabola arc up to a position the point site itself is the one that is left behind the slowest: then nothing is lost. */
function isWhole(run: EdgeRun, to: number, ball: number, flankFromMm: number): boolean {
  run.at(to);
  const { clearance, rise } = run;
  if (clearance > Math.min(ball, flankFromMm) * (1 + SAME_SHARE)) {
    return false;
  }
  const above = (ball - clearance) * (ball + clearance);
  return above > 0 && 1 + (clearance * rise) ** 2 / above <= (ball / clearance) ** 2 / 2;
}

/** What is sure whatever the profile: no more than at the start, less what the axis turns times the steepest slope. */
function notRising(
  profile: FollowProfile,
  run: EdgeRun,
  [from, to]: readonly [number, number],
  fromSink: number,
): CountedSink {
  const turn = run.turnAt(to) - run.turnAt(from);
  run.at(to);
  const { clearance } = run;
  // at the depth limit the slope there is that below it
  const lost = turn > 0 ? turn * profile.sinkAt(Math.min(clearance, profile.reachMm * (1 - SAME_SHARE))) : 0;
  return (_, sink) => Math.max(0, Math.min(sink, fromSink - lost));
}
