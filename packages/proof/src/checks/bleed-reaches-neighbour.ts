import { type SweepTouch, sweepTouches } from '@pourproof/geometry';
import { radians } from '@pourproof/plane';
import { type BlockMeasures, inFace } from '../board/block-measures.ts';
import type { Check } from './check.ts';
import { placeOfPoint } from './places.ts';
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
    const touches = measured.blocks
      .flatMap((inBlock) => touchesIn(inBlock))
      .toSorted((a, b) => a.touch.gapMm / a.reachMm - b.touch.gapMm / b.reachMm);
    const [worst] = touches;
    if (worst === undefined) {
      return null;
    }
    const { touch, reachMm, inBlock } = worst;
    return {
      code: 'bleed-reaches-neighbour',
      severity: 'caution',
      where: touches.map((each) =>
        placeOfPoint(each.touch.atMm, {
          what: 'wood',
          lengthMm: each.touch.acrossMm,
          widthMm: each.touch.gapMm,
        }),
      ),
      measured: { value: touch.gapMm, quantity: 'width', unit: 'mm' },
      limit: { value: reachMm, quantity: 'length', unit: 'mm' },
      basis: inBlock.travel.basis,
      because: [...inBlock.travel.sources],
      fix: {
        options: [
          ...sealFixes(measured, inBlock, reachMm, touch.gapMm),
          // a hundredth more than is missing, so that the printed value is enough
          {
            do: 'widen',
            what: 'wood',
            byMm: Math.floor((reachMm - touch.gapMm) * 100 + 1) / 100,
            clears: true,
          },
        ],
      },
    };
  },
};

interface Reached {
  readonly touch: SweepTouch;
  readonly reachMm: number;
  readonly inBlock: BlockMeasures;
}

/** One block at a time: a glue line stops colour, and a block's edge is no stroke. */
function touchesIn(inBlock: BlockMeasures): readonly Reached[] {
  const { block, travel, cut } = inBlock;
  const reachMm = travel.medianMm * inFace(radians(block.diveDeg));
  return sweepTouches(cut, radians(block.grainDeg), reachMm, block.region ?? undefined)
    .filter((touch) => isBridge(touch, reachMm) && touch.gapMm < reachMm)
    .map((touch) => ({ touch, reachMm, inBlock }));
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
