import type { MedialAxis } from '@pourproof/geometry';
import { AxisEdge, findLevelCrossings, type LevelCrossings, openArcs, sectorArea } from '@pourproof/geometry';
import { pollStep } from '@pourproof/plane';
import { EdgeCells } from '../cells/edge-cells.ts';
import { type Cutter, radiusAt } from '../cutters/cutter.ts';
import { flankMoments, heightMoments } from '../cutters/profile-moments.ts';
import { adaptiveIntegral, type Bounded } from '../integrals/adaptive-integral.ts';

/**
 * Tolerance of the integrals over overlapping discs, relative to cell area times height: far below any
 * display.
 */
const OVERLAP_REL_TOL = 1e-11;

/**
 * All slices of what a cutter clears whose centre stays where a disc of `centreMm` fits. At reach t, the
 * cutter's radius at that height, the area is a quadratic in t less what discs on both sides of short
 * bottlenecks share.
 */
export class ReachedSlices {
  readonly centreMm: number;
  /** Area of the cells whose clearance lets the centre in, with length and turn of their contacts. */
  readonly #cellsMm2: number;
  readonly #lengthMm: number;
  readonly #turnRad: number;
  /** Sum of the angles of the discs' arcs at the level crossings. */
  readonly #sweepRad: number;
  readonly #overlapping: LevelCrossings;

  constructor(axis: MedialAxis, centreMm: number) {
    this.centreMm = centreMm;
    const edge = new AxisEdge(axis);
    const cells = new EdgeCells(axis, edge);
    let area = 0;
    let length = 0;
    let turn = 0;
    for (let e = 0; e < axis.edgeFrom.length; e++) {
      pollStep();
      const high = axis.nodeR[axis.edgeTo[e]];
      if (high < centreMm || edge.isSecondary(e)) {
        continue;
      }
      edge.load(e);
      const low = Math.max(edge.r0, centreMm);
      area += edge.area(low, high, 0);
      const spans = cells.spans(low, high);
      length += spans.lengthMm;
      turn += spans.turnRad;
    }
    this.#cellsMm2 = area;
    this.#lengthMm = length;
    this.#turnRad = turn;
    const crossings = findLevelCrossings(axis, centreMm);
    this.#sweepRad = crossings.sweep.reduce((sum, sweep) => sum + sweep, 0);
    this.#overlapping = overlappingOf(crossings);
  }

