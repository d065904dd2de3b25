import type { ArcRings, MedialAxis } from '@pourproof/geometry';
import { AxisEdge, enteringRadius } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { EdgeCells } from '../cells/edge-cells.ts';
import { ClearingCut } from '../clearing/clearing-cut.ts';
import { heightAt, radiusAt } from '../cutters/cutter.ts';
import { DepthField } from '../depth/depth-field.ts';
import { FollowingProfile } from '../following/following-profile.ts';
import { RoundedTipCut } from '../following/rounded-tip-cut.ts';
import { StraightFlankCut } from '../following/straight-flank-cut.ts';
import type { StepCut } from '../slices/step-cut.ts';
import { CHORD_TOLERANCE_MM } from '../tolerances.ts';
import type { CarveOptions, CarveStep, Carving, StepAddition } from './carving.ts';
import { confinedCentre } from './confined-centre.ts';
import { CutUnion } from './cut-union.ts';
import { newPlaces } from './new-places.ts';

/**
 * What several cutters, used one after the other, remove from an artwork: outline, areas in mm², volume in
 * mm³ and the depth everywhere. The cut is the union of what each step cuts. Where a step follows, its sloped
 * walls bound the pocket and clearing steps stay inside them. An empty artwork gives an empty cut.
 *
 * @example
 * const axis = medialAxis(region);
 * const flat = { cutter: flatCutter(3.175), way: 'clear' } as const;
 * const vee = { cutter: veeCutter({ includedRad: Math.PI / 3, diameterMm: 12.7 }), way: 'follow' } as const;
 * carve(axis, [flat], { depthMm: 3 }).volumeMm3;
 * carve(axis, [vee, flat], { depthMm: 3 }).perCutter[1]?.volumeMm3; // what the second cutter adds
 *
 * @throws {RangeError} when no step is given, a depth or tolerance is not above 0, or a cutter cannot follow
 */
export function carve(axis: MedialAxis, steps: readonly CarveStep[], options: CarveOptions): Carving {
  const { depthMm, toleranceMm = CHORD_TOLERANCE_MM } = options;
  checkAbove0('depthMm', depthMm);
  checkAbove0('toleranceMm', toleranceMm);
  if (steps.length === 0) {
    throw new RangeError('no steps are given; give one cutter or more');
  }
  const reaches = steps.map((step) => reachOf(step, depthMm));
  const cuts = stepCutsOf(axis, steps, reaches, toleranceMm);
  const whole = new CutUnion(cuts, toleranceMm);
  const volume = whole.volume();
  const walls = whole.wallArea();
  const face = whole.sliceArea(0);
  const { value: floorAreaMm2, error: floorAreaErrorMm2 } = whole.sliceArea(whole.depthLimitMm);
  // what each step adds takes as long as all the rest, and not everybody asks
  let added: readonly StepAddition[] | undefined;
  const perCutter = (): readonly StepAddition[] => {
    added ??= additions(axis, whole, reaches, volume.value);
    return added;
  };
  let field: DepthField | undefined;
  const check = (depth: number): number => {
    if (!(depth >= 0)) {
      throw new RangeError(`a depth below the face is ${depth}; give a number of millimetres, 0 or more`);
    }
    return depth;
  };
  return {
    axis,
    stepCuts: cuts,
    toleranceMm,
    outline: whole.sliceOutline(0),
    areaMm2: face.value,
    areaErrorMm2: face.error,
    // of a cell a nanometre wide the moments cancel, and rounding may leave less than nothing
    volumeMm3: Math.max(0, volume.value),
    volumeErrorMm3: volume.error,
    floorAreaMm2,
    floorAreaErrorMm2,
    get scallopedFloorMm2() {
      return Math.max(0, floorAreaMm2 - perCutter().reduce((sum, step) => sum + step.floorMm2, 0));
    },
    wallAreaMm2: walls.value,
    wallAreaErrorMm2: walls.error,
    ledgeAreaMm2: whole.ledgeArea(),
    depthLimitMm: whole.depthLimitMm,
    maxDepthMm: Math.max(...cuts.map((cut) => cut.deepestMm)),
    get perCutter() {
      return perCutter();
    },
    sweptFloorOutline: () =>
      sweptFloor(cuts, whole.depthLimitMm, toleranceMm)?.sliceOutline(whole.depthLimitMm) ?? NO_RINGS,
    sliceArea: (depth) => whole.sliceArea(check(depth)).value,
    sliceOutline: (depth) => whole.sliceOutline(check(depth)),
    contours: (depths) => depths.map((depth) => whole.sliceOutline(check(depth))),
    depthAt(xMm, yMm) {
      field ??= new DepthField(axis, cuts);
      return field.depthAt(xMm, yMm);
    },
  };
}

/** How deep a step goes, and why no deeper. */
type StepReach = Pick<StepAddition, 'depthMm' | 'limitedBy'>;

