import { AxisEdge } from '../measure/axis-edge.ts';
import type { MedialAxis } from '../medial-axis/medial-axis.ts';
import { adaptiveIntegral } from './adaptive-integral.ts';
import { type CountedSink, countedSink } from './counted-sink.ts';
import { EdgeRun } from './edge-run.ts';
import type { FollowProfile } from './follow-profile.ts';
import { heightMoments } from './profile-moments.ts';
import { sectorMoments } from './sector-moments.ts';

/** Share of the way to the middle of a stretch at which its end is asked for, so that the piece of the profile is the stretch's own. */
const WITHIN_SHARE = 1e-9;

/** What a following cutter cuts beyond what its contacts' own normals tell, in mm³, where the clearance is below the profile's reach. */
export interface SweptVolume {
  /** All that it cuts in the cells below that clearance, no less than the truth. */
  readonly mostMm3: number;
  /** What it cuts there more than from the contacts' own normals, no more than the truth. */
  readonly gainMm3: number;
  /** What the integrals of both together may be off. */
  readonly integralErrorMm3: number;
}

/**
 * The volume that a cutter with any profile cuts on its way along the axis, from above and from below, in closed forms and integrals along the axis.
 *
 * From above: at each depth the discs around the axis are swept up every edge. What a disc covers newly is counted, a disc at each neck too, and at
 * each node one for all but one of the edges that end there. That counts a point as often as the parts of the axis whose discs cover it are apart:
 * once, but for points that the cutter reaches from two sides with a higher tip between. From below: a point has at least the depth from its own
 * normal, and gains while the tip on its way up the axis sinks faster than the profile over the point rises, as far as {@link countedSink} is sure of it.
 *
 * @param tolerance how far all integrals together may be off, mm³
 */
export function sweptVolume(axis: MedialAxis, profile: FollowProfile, tolerance: number): SweptVolume {
  return new Sweep(axis, profile, tolerance).whole();
}

class Sweep {
  readonly #axis: MedialAxis;
  readonly #profile: FollowProfile;
  readonly #edge: AxisEdge;
  readonly #run: EdgeRun;
  readonly #tolerance: number;
  readonly #kinks: readonly number[];
  #most = 0;
  #gain = 0;
  #error = 0;

  constructor(axis: MedialAxis, profile: FollowProfile, tolerance: number) {
    this.#axis = axis;
    this.#profile = profile;
    this.#edge = new AxisEdge(axis);
    this.#run = new EdgeRun(axis);
    this.#tolerance = tolerance / (2 * Math.max(1, axis.edgeFrom.length));
    this.#kinks = profile.kinksMm;
  }