  /** Area of the slice at a reach of 0 … centreMm, mm². */
  areaAt(reachMm: number): number {
    const strip = this.centreMm - reachMm;
    const cells = this.#cellsMm2 - strip * this.#lengthMm - (strip * strip * this.#turnRad) / 2;
    return cells + (reachMm * reachMm * this.#sweepRad) / 2 - this.#overlapAt(reachMm);
  }

  /** Volume between two heights above the tip, mm³. */
  volumeBetween(cutter: Cutter, lowMm: number, highMm: number): Bounded {
    const low = heightMoments(cutter, lowMm);
    const high = heightMoments(cutter, highMm);
    const h = highMm - lowMm;
    const m1 = high.radiusMm2 - low.radiusMm2;
    const m2 = high.radiusSquaredMm3 - low.radiusSquaredMm3;
    const c = this.centreMm;
    const cells =
      h * this.#cellsMm2 -
      this.#lengthMm * (c * h - m1) -
      (this.#turnRad * (c * c * h - 2 * c * m1 + m2)) / 2 +
      (this.#sweepRad * m2) / 2;
    const overlap = this.#overlapBetween(cutter, lowMm, highMm, (reach) => this.#overlapAt(reach));
    return { value: cells - overlap.value, error: overlap.error };
  }

  /**
   * Area of the walls between two heights above the tip, mm², with level steps of the profile between them.
   */
  wallBetween(cutter: Cutter, lowMm: number, highMm: number): Bounded {
    const low = flankMoments(cutter, lowMm);
    const high = flankMoments(cutter, highMm);
    const flank = high.flankMm - low.flankMm;
    const weighted = high.flankRadiusMm2 - low.flankRadiusMm2;
    const turned = this.#turnRad * (this.centreMm * flank - weighted);
    const walls = this.#lengthMm * flank + turned + this.#sweepRad * weighted;
    const hidden = this.#overlapBetween(
      cutter,
      lowMm,
      highMm,
      (reach, slant) => reach * this.#hiddenTurn(reach) * slant,
    );
    let level = 0;
    for (const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm } of cutter.pieces) {
      if (fromHeightMm > lowMm && fromHeightMm < highMm && toHeightMm === fromHeightMm) {
        level += this.areaAt(toRadiusMm) - this.areaAt(fromRadiusMm);
      }
    }
    return { value: walls + level - hidden.value, error: hidden.error };
  }

  #overlapBetween(
    cutter: Cutter,
    low: number,
    high: number,
    f: (reach: number, slant: number) => number,
  ): Bounded {
    if (this.#overlapping.edge.length === 0) {
      return { value: 0, error: 0 };
    }
    const tolerance = OVERLAP_REL_TOL * this.#cellsMm2 * (high - low);
    const last = cutter.pieces[cutter.pieces.length - 1];
    const stretches = [
      ...cutter.pieces.map((piece) => [piece.fromHeightMm, piece.toHeightMm]),
      [last.toHeightMm, Infinity],
    ];
    let value = 0;
    let error = 0;
    for (const [from, to] of stretches) {
      const part = adaptiveIntegral(
        (height) => f(radiusAt(cutter, height), slantAt(cutter, height)),
        Math.max(low, from),
        Math.min(high, to),
        tolerance,
      );
      value += part.value;
      error += part.error;
    }
    return { value, error };
  }

  /** Area that overlapping discs share, which the sum of their sectors counts twice. */
  #overlapAt(reach: number): number {
    const crossings = { ...this.#overlapping, radius: reach };
    if (crossings.edge.length === 0 || reach === 0) {
      return 0;
    }
    const alone = crossings.sweep.reduce((sum, sweep) => sum + (reach * reach * sweep) / 2, 0);
    return alone - sectorArea(crossings, openArcs(crossings));
  }

  /** Angle of the discs' arcs that lies inside other discs. */
  #hiddenTurn(reach: number): number {
    const crossings = { ...this.#overlapping, radius: reach };
    if (crossings.edge.length === 0 || reach === 0) {
      return 0;
    }
    const { from, to } = openArcs(crossings);
    return (
      crossings.sweep.reduce((sum, sweep) => sum + sweep, 0) -
      to.reduce((sum, end, k) => sum + end - from[k], 0)
    );
  }
}

/** Length of the profile per mm of height. */
function slantAt(cutter: Cutter, height: number): number {
  for (const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } of cutter.pieces) {
    if (height >= fromHeightMm && height < toHeightMm) {
      if (arc === undefined) {
        return Math.hypot(1, (toRadiusMm - fromRadiusMm) / (toHeightMm - fromHeightMm));
      }
      const below = arc.centreHeightMm - height;
      return arc.radiusMm / Math.sqrt((arc.radiusMm - below) * (arc.radiusMm + below));
    }
  }
  return 1;
}

/** The level crossings that bound narrow parts in which discs overlap. */
function overlappingOf(crossings: LevelCrossings): LevelCrossings {
  const { isTrimmed } = openArcs(crossings);
  const parts = new Set(crossings.closes.filter((_, k) => isTrimmed[k] !== 0));
  const keep = crossings.edge.map((_, k) => k).filter((k) => parts.has(crossings.closes[k]));
  const pick = (list: readonly number[]): number[] => keep.map((k) => list[k]);
  return {
    ...crossings,
    edge: pick(crossings.edge),
    x: pick(crossings.x),
    y: pick(crossings.y),
    angle: pick(crossings.angle),
    sweep: pick(crossings.sweep),
    closes: pick(crossings.closes),
  };
}
