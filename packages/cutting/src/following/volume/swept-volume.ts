import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { heightMoments } from '../../cutters/profile-moments.ts';
import { adaptiveIntegral, type Bounded } from '../../integrals/adaptive-integral.ts';
import type { FollowingProfile } from '../following-profile.ts';
import { countedSink } from './counted-sink.ts';
import { EdgeRun } from './edge-run.ts';
import { type RisingOrder, risingOrder } from './rising-order.ts';
import { sectorMoments, slantGain } from './sector-moments.ts';

/**
 * How far inside a stretch, as a share of half of it, its end is evaluated, so that the profile piece is its
 * own.
 */
const INWARD_SHARE = 1e-9;

/**
 * Bounds on the volume that a following cutter cuts in the cells with a clearance below the profile's reach.
 */
export interface SweptVolume {
  /** Upper bound on all that it cuts there. */
  readonly upperMm3: number;
  /** Lower bound on what it cuts there beyond the depths that the contacts' own normals give. */
  readonly gainMm3: number;
  /** Error of the integrals of both together. */
  readonly integralErrorMm3: number;
}

/**
 * Area by which the surface that a following cutter leaves exceeds that from the contacts' own normals, mm².
 * The error is an estimate, not a bound: the difference between counting the whole sink rate and what {@link
 * countedSink} is certain of.
 */
export function sweptSlant(axis: MedialAxis, profile: FollowingProfile, tolerance: number): Bounded {
  const sweep = new Sweep(axis, profile, tolerance);
  const sure = sweep.slanted(false);
  const all = sweep.slanted(true);
  return { value: all.value, error: Math.abs(all.value - sure.value) + sure.error + all.error };
}

/**
 * Bounds on the volume that a cutter of any profile cuts along the axis, by closed forms integrated along it.
 *
 * From above: at each depth, discs are swept up every axis edge, and only what a disc newly covers is
 * counted; a disc starts at each bottleneck, and at each node one is taken off for all but one of the edges
 * that end there. A point counts as often as the parts of the axis whose discs cover it are apart: once, save
 * for points that the cutter reaches from two sides with a higher tip between.
 *
 * From below: a point has at least the depth from its own contact's normal. It gains while the tip, on its
 * way up the axis, sinks faster than the profile over the point rises, as far as {@link countedSink} is
 * certain of that.
 *
 * @param tolerance tolerance of all integrals together, mm³
 */
