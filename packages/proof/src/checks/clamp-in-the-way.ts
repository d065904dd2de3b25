import { booleans } from '@pourproof/arrangement';
import { type HeldDown, isHollow } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import {
  applyTransform,
  byGrain,
  type CleanRegion,
  type Point,
  ringsBounds,
  signedArea,
  transformRings,
  translation,
} from '@pourproof/plane';
import { clearFace } from '../board/keep-clear.ts';
import { type NearClamp, nearClamps } from '../board/near-clamps.ts';
import { clampOutline } from '../board/obstacle-outline.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { leastWhole } from './least-whole.ts';
import { placeOfRings } from './places.ts';
import { proposed } from './proposed.ts';

/** Less than this is touching, mm: rounding. */
const ROUNDING_MM = 1e-6;
/** A smaller area outside the clear face is rounding, mm². */
const MIN_MM2 = 0.01;
/** A clamp or hold-down that the bit runs into: a stop; one so near that what holds the bit may hit it: a note. */
export const clampInTheWay: Check = {
  code: 'clamp-in-the-way',
  run: (measured) => {
    const { job, board } = measured;
    const clamps = clampsOf(measured);
    const near = nearClamps(measured, job, clamps, board)
      .filter(({ roomMm }) => roomMm < limits.roomToClamp.value - ROUNDING_MM)
      .toSorted(byGrain(({ roomMm }) => roomMm));
    const hit = near.filter(({ roomMm }) => roomMm < -ROUNDING_MM);
    const [worst] = near;
    if (worst === undefined) {
      return null;
    }
    const isHit = hit.length > 0;
    return {
      code: 'clamp-in-the-way',
      severity: isHit ? 'stop' : 'note',
      where: (isHit ? hit : near).map(({ clamp, atMm }) =>
        placeOfRings(atMm, transformRings(board.toArtwork, clampOutline(clamp)), {
          what: 'clamp',
          ...sizeOf(clamp),
        }),
      ),
      measured: isHit
        ? { value: -worst.roomMm, quantity: 'length', unit: 'mm' }
        : { value: Math.max(0, worst.roomMm), quantity: 'width', unit: 'mm' },
      limit: isHit
        ? { value: 0, quantity: 'length', unit: 'mm' }
        : { value: limits.roomToClamp.value, quantity: 'width', unit: 'mm' },
      because: isHit ? ['board-as-described'] : [...limits.roomToClamp.because],
      fix: proposed(() => [
        ...(isHit ? moves(measured, clamps) : []),
        { do: 'move-clamp', byMm: Math.max(...near.map((each) => asideMm(measured, each))), clears: true },
      ]),
    };
  },
};

function clampsOf({ job }: Measured): readonly HeldDown[] {
  return job.obstacles.filter((each): each is HeldDown => !isHollow(each));
}

function sizeOf(clamp: HeldDown): { readonly lengthMm?: number; readonly widthMm: number } {
  return clamp.kind === 'hold-down'
    ? { widthMm: clamp.diameterMm }
    : { lengthMm: Math.max(...clamp.sizeMm), widthMm: Math.min(...clamp.sizeMm) };
}

const SIDES: readonly Point[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
];

/**
 * The least move of a clamp along the board's sides after which it has its room, in whole hundredths, by halving: each is tried. How
 * far the bit runs into it tells nothing where it comes out on the other side.
 */
function asideMm({ job, board, ...measured }: Measured, { clamp, roomMm }: NearClamp): number {
  const [least] = SIDES.map(([x, y]) => {
    const hasRoom = (steps: number): boolean =>
      nearClamps(measured, job, [shifted(clamp, [(x * steps) / STEPS, (y * steps) / STEPS])], board).every(
        (each) => each.roomMm >= limits.roomToClamp.value - ROUNDING_MM,
      );
    let low = Math.floor((limits.roomToClamp.value - roomMm - ROUNDING_MM) * STEPS);
    let high = 2 * low + 1;
    while (!hasRoom(high)) {
      low = high;
      high *= 2;
    }
    return leastWhole(low, high, hasRoom);
  }).toSorted((a, b) => a - b);
  return (least ?? 0) / STEPS;
}

/** Steps of a move, a mm, as it is printed. */
const STEPS = 100;

/** Moves of the artwork along the board's sides past the clamps, the least one that was tried and found free of all of them and on the clear face. */
function moves(measured: Measured, clamps: readonly HeldDown[]): Fix[] {
  const { job, cutRegion, board } = measured;
  if (job.board === null) {
    return [];
  }
  const clear = clearFace(job.board, job.marginMm, job.obstacles, board);
  const found = candidates(measured, clamps).find((by) => isFree(measured, clamps, clear, by));
  if (found === undefined || cutRegion.ringEnds.length === 0) {
    return [];
  }
  const [rightMm, downMm] = inArtwork(measured, found).map(onward);
  return [{ do: 'move', rightMm: rightMm ?? 0, downMm: downMm ?? 0, clears: true }];
}

/** Moves of the cut's box past each clamp to its four sides, in the board's frame, the least first. */
function candidates(
  { job, cutRegion, board, ...measured }: Measured,
  clamps: readonly HeldDown[],
): readonly Point[] {
  const cut = ringsBounds(transformRings(board.toBoard, cutRegion));
  const aside = clamps.flatMap((clamp): readonly Point[] => {
    const [left, top, right, bottom] = ringsBounds(clampOutline(clamp));
    return [
      [right - cut[0], 0],
      [left - cut[2], 0],
      [0, bottom - cut[1]],
      [0, top - cut[3]],
    ];
  });
  // the bit reaches farther than the cut by what it ran in where the boxes only touch
  const beyond = (by: Point): Point => {
    const moved = clamps.map((clamp) => shifted(clamp, [-by[0], -by[1]]));
    const least = Math.min(
      ...nearClamps({ ...measured, cutRegion }, job, moved, board).map(({ roomMm }) => roomMm),
    );
    const length = Math.hypot(...by);
    const factor = length > 0 && least < 0 ? (length - least) / length : 1;
    return [onward(by[0] * factor), onward(by[1] * factor)];
  };
  return aside.map(beyond).toSorted(byGrain((way) => Math.hypot(...way)));
}

function isFree(
  { job, board, ...measured }: Measured,
  clamps: readonly HeldDown[],
  clear: CleanRegion,
  by: Point,
): boolean {
  const moved = transformRings(translation(...inArtwork({ board }, by)), measured.cutRegion);
  const rooms = nearClamps(
    measured,
    job,
    clamps.map((clamp) => shifted(clamp, [-by[0], -by[1]])),
    board,
  );
  return (
    rooms.every(({ roomMm }) => roomMm >= -ROUNDING_MM) &&
    signedArea(booleans(moved, clear, 'subtract')) < MIN_MM2
  );
}

function shifted(clamp: HeldDown, [dx, dy]: Point): HeldDown {
  return { ...clamp, atMm: [clamp.atMm[0] + dx, clamp.atMm[1] + dy] };
}

/** A move on the board as a move of the artwork as drawn. */
function inArtwork({ board }: Pick<Measured, 'board'>, [x, y]: Point): Point {
  const origin = applyTransform(board.toArtwork, [0, 0]);
  const to = applyTransform(board.toArtwork, [x, y]);
  return [to[0] - origin[0], to[1] - origin[1]];
}

/** Away from zero to a hundredth, so that the printed move is enough. */
function onward(mm: number): number {
  const whole = (Math.sign(mm) * Math.ceil((Math.abs(mm) - ROUNDING_MM) * 100)) / 100;
  return whole === 0 ? 0 : whole;
}
