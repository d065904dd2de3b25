import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge } from '@pourproof/geometry';
import { pollStep, UnionFind } from '@pourproof/plane';

/**
 * Upper bound on what discs of radius `discMm` on the axis share, one at every level crossing, summed over all clearances from that radius up to
 * `mostMm`: ∫ area dR, mm³.
 *
 * Where discs stop at a clearance on both sides of a bottleneck they share the lens of two discs at most, which is a whole disc as they begin to
 * part (docs/method/stated-bounds.md); around a narrow part of m mouths they share no more than m − 1 discs. As the clearance passes a node from
 * which u edges rise, the sum of m − 1 over all narrow parts grows by u − 1 at most: by one at a bottleneck, and at a top, where two narrow parts
 * become one, it falls by one. A part of the artwork that is narrow throughout has no mouths. O(n log n).
 */
export function overlapBound(axis: MedialAxis, discMm: number, mostMm: number): number {
  const events = [...mouthEvents(axis), ...nearEvents(axis, discMm)].sort((a, b) => a.at - b.at);
  let mouths = 0;
  let near = 0;
  let slope = 0;
  let discs = 0;
  let from = 0;
  for (const event of events) {
    pollStep();
    const to = Math.min(event.at, mostMm);
    const start = Math.max(from, discMm);
    if (to > start) {
      const middle = near + slope * ((start + to) / 2 - from);
      discs += (to - start) * Math.max(0, Math.min(mouths, middle));
    }
    near += slope * (event.at - from) + event.near;
    mouths += event.mouths;
    slope += event.slope;
    from = event.at;
  }
  return discs * Math.PI * discMm * discMm;
}

/** A clearance at which the number of mouths beyond one changes, or how many discs near ones share and how fast that falls. */
interface Event {
  readonly at: number;
  readonly mouths: number;
  readonly near: number;
  readonly slope: number;
}

function* mouthEvents(axis: MedialAxis): Iterable<Event> {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  const rising = new Int32Array(nodeR.length);
  const isOnAxis = new Uint8Array(nodeR.length);
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    if (!edge.isSecondary(e)) {
      rising[edgeFrom[e]]++;
      isOnAxis[edgeFrom[e]] = 1;
      isOnAxis[edgeTo[e]] = 1;
    }
  }
  for (let k = 0; k < nodeR.length; k++) {
    pollStep();
    if (isOnAxis[k] !== 0 && rising[k] !== 1) {
      yield { at: nodeR[k], mouths: rising[k] - 1, near: 0, slope: 0 };
    }
  }
  for (const widest of widestOfParts(axis)) {
    yield { at: widest, mouths: 1, near: 0, slope: 0 };
  }
}

/** Chords by which the share of a lens, which is convex in the clearance, is bounded from above: a hundredth too much with these. */
const PARTING_STEPS = 8;

/** Where discs part within this share of a bottleneck's clearance, they count as one until they have: rounding would decide on anything finer. */
const PARTS_AT_ONCE_REL = 1e-6;

/**
 * How much of a disc the discs on both sides of each bottleneck share at most. Both are clear of its two ends, which are twice its clearance
 * apart, so that at clearance R their centres are 2·√(R² − r²) apart.
 */
function* nearEvents({ nodeR, bottleneckCount }: MedialAxis, discMm: number): Iterable<Event> {
  for (let k = 0; k < bottleneckCount; k++) {
    pollStep();
    const r = nodeR[k];
    const parted = (discMm * discMm) / (Math.hypot(r, discMm) + r);
    if (parted < PARTS_AT_ONCE_REL * r) {
      yield { at: r, mouths: 0, near: 1, slope: 0 };
      yield { at: r * (1 + PARTS_AT_ONCE_REL), mouths: 0, near: -1, slope: 0 };
      continue;
    }
    // finer at first, where they part fastest
    const riseAt = (step: number): number => parted * (step / PARTING_STEPS) ** 2;
    const shareAt = (rise: number): number => lensShare(Math.sqrt(rise * (2 * r + rise)) / discMm);
    let slope = 0;
    for (let step = 0; step <= PARTING_STEPS; step++) {
      const [here, next] = [riseAt(step), riseAt(step + 1)];
      const steeper = step < PARTING_STEPS ? (shareAt(next) - shareAt(here)) / (next - here) : 0;
      yield { at: r + here, mouths: 0, near: step === 0 ? 1 : 0, slope: steeper - slope };
      slope = steeper;
    }
  }
}

/** Area that two discs share whose centres are twice a share of their radius apart, over that of a disc. */
function lensShare(share: number): number {
  const s = Math.min(1, share);
  return (2 / Math.PI) * (Math.acos(s) - s * Math.sqrt(1 - s * s));
}

/** Greatest clearance of each separate part of the artwork. */
function widestOfParts({ edgeFrom, edgeTo, nodeR }: MedialAxis): readonly number[] {
  const parts = new UnionFind(nodeR.length);
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    parts.join(edgeFrom[e], edgeTo[e]);
  }
  const widest = new Map<number, number>();
  for (let k = 0; k < nodeR.length; k++) {
    pollStep();
    const part = parts.find(k);
    widest.set(part, Math.max(nodeR[k], widest.get(part) ?? 0));
  }
  return [...widest.values()];
}