export function sweptVolume(axis: MedialAxis, profile: FollowingProfile, tolerance: number): SweptVolume {
  const sweep = new Sweep(axis, profile, tolerance);
  const upper = sweep.newlyCovered();
  const gain = sweep.gained();
  return { upperMm3: upper.value, gainMm3: gain.value, integralErrorMm3: upper.error + gain.error };
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

  /** Upper bound on what is cut at clearances below the reach. */
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
      pollStep();
      if (this.#load(e)) {
        for (const [from, to] of this.#stretches()) {
          this.#add(from, to, (position) => this.#newAt(position));
        }
        if (this.#edge.r1 >= reachMm) {
          // what lies in front of the crossing belongs to contacts with more clearance
          this.#run.at(this.#run.positionOf(reachMm));
          this.#sum -= (1 - Math.acos(this.#run.rise) / Math.PI) * this.#body(reachMm);
        }
      }
    }
    return { value: this.#sum, error: this.#error };
  }

  /** Lower bound on what points behind the cutter gain. */
  gained(): Bounded {
    return this.#sumBehind((position, sink, counted) => this.#gainAt(position, sink, counted));
  }

  /**
   * Surface gained over points behind, by the counted or the whole sink rate, less the floor that a flat tip
   * sweeps.
   */
  slanted(isAll: boolean): Bounded {
    const { reachMm, tipFlatMm } = this.#profile;
    const { value, error } = this.#sumBehind((position, sink, counted) =>
      this.#slantAt(position, isAll ? sink : counted),
    );
    let floor = 0;
    for (const e of tipFlatMm > 0 ? this.#order.edges : []) {
      pollStep();
      if (this.#load(e) && this.#edge.r1 >= reachMm) {
        this.#run.at(this.#run.positionOf(reachMm));
        floor += tipFlatMm * tipFlatMm * Math.acos(this.#run.rise);
      }
    }
    return { value: value - floor, error };
  }

  /** Integral over all edges of f, given per unit of position, the sink rate and its counted part. */
  #sumBehind(f: (position: number, sink: number, counted: number) => number): Bounded {
    const { edgeFrom } = this.#axis;
    const { edges, sure } = this.#order;
    // share of the sink rate that is counted where each edge ends
    const shares = new Float64Array(edgeFrom.length);
    [this.#sum, this.#error] = [0, 0];
    edges.forEach((e, k) => {
      // nothing is certain of what comes up from a level cycle
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

  /** Loads an edge; whether any of it has a clearance below the reach. */
  #load(e: number): boolean {
    this.#edge.load(e);
    this.#run.load(this.#edge);
    return this.#edge.r0 < this.#profile.reachMm;
  }

  /** Stretches `[from, to]` of the loaded edge between kinks of the profile, up to its reach. */
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

  /** The least share that is counted at the end of any edge that ends at a node. */
  #startShare(node: number, shares: Float64Array): number {
    const { ending, starting } = this.#order;
    // at a bottleneck, points come up from the other side
    if (
      this.#axis.nodeR[node] > this.#profile.tipFlatMm &&
      (ending[node].length === 0 || starting[node].length > 1)
    ) {
      return 0;
    }
    return ending[node].reduce((least, e) => Math.min(least, shares[e]), 1);
  }

  /** Adds the integral of f over a stretch; returns the share of the sink rate that is counted at its end. */
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
      return sink > 0 ? f(position, sink, counted(run.lengthBetween(from, position), sink)) : 0;
    });
    const sink = this.#sinkAt(to, from, to);
    if (sink === Infinity) {
      return share;
    }
    return sink > 0 ? Math.min(1, counted(run.lengthBetween(from, to), sink) / sink) : 1;
  }

  #add(from: number, to: number, f: (position: number) => number): void {
    // denser towards the end: near the radius of a ball the tip sinks ever faster
    const length = to - from;
    const denser = (v: number): number => 2 * v * length * f(to - length * v * v);
    const { value, error } = adaptiveIntegral(denser, 0, 1, this.#tolerance);
    this.#sum += value;
    this.#error += error;
  }

  /** Sink rate of the tip at an end of a stretch, as the limit from inside. */
  #sinkAt(position: number, from: number, to: number): number {
    const run = this.#run;
    run.at((from + to) / 2);
    const middle = run.clearance;
    run.at(position);
    const within = run.clearance + (middle - run.clearance) * INWARD_SHARE;
    return run.rise > 0 ? run.rise * this.#profile.sinkAt(within) : 0;
  }

  /** Volume newly covered per unit of position. */
  #newAt(position: number): number {
    const profile = this.#profile;
    this.#run.at(position);
    const { clearance, rise, pace } = this.#run;
    const sink = rise * profile.sinkAt(clearance);
    const { chordMm2, turnMm2, squareMm2 } = sectorMoments(profile.cutter, profile.tipDepth(clearance), sink);
    return pace * (chordMm2 + sink * (Math.PI * squareMm2 - turnMm2));
  }

  /**
   * Volume gained per unit of position by the points behind over which the profile rises no faster than what
   * counts.
   */
  #gainAt(position: number, sink: number, counted: number): number {
    const { rise, pace, top } = this.#countedAt(position, counted);
    const { chordMm2, turnMm2, widthMm2, squareMm2 } = sectorMoments(this.#profile.cutter, top, counted);
    const behind = Math.acos(rise);
    return pace * (sink * (behind * squareMm2 - turnMm2) - (Math.sin(behind) * widthMm2 - chordMm2));
  }

  /** Area that the surface over the same points gains, per unit of position. */
  #slantAt(position: number, counted: number): number {
    const { rise, pace, top } = this.#countedAt(position, counted);
    return pace * slantGain(this.#profile.cutter, top, counted, Math.acos(rise));
  }

  /** The edge at a position, and the height on the profile up to which points count. */
  #countedAt(position: number, counted: number): { rise: number; pace: number; top: number } {
    this.#run.at(position);
    const { clearance, rise, pace } = this.#run;
    const top = Math.min(this.#profile.tipDepth(clearance), this.#profile.heightOfSlope(counted / rise));
    return { rise, pace, top };
  }

  /** Volume of the cutter below the face with its tip as deep as a clearance allows. */
  #body(clearance: number): number {
    const { cutter, tipFlatMm } = this.#profile;
    return clearance < tipFlatMm
      ? 0
      : Math.PI * heightMoments(cutter, this.#profile.tipDepth(clearance)).radiusSquaredMm3;
  }
}
