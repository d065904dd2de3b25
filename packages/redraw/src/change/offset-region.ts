import { booleans, combineShapes, resolveRegions } from '@pourproof/arrangement';
import { reachedOutline } from '@pourproof/cutting';
import { type ArcRings, type MedialAxis, medialAxis, outsideOf, packArcRings } from '@pourproof/geometry';
import { type CleanRegion, type Region, ringStart } from '@pourproof/plane';
import { flatArcs } from './flat-arcs.ts';
import { bevelled, cornerArcs, type Joins, mitred } from './joins.ts';
import { type KeptPlace, keptOpen } from './kept-open.ts';

/** How an outline is moved. */
export interface OffsetOptions {
  /** By default mitred. */
  readonly joins?: Joins;
  /** What would close is kept so wide, mm, or as wide as drawn where that is less; 0, the default, lets it close. */
  readonly keepMm?: number;
  /** The farthest that chords lie from their curves, in what is given and in what comes back, mm. */
  readonly toleranceMm: number;
}

/** A region with its outline moved. */
export interface OffsetRegion {
  readonly region: CleanRegion;
  /** Where two sides would have met. */
  readonly kept: readonly KeptPlace[];
}

/**
 * A region with its outline moved by `byMm` everywhere: outwards, or inwards where that is negative. Strokes become wider by twice that.
 *
 * The outline is the exact offset of the polygon, from the medial axis of the wood around it or of the region itself, with arcs as chords that
 * keep their area; straight walls stay parallel to themselves, to rounding.
 *
 * @throws {RangeError} when a length is not finite or the tolerance not above 0
 * @example
 * const bar = resolveRegions([{ ...packRings([[0, 0, 40, 0, 40, 5, 0, 5]]), fillRule: 'nonzero' }]).region;
 * signedArea(offsetRegion(bar, 0.25, { toleranceMm: 0.005 }).region); // 40.5 × 5.5
 */
export function offsetRegion(region: CleanRegion, byMm: number, options: OffsetOptions): OffsetRegion {
  const { joins = 'mitre', keepMm = 0, toleranceMm } = options;
  if (!Number.isFinite(byMm) || !(keepMm >= 0) || !(toleranceMm > 0)) {
    throw new RangeError(`byMm is ${byMm}, keepMm ${keepMm}, toleranceMm ${toleranceMm}; give lengths in mm`);
  }
  if (byMm === 0 || region.ringEnds.length === 0) {
    return { region, kept: [] };
  }
  const setting = { joins, keepMm, toleranceMm };
  return byMm > 0 ? widened(region, byMm, setting) : narrowed(region, -byMm, setting);
}

type Setting = Required<OffsetOptions>;

/** What moves into a region leaves it smaller by what moves out of what is around it. */
function widened(region: CleanRegion, byMm: number, setting: Setting): OffsetRegion {
  // farther than any place that the outline or what is kept reaches
  const wood = outsideOf(region, 8 * (byMm + setting.keepMm) + 1);
  const axis = medialAxis(wood);
  const outline = withoutFrame(turnedOver(reachedOutline(axis, byMm, 0)));
  const moved = withJoins(outline, region, byMm, { ...setting, way: 'union' });
  const { cut, kept } = keptParts(axis, byMm, setting);
  const open = cut.length === 0 ? moved : combineShapes([filled(moved)], cut, 'subtract');
  return { region: cut.length === 0 ? open : booleans(open, region, 'union'), kept };
}

function narrowed(region: CleanRegion, byMm: number, setting: Setting): OffsetRegion {
  const axis = medialAxis(region);
  const moved = withJoins(reachedOutline(axis, byMm, 0), region, byMm, { ...setting, way: 'subtract' });
  const { cut, kept } = keptParts(axis, byMm, setting);
  const whole = cut.length === 0 ? moved : combineShapes([filled(moved), ...cut], [], 'union');
  return { region: cut.length === 0 ? whole : booleans(whole, region, 'intersect'), kept };
}

function withJoins(
  outline: ArcRings,
  region: CleanRegion,
  byMm: number,
  { joins, toleranceMm, way }: Setting & { readonly way: 'union' | 'subtract' },
): CleanRegion {
  const clean = (rings: ArcRings): CleanRegion =>
    resolveRegions([{ ...flatArcs(rings, toleranceMm), fillRule: 'nonzero' }]).region;
  if (joins === 'round') {
    return clean(outline);
  }
  const arcs = cornerArcs(outline, region, { offsetMm: byMm, toleranceMm });
  return joins === 'bevel' ? clean(bevelled(outline, arcs)) : mitred(clean(outline), arcs, way);
}

/** What is kept of the region of an axis where it would close, and where that is. */
function keptParts(
  axis: MedialAxis,
  insetMm: number,
  { keepMm, toleranceMm }: Setting,
): { readonly cut: readonly Region[]; readonly kept: readonly KeptPlace[] } {
  if (keepMm === 0) {
    return { cut: [], kept: [] };
  }
  const { strips, parts, places } = keptOpen(axis, { insetMm, widthMm: keepMm, toleranceMm });
  const whole = parts.map(({ region, insetMm: by }) =>
    filled(
      resolveRegions([
        { ...flatArcs(reachedOutline(medialAxis(region), by, 0), toleranceMm), fillRule: 'nonzero' },
      ]).region,
    ),
  );
  return { cut: [...strips, ...whole], kept: places };
}

function filled(region: CleanRegion): Region {
  return { ...region, fillRule: 'nonzero' };
}

/** The outline of what is outside the rings: each the other way round. */
function turnedOver({ coords, bulges, ringEnds }: ArcRings): ArcRings {
  return packArcRings(
    Array.from(ringEnds, (end, k) => {
      const from = ringStart({ coords, ringEnds }, k);
      const ring: number[] = [];
      for (let i = end - 1; i >= from; i--) {
        const before = i === from ? end - 1 : i - 1;
        ring.push(coords[2 * i], coords[2 * i + 1], -bulges[before]);
      }
      return ring;
    }),
  );
}

/** Without the ring around all others, which stands for the frame. */
function withoutFrame(rings: ArcRings): ArcRings {
  let frame = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < rings.ringEnds.length; k++) {
    for (let i = ringStart(rings, k); i < rings.ringEnds[k]; i++) {
      if (rings.coords[2 * i] < least) {
        least = rings.coords[2 * i];
        frame = k;
      }
    }
  }
  return packArcRings(
    Array.from(rings.ringEnds, (end, k) => {
      const ring: number[] = [];
      for (let i = ringStart(rings, k); i < end; i++) {
        ring.push(rings.coords[2 * i], rings.coords[2 * i + 1], rings.bulges[i]);
      }
      return ring;
    }).filter((_, k) => k !== frame),
  );
}