function reachOf({ cutter, way, depthMm = Infinity }: CarveStep, deepest: number): StepReach {
  checkAbove0('depthMm of a step', depthMm === Infinity ? deepest : depthMm);
  const asked = Math.min(deepest, depthMm);
  const flanksEnd = way === 'follow' ? heightAt(cutter, cutter.diameterMm / 2) : Infinity;
  if (Math.min(cutter.cuttingLengthMm, flanksEnd) >= asked) {
    return { depthMm: asked, limitedBy: undefined };
  }
  return cutter.cuttingLengthMm < flanksEnd
    ? { depthMm: cutter.cuttingLengthMm, limitedBy: 'length' }
    : { depthMm: flanksEnd, limitedBy: 'diameter' };
}

function stepCutsOf(
  axis: MedialAxis,
  steps: readonly CarveStep[],
  reaches: readonly StepReach[],
  toleranceMm: number,
): StepCut[] {
  const profiles = steps.map((step, k) =>
    step.way === 'follow' ? new FollowingProfile(step.cutter, reaches[k].depthMm) : undefined,
  );
  const follows = profiles.filter((profile) => profile !== undefined);
  return steps.map(({ cutter }, k) => {
    const profile = profiles[k];
    if (profile !== undefined) {
      return profile.isStraight
        ? new StraightFlankCut(axis, profile)
        : new RoundedTipCut(axis, profile, toleranceMm);
    }
    const { depthMm } = reaches[k];
    const centreMm =
      follows.length === 0
        ? radiusAt(cutter, depthMm)
        : Math.min(...follows.map((follow) => confinedCentre(cutter, depthMm, follow)));
    return new ClearingCut(axis, cutter, depthMm, enteringRadius(axis, centreMm));
  });
}

function additions(
  axis: MedialAxis,
  whole: CutUnion,
  reaches: readonly StepReach[],
  volumeMm3: number,
): StepAddition[] {
  const { cuts, toleranceMm } = whole;
  const deepest = Math.max(...cuts.map((cut) => cut.depthMm));
  let before = { areaMm2: 0, volumeMm3: 0, floorMm2: 0, lengthMm: 0, centreMm: Infinity };
  return cuts.map((cut, k) => {
    const isWhole = k + 1 === cuts.length;
    const soFar = isWhole ? whole : new CutUnion(cuts.slice(0, k + 1), toleranceMm);
    const centreMm = Math.min(before.centreMm, cut.edgeClearanceMm);
    const now = {
      areaMm2: soFar.sliceArea(0).value,
      volumeMm3: isWhole ? volumeMm3 : soFar.volume().value,
      floorMm2: sweptFloor(cuts.slice(0, k + 1), deepest, toleranceMm)?.sliceArea(deepest).value ?? 0,
      lengthMm: centreMm === Infinity ? 0 : reachedEdge(axis, centreMm),
      centreMm,
    };
    const added: StepAddition = {
      areaMm2: Math.max(0, now.areaMm2 - before.areaMm2),
      lengthMm: Math.max(0, now.lengthMm - before.lengthMm),
      volumeMm3: Math.max(0, now.volumeMm3 - before.volumeMm3),
      floorMm2: Math.max(0, now.floorMm2 - before.floorMm2),
      places: centreMm < before.centreMm ? newPlaces(axis, centreMm, before.centreMm) : [],
      ...reaches[k],
    };
    before = now;
    return added;
  });
}

const NO_RINGS: ArcRings = {
  coords: new Float64Array(),
  ringEnds: new Uint32Array(),
  bulges: new Float64Array(),
};

/** The cut of those clearing cutters whose flat bottoms go over the deepest floor; `null` where none does. */
function sweptFloor(cuts: readonly StepCut[], deepest: number, toleranceMm: number): CutUnion | null {
  const flats = cuts.filter(
    (cut) => cut instanceof ClearingCut && cut.depthMm === deepest && radiusAt(cut.cutter, 0) > 0,
  );
  return flats.length === 0 ? null : new CutUnion(flats, toleranceMm);
}

/** Length of the artwork's outline whose contacts have a clearance of at least a radius, mm. */
function reachedEdge(axis: MedialAxis, radiusMm: number): number {
  const { edgeFrom, edgeTo, nodeR } = axis;
  const edge = new AxisEdge(axis);
  const cells = new EdgeCells(axis, edge);
  let sum = 0;
  for (let e = 0; e < edgeFrom.length; e++) {
    pollStep();
    const high = nodeR[edgeTo[e]];
    if (high >= radiusMm && !edge.isSecondary(e)) {
      edge.load(e);
      sum += cells.spans(Math.max(edge.r0, radiusMm), high).lengthMm;
    }
  }
  return sum;
}

function checkAbove0(name: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new RangeError(`${name} is ${value}; give a number of millimetres above 0`);
  }
}
