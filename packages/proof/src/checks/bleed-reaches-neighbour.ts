import { fibreVector, type SweepTouch, touchesWithin } from '@pourproof/geometry';
import { byGrain, type CleanRegion, radians } from '@pourproof/plane';
import { type BlockMeasures, inFace, woodBeside } from '../board/block-measures.ts';
import { clipSegment } from '../board/clip-segment.ts';
import { resinAt } from '../rounds/filled-pockets.ts';
import { Stages } from '../stages/stages.ts';
import { bleedSpacing, type Crossings } from './bleed-spacing.ts';
import type { Check } from './check.ts';
import { couponFirst } from './coupon-fix.ts';
import { placeOfPoint } from './places.ts';
import { proposed } from './proposed.ts';
import { sealFixes } from './seal-fixes.ts';

/**
 * Bridges finer than this across the fibres are not seen, mm (our choice: about the visible streak of the
 * tables).
 */
const MIN_BRIDGE_MM = 0.5;

/**
 * Wood within one letter that is thinner than this share of the reach is taken to run out to a point, blunt
 * or not: the end of a counter (our choice). A wall that is this thin throughout is reported as thin wood.
 */
const POINT_OF_WOOD = 0.1;

/**
 * Wood between two strokes that colour is likely to cross along the fibres, so that the strokes run together.
 */
export const bleedReachesNeighbour: Check = {
  code: 'bleed-reaches-neighbour',
  run: (measured) => {
    const resin = resinAt(measured.site.filled, 0);
    const touches = measured.blocks
      .flatMap((inBlock) => touchesIn(inBlock, resin, measured.stages))
      .toSorted(byGrain(({ touch, reachMm }) => touch.gapMm / reachMm));
    const [worst] = touches;
    if (worst === undefined) {
      return null;
    }
    const { touch, reachMm, inBlock } = worst;
    const where = touches.map((each) =>
      placeOfPoint(each.touch.atMm, {
        what: 'wood',
        lengthMm: each.touch.acrossMm,
        widthMm: each.touch.gapMm,
      }),
    );
    // a hundredth more than is missing where most is, so that the printed value is enough
    const missingMm = Math.max(...touches.map((each) => each.reachMm - each.touch.gapMm));
    return {
      code: 'bleed-reaches-neighbour',
      severity: 'caution',
      where,
      measured: { value: touch.gapMm, quantity: 'width', unit: 'mm' },
      limit: { value: reachMm, quantity: 'length', unit: 'mm' },
      basis: inBlock.travel.basis,
      because: [...inBlock.travel.sources],
      fix: proposed(() => [
        ...couponFirst(measured.job, inBlock.travel, { reachMm, limitsMm: [touch.gapMm] }),
        ...sealFixes(measured, inBlock, reachMm, touch.gapMm),
        ...bleedSpacing(
          measured,
          measured.blocks.map((each) => crossingsIn(each, resin)),
          where,
        ),
        { do: 'widen', what: 'wood', byMm: Math.floor(missingMm * 100 + 1) / 100, clears: true },
      ]),
    };
  },
};

function crossingsIn(inBlock: BlockMeasures, resin: CleanRegion): Crossings {
  return {
    inBlock,
    reachMm: reachIn(inBlock),
    in: (cut) => touchesIn({ ...inBlock, cut }, resin).map(({ touch }) => touch.rings),
  };
}

interface Reached {
  readonly touch: SweepTouch;
  readonly reachMm: number;
  readonly inBlock: BlockMeasures;
}

/**
 * One block at a time: a glue line stops colour, and a block's edge is no stroke, unless a pocket of an earlier round lies there.
 *
 * @param resin cured resin at the face
 */
function touchesIn(
  inBlock: BlockMeasures,
  resin: CleanRegion,
  stages: Stages = new Stages(),
): readonly Reached[] {
  const { block, cut } = inBlock;
  const { grainDeg } = block;
  const reachMm = reachIn(inBlock);
  const wood = woodBeside(cut, block, stages);
  return stages
    .of('touches', [wood], { reachMm }, () => touchesWithin(wood, reachMm))
    .filter(
      (touch) =>
        touch.gapMm < reachMm &&
        (isBridge(touch, reachMm) || (touch.acrossMm >= MIN_BRIDGE_MM && endsIn(resin, touch, grainDeg))),
    )
    .map((touch) => ({ touch, reachMm, inBlock }));
}

/** How far colour is likely to travel on the face. */
function reachIn({ travel, block }: BlockMeasures): number {
  return travel.medianMm * inFace(radians(block.diveDeg));
}

/** How far beyond its end a way is looked at, mm: less than any pocket is wide. */
const BEYOND_MM = 0.01;

/** Whether the wood of a touch ends at the edge of its block, and there in resin. */
function endsIn(resin: CleanRegion, { kind, gapMm, atMm: [x, y] }: SweepTouch, grainDeg: number): boolean {
  if (kind !== 'board-edge' || resin.ringEnds.length === 0) {
    return false;
  }
  const [fx, fy] = fibreVector(radians(grainDeg));
  return [-1, 1].some((sense) => {
    const to = sense * (gapMm / 2 + BEYOND_MM);
    const [ex, ey] = [x + to * fx, y + to * fy];
    return clipSegment(resin, [ex, ey, ex, ey], [0, 0]).length > 0;
  });
}

/**
 * Between two parts of the cut, or two strokes of one; a wedge of wood that runs out to a point at an inner
 * corner is neither.
 */
function isBridge({ kind, gapMm, acrossMm }: SweepTouch, reachMm: number): boolean {
  return (
    acrossMm >= MIN_BRIDGE_MM &&
    (kind === 'neighbour' || (kind === 'same-part' && gapMm > POINT_OF_WOOD * reachMm))
  );
}
