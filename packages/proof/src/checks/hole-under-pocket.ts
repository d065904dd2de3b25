import { limits } from '@pourproof/materials';
import { type Bounds, ringsBounds } from '@pourproof/plane';
import { obstacleOutline } from '../board/obstacle-outline.ts';
import { type OverHollow, overHollows } from '../board/over-hollows.ts';
import type { Measured } from '../measured.ts';
import type { FindingPlace } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { placeOfRings } from './places.ts';

/** A sum of lengths this far below a limit is at it, mm: rounding. */
const ROUNDING_MM = 1e-6;

/** Too little wood between a pocket and a hole or groove in the back of the board. */
export const holeUnderPocket: Check = {
  code: 'hole-under-pocket',
  run: (measured) => {
    const least = limits.floorUnderPocket.value;
    const near = overHollows(measured)
      .filter(({ woodMm }) => woodMm < least - ROUNDING_MM)
      .toSorted((a, b) => a.woodMm - b.woodMm);
    const [worst] = near;
    if (worst === undefined) {
      return null;
    }
    const isGone = worst.woodMm < limits.floorGone.value - ROUNDING_MM;
    return {
      code: 'hole-under-pocket',
      severity: isGone ? 'stop' : 'caution',
      where: near.map((each) => placeOf(each, measured)),
      measured: { value: worst.woodMm, quantity: 'height', unit: 'mm' },
      limit: { value: least, quantity: 'height', unit: 'mm' },
      because: [
        ...new Set([...limits.floorUnderPocket.because, ...(isGone ? limits.floorGone.because : [])]),
      ],
      fix: {
        options: [...shallower(measured, near), ...moves(measured, near), thicker(measured, near)],
      },
    };
  },
};

function placeOf({ hollow, atMm }: OverHollow, { board }: Measured): FindingPlace {
  return placeOfRings(atMm, obstacleOutline(hollow, board), {
    what: hollow.kind,
    widthMm: hollow.kind === 'hole' ? hollow.diameterMm : hollow.widthMm,
  });
}

/** The depth that leaves enough above each of them. */
function shallower({ job, site }: Measured, near: readonly OverHollow[]): Fix[] {
  const deepest = Math.min(
    ...near.map(({ hollow }) => (job.thicknessMm ?? 0) - (hollow.fromBackMm ?? 0) - site.loweredMm),
  );
  const toMm = Math.floor((deepest - limits.floorUnderPocket.value + ROUNDING_MM) * 100) / 100;
  return toMm > 0 ? [{ do: 'cut-shallower', toMm, clears: true }] : [];
}

/** The least board in which the same pocket has enough wood above the same hollows. */
function thicker({ site, maxDepth }: Measured, near: readonly OverHollow[]): Fix {
  const deepest = Math.max(...near.map(({ hollow }) => hollow.fromBackMm ?? 0));
  const least = deepest + site.loweredMm + maxDepth + limits.floorUnderPocket.value;
  return {
    do: 'thicker-board',
    thicknessMm: Math.ceil((least - ROUNDING_MM) * 100) / 100,
    clears: true,
  };
}

/** The least move of the artwork, to one of four sides, that brings the box of the cut past the hollows. */
function moves({ cutRegion, board }: Measured, near: readonly OverHollow[]): Fix[] {
  const [left, top, right, bottom] = ringsBounds(cutRegion);
  const boxes = near.map(({ hollow }) => ringsBounds(obstacleOutline(hollow, board)));
  const least = limits.floorUnderPocket.value;
  const most = (of: (box: Bounds) => number): number => Math.max(...boxes.map(of));
  const ways = [
    [most((box) => box[2]) + least - left, 0],
    [-most((box) => right - box[0] + least), 0],
    [0, most((box) => box[3]) + least - top],
    [0, -most((box) => bottom - box[1] + least)],
  ] as const;
  return ways
    .toSorted((a, b) => Math.hypot(...a) - Math.hypot(...b))
    .slice(0, 2)
    .map(([x, y]) => ({ do: 'move', rightMm: onward(x), downMm: onward(y), clears: true }));
}

/** Away from zero to a hundredth, so that the printed move is enough. */
function onward(mm: number): number {
  const whole = (Math.sign(mm) * Math.ceil((Math.abs(mm) - ROUNDING_MM) * 100)) / 100;
  return whole === 0 ? 0 : whole;
}
