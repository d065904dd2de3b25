import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { heightMoments } from '../../cutters/profile-moments.ts';
import { adaptiveIntegral, type Bounded } from '../../integrals/adaptive-integral.ts';
import type { FollowingProfile } from '../following-profile.ts';
import { countedSink } from './counted-sink.ts';
import { EdgeRun } from './edge-run.ts';
import { type RisingOrder, risingOrder } from './rising-order.ts';
import { sectorMoments, slantGain } from './sector-moments.ts';

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
 * Area in mm² by which the surface that a following cutter leaves slants more than from the contacts' own normals. The error is an estimate, no bound: how
 * far what {@link countedSink} is sure of is from counting all that the tip sinks.
 */
export function sweptSlant(axis: MedialAxis, profile: FollowingProfile, tolerance: number): Bounded {
  const sweep = new Sweep(axis, profile, tolerance);
  const sure = sweep.slanted(false);
  const all = sweep.slanted(true);
  return { value: all.value, error: Math.abs(all.value - sure.value) + sure.error + all.error };
}

/**
 * The volume that a cutter with any profile cuts on its way along the axis, from above and from below, in closed forms and integrals along the axis.
 *
 * From above: at each depth the discs around the axis are swept up every edge. What a disc covers newly is counted, a disc at each bottleneck too, and at
 * each node one for all but one of the edges that end there. That counts a point as often as the parts of the axis whose discs cover it are apart:
 * once, but for points that the cutter reaches from two sides with a higher tip between. From below: a point has at least the depth from its own
 * normal, and gains while the tip on its way up the axis sinks faster than the profile over the point rises, as far as {@link countedSink} is sure of it.
 *
 * @param tolerance how far all integrals together may be off, mm³
 */
export function sweptVolume(axis: MedialAxis, profile: FollowingProfile, tolerance: number): SweptVolume {
  const sweep = new Sweep(axis, profile, tolerance);
  const most = sweep.newlyCovered();
  const gain = sweep.gained();
  return { mostMm3: most.value, gainMm3: gain.value, integralErrorMm3: most.error + gain.error };
}

class Sweep {
  readonly #axis: MedialAxis;
  readonly #profile: FollowingProfile;
  readonly #edge: AxisEdge;
  readonly #run: EdgeRun;
  readonly #tolerance: number;
  readonly #order: RisingOrder;
  #sum = 0;
  #error = 0;

  constructor(axis: MedialAxis, profile: FollowingProfile, tolerance: number) {
    this.#axis = axis;
    this.#profile = profile;
    this.#edge = new AxisEdge(axis);
    this.#run = new EdgeRun(axis);
    this.#tolerance = tolerance / (2 * Math.max(1, axis.edgeFrom.length));
    this.#order = risingOrder(axis, this.#edge);
  }