  whole(): SweptVolume {
    const { edgeFrom, edgeTo, nodeR } = this.#axis;
    const { tipFlatMm, reachMm } = this.#profile;
    const { order, sure, ending, starting } = risingOrder(this.#axis, this.#edge);
    // share of the tip's sinking that is counted where edges start
    const counted = new Float64Array(nodeR.length).fill(1);
    for (let v = 0; v < nodeR.length; v++) {
      if (nodeR[v] < reachMm && ending[v] + starting[v] > 0) {
        this.#most += (1 - ending[v]) * this.#body(nodeR[v]);
      }
      // points beyond a neck come up from the other side
      if (nodeR[v] > tipFlatMm && (ending[v] === 0 || starting[v] > 1)) {
        counted[v] = 0;
      }
    }
    order.forEach((e, k) => {
      this.#edge.load(e);
      // nothing is sure of what comes up from a level ring
      const known = k < sure ? counted[edgeFrom[e]] : 0;
      const share = this.#edge.r0 < tipFlatMm ? 1 : known;
      const left = nodeR[edgeFrom[e]] < reachMm ? this.#up(share) : share;
      counted[edgeTo[e]] = Math.min(counted[edgeTo[e]], left);
    });
    return { mostMm3: this.#most, gainMm3: this.#gain, integralErrorMm3: this.#error };
  }

  /** Adds what belongs to the loaded edge below the reach; the share of sinking that is counted at its high end. */
  #up(fromShare: number): number {
    const run = this.#run;
    const { r0, r1 } = this.#edge;
    const { tipFlatMm, reachMm } = this.#profile;
    run.load(this.#edge);
    let share = fromShare;
    let from = r0 < tipFlatMm ? run.positionOf(tipFlatMm) : run.from;
    const highest = Math.min(r1, reachMm);
    for (const kink of [...this.#kinks, highest]) {
      // a level edge is one stretch
      const to = kink >= r1 ? run.to : run.positionOf(kink);
      if (to > from) {
        share = this.#stretch(from, to, share);
        from = to;
      }
    }
    if (r1 >= reachMm) {
      // in front of the mouth lies what is told from contacts with more clearance
      run.at(run.positionOf(reachMm));
      this.#most -= (1 - Math.acos(run.rise) / Math.PI) * this.#body(reachMm);
    }
    return share;
  }

  /** Adds a stretch without kinks; the share of sinking that is counted at its end. */
  #stretch(from: number, to: number, fromShare: number): number {
    const run = this.#run;
    const startSink = this.#sinkAt(from, from, to);
    const counted = countedSink(this.#profile, run, [from, to], [fromShare * startSink, startSink]);
    this.#most += this.#integral(from, to, (position) => this.#newAt(position));
    this.#gain += this.#integral(from, to, (position) =>
      this.#gainAt(position, run.wayBetween(from, position), counted),
    );
    const sink = this.#sinkAt(to, from, to);
    if (sink === Infinity) {
      return fromShare;
    }
    return sink > 0 ? Math.min(1, counted(run.wayBetween(from, to), sink) / sink) : 1;
  }

  #integral(from: number, to: number, f: (position: number) => number): number {
    // towards the radius of a ball, where the tip sinks ever faster, places crowd
    const way = to - from;
    const crowded = (v: number): number => 2 * v * way * f(to - way * v * v);
    const { value, error } = adaptiveIntegral(crowded, 0, 1, this.#tolerance);
    this.#error += error;
    return value;
  }

  /** What the tip sinks for each mm of way at the end of a stretch, as it is within it. */
  #sinkAt(position: number, from: number, to: number): number {
    const run = this.#run;
    run.at((from + to) / 2);
    const middle = run.clearance;
    run.at(position);
    const within = run.clearance + (middle - run.clearance) * WITHIN_SHARE;
    return run.rise > 0 ? run.rise * this.#profile.sinkAt(within) : 0;
  }

  /** Volume that is newly covered for each unit of position. */
  #newAt(position: number): number {
    const profile = this.#profile;
    this.#run.at(position);
    const { clearance, rise, pace } = this.#run;
    const sink = rise * profile.sinkAt(clearance);
    const { chordMm2, turnMm2, squareMm2 } = sectorMoments(profile.cutter, profile.tipDepth(clearance), sink);
    return pace * (chordMm2 + sink * (Math.PI * squareMm2 - turnMm2));
  }

  /** Volume that points behind gain for each unit of position: those on whose side of the contacts the profile rises no faster than what is counted. */
  #gainAt(position: number, wayMm: number, countedAt: CountedSink): number {
    const profile = this.#profile;
    this.#run.at(position);
    const { clearance, rise, pace } = this.#run;
    const sink = rise * profile.sinkAt(clearance);
    if (!(sink > 0)) {
      return 0;
    }
    const counted = countedAt(wayMm, sink);
    const top = Math.min(profile.tipDepth(clearance), profile.heightOfSlope(counted / rise));
    const { chordMm2, turnMm2, widthMm2, squareMm2 } = sectorMoments(profile.cutter, top, counted);
    const behind = Math.acos(rise);
    return pace * (sink * (behind * squareMm2 - turnMm2) - (Math.sin(behind) * widthMm2 - chordMm2));
  }

  /** Volume of the cutter with its tip as deep as a clearance allows. */
  #body(clearance: number): number {
    const { cutter, tipFlatMm } = this.#profile;
    return clearance < tipFlatMm
      ? 0
      : Math.PI * heightMoments(cutter, this.#profile.tipDepth(clearance)).radiusSquaredMm3;
  }
}

/** All edges but spokes, the first `sure` of them each after those that end where it starts; and how many edges end and start at each node. */
function risingOrder(
  { edgeFrom, edgeTo, nodeR }: MedialAxis,
  edge: AxisEdge,
): { order: readonly number[]; sure: number; ending: Int32Array; starting: Int32Array } {
  const ending = new Int32Array(nodeR.length);
  const starting = new Int32Array(nodeR.length);
  const from: number[][] = Array.from(nodeR, () => []);
  for (let e = 0; e < edgeFrom.length; e++) {
    if (!edge.isSpoke(e)) {
      ending[edgeTo[e]]++;
      starting[edgeFrom[e]]++;
      from[edgeFrom[e]].push(e);
    }
  }
  const open = ending.slice();
  const ready = [...from.keys()].filter((v) => open[v] === 0);
  const order: number[] = [];
  for (let v = ready.pop(); v !== undefined; v = ready.pop()) {
    order.push(...from[v]);
    for (const e of from[v]) {
      open[edgeTo[e]]--;
      if (open[edgeTo[e]] === 0) {
        ready.push(edgeTo[e]);
      }
    }
  }
  const sure = order.length;
  const known = new Set(order);
  order.push(...from.flat().filter((e) => !known.has(e)));
  return { order, sure, ending, starting };
}