  /** All that is covered below the reach. */
  newlyCovered(): Bounded {
    const { nodeR } = this.#axis;
    const { reachMm } = this.#profile;
    const { edges, ending, starting } = this.#order;
    [this.#sum, this.#error] = [0, 0];
    nodeR.forEach((r, v) => {
      if (r < reachMm && ending[v].length + starting[v].length > 0) {
        this.#sum += (1 - ending[v].length) * this.#body(r);
      }
    });
    for (const e of edges) {
      if (this.#load(e)) {
        for (const [from, to] of this.#stretches()) {
          this.#add(from, to, (position) => this.#newAt(position));
        }
        if (this.#edge.r1 >= reachMm) {
          // in front of the crossing lies what is told from contacts with more clearance
          this.#run.at(this.#run.positionOf(reachMm));
          this.#sum -= (1 - Math.acos(this.#run.rise) / Math.PI) * this.#body(reachMm);
        }
      }
    }
    return { value: this.#sum, error: this.#error };
  }

  /** What points behind gain. */
  gained(): Bounded {
    return this.#sumBehind((position, sink, counted) => this.#gainAt(position, sink, counted));
  }

  /** By how much the surface over points behind slants more, with what is counted or all that the tip sinks; less the floor that a flat tip goes over there. */
  slanted(isAll: boolean): Bounded {
    const { reachMm, tipFlatMm } = this.#profile;
    const { value, error } = this.#sumBehind((position, sink, counted) =>
      this.#slantAt(position, isAll ? sink : counted),
    );
    let floor = 0;
    for (const e of tipFlatMm > 0 ? this.#order.edges : []) {
      if (this.#load(e) && this.#edge.r1 >= reachMm) {
        this.#run.at(this.#run.positionOf(reachMm));
        floor += tipFlatMm * tipFlatMm * Math.acos(this.#run.rise);
      }
    }
    return { value: value - floor, error };
  }

  /** Sum over all edges of what f tells for each unit of position, where the tip sinks and how much of it is counted. */
  #sumBehind(f: (position: number, sink: number, counted: number) => number): Bounded {
    const { edgeFrom } = this.#axis;
    const { edges, sure } = this.#order;
    // share of the tip's sinking that is counted where each edge ends
    const shares = new Float64Array(edgeFrom.length);
    [this.#sum, this.#error] = [0, 0];
    edges.forEach((e, k) => {
      // nothing is sure of what comes up from a level ring
      let share = k < sure ? this.#startShare(edgeFrom[e], shares) : 0;
      if (this.#load(e)) {
        if (this.#edge.r0 < this.#profile.tipFlatMm) {
          share = 1;
        }
        for (const [from, to] of this.#stretches()) {
          share = this.#behind(from, to, share, f);
        }
      }
      shares[e] = share;
    });
    return { value: this.#sum, error: this.#error };
  }

  /** Loads an edge; whether the cutter is anywhere on it with less clearance than its reach. */
  #load(e: number): boolean {
    this.#edge.load(e);
    this.#run.load(this.#edge);
    return this.#edge.r0 < this.#profile.reachMm;
  }

  /** Stretches of the loaded edge without kinks of the profile, up to its reach: from, to. */
  #stretches(): [number, number][] {
    const run = this.#run;
    const { r0, r1 } = this.#edge;
    const { tipFlatMm, reachMm, kinksMm } = this.#profile;
    const stretches: [number, number][] = [];
    let from = r0 < tipFlatMm ? run.positionOf(tipFlatMm) : run.from;
    for (const kink of [...kinksMm, Math.min(r1, reachMm)]) {
      // a level edge is one stretch
      const to = kink >= r1 ? run.to : run.positionOf(kink);
      if (to > from) {
        stretches.push([from, to]);
        from = to;
      }
    }
    return stretches;
  }

  /** The least share that is counted where the edges end that end at a node. */
  #startShare(node: number, shares: Float64Array): number {
    const { ending, starting } = this.#order;
    // points beyond a bottleneck come up from the other side
    if (
      this.#axis.nodeR[node] > this.#profile.tipFlatMm &&
      (ending[node].length === 0 || starting[node].length > 1)
    ) {
      return 0;
    }
    return ending[node].reduce((least, e) => Math.min(least, shares[e]), 1);
  }

  /** Adds what f tells of a stretch; the share of the tip's sinking that is counted at its end. */
  #behind(
    from: number,
    to: number,
    share: number,
    f: (position: number, sink: number, counted: number) => number,
  ): number {
    const run = this.#run;
    const fromSink = this.#sinkAt(from, from, to);
    const stretch = { from, to, fromSink, countedSink: share * fromSink };
    const counted = countedSink(this.#profile, run, stretch);
    this.#add(from, to, (position) => {
      run.at(position);
      const sink = run.rise * this.#profile.sinkAt(run.clearance);
      return sink > 0 ? f(position, sink, counted(run.wayBetween(from, position), sink)) : 0;
    });
    const sink = this.#sinkAt(to, from, to);
    if (sink === Infinity) {
      return share;
    }
    return sink > 0 ? Math.min(1, counted(run.wayBetween(from, to), sink) / sink) : 1;
  }

  #add(from: number, to: number, f: (position: number) => number): void {
    // towards the radius of a ball, where the tip sinks ever faster, places crowd
    const way = to - from;
    const crowded = (v: number): number => 2 * v * way * f(to - way * v * v);
    const { value, error } = adaptiveIntegral(crowded, 0, 1, this.#tolerance);
    this.#sum += value;
    this.#error += error;
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
  #gainAt(position: number, sink: number, counted: number): number {
    const { rise, pace, top } = this.#countedAt(position, counted);
    const { chordMm2, turnMm2, widthMm2, squareMm2 } = sectorMoments(this.#profile.cutter, top, counted);
    const behind = Math.acos(rise);
    return pace * (sink * (behind * squareMm2 - turnMm2) - (Math.sin(behind) * widthMm2 - chordMm2));
  }

  /** Area that the surface over the same points gains. */
  #slantAt(position: number, counted: number): number {
    const { rise, pace, top } = this.#countedAt(position, counted);
    return pace * slantGain(this.#profile.cutter, top, counted, Math.acos(rise));
  }

  /** The run at a position, with the height on the profile up to which points are counted. */
  #countedAt(position: number, counted: number): { rise: number; pace: number; top: number } {
    this.#run.at(position);
    const { clearance, rise, pace } = this.#run;
    const top = Math.min(this.#profile.tipDepth(clearance), this.#profile.heightOfSlope(counted / rise));
    return { rise, pace, top };
  }

  /** Volume of the cutter with its tip as deep as a clearance allows. */
  #body(clearance: number): number {
    const { cutter, tipFlatMm } = this.#profile;
    return clearance < tipFlatMm
      ? 0
      : Math.PI * heightMoments(cutter, this.#profile.tipDepth(clearance)).radiusSquaredMm3;
  }
}
