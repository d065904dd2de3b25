import { booleans } from '@pourproof/arrangement';
import { type Hollow, isHollow, isThrough } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import { applyTransform, type Point, signedArea, transformRings, translation } from '@pourproof/plane';
import { clearFace } from '../board/keep-clear.ts';
import { type DepthAt, type Rim, type RimBoard, thinRims } from '../board/rims.ts';
import { depthAlong } from '../cut/depth-along.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { placeOfPath } from './places.ts';
import { proposed } from './proposed.ts';

/** A smaller area outside the clear face is rounding, mm². */
const MIN_MM2 = 0.01;

/** Too little wood between a pocket and the board's edge, a hole or a groove. */
export const rimTooThin: Check = {
  code: 'rim-too-thin',
  run: (measured) => {
    const { job, cutRegion, board } = measured;
    if (job.board === null || cutRegion.ringEnds.length === 0) {
      return null;
    }
    const on: RimBoard = { board: job.board, obstacles: besidePocket(measured), placed: board };
    const all = thinRims(cutRegion, depthOf(measured), on);
    const thin = all.filter(isThin);
    const broken = thin.filter(isBroken);
    const rims = thin.length > 0 ? thin : all;
    const [worst] = broken.length > 0 ? broken : rims;
    if (worst === undefined) {
      return null;
    }
    const [wall, ratio] = worst.isEndGrain
      ? [limits.wallShortGrain, limits.rimEndGrainToDepth]
      : [limits.wallAlongGrain, limits.rimLongGrainToDepth];
    const isHabit = thin.length === 0;
    return {
      code: 'rim-too-thin',
      severity: isHabit ? 'note' : broken.length > 0 ? 'stop' : 'caution',
      where: rims.map(({ from, to, widthMm }) =>
        placeOfPath(from, [...from, ...to], { what: 'rim', widthMm }),
      ),
      measured: { value: worst.widthMm, quantity: 'width', unit: 'mm' },
      limit: { value: isHabit ? worst.habitMm : worst.leastMm, quantity: 'width', unit: 'mm' },
      acrossGrain: worst.isEndGrain,
      because: isHabit ? ['common-practice'] : [...new Set([...ratio.because, ...wall.because])],
      fix: proposed(() => (isHabit ? [] : moves(measured, on, rims))),
    };
  },
};

/** Holes and grooves through the board, and those in its back that reach higher than the pocket's floor. */
export function besidePocket({
  job,
  site,
  maxDepth,
}: Pick<Measured, 'job' | 'site' | 'maxDepth'>): readonly Hollow[] {
  const thicknessMm = job.thicknessMm ?? 0;
  return job.obstacles
    .filter(isHollow)
    .filter(
      (each) =>
        isThrough(each, thicknessMm) ||
        thicknessMm - (each.fromBackMm ?? 0) < site.loweredMm + maxDepth - ROUNDING_MM,
    );
}

/** Beside a hole the wood is thin throughout; at an edge it is backed by the board, and stops only where a wall would break. */
function isBroken({ beside, widthMm, breaksBelowMm }: Rim): boolean {
  return beside === 'edge' && widthMm < breaksBelowMm;
}

function isThin({ widthMm, leastMm }: Rim): boolean {
  return widthMm < leastMm - ROUNDING_MM;
}

function depthOf({
  cutRegion,
  shape,
  maxDepth,
}: Pick<Measured, 'cutRegion' | 'shape' | 'maxDepth'>): DepthAt {
  return { mostMm: maxDepth, along: depthAlong(cutRegion, shape, maxDepth) };
}

/** The least move away from what is too near, to what shops leave by habit where there is room, tried on the cut itself. */
function moves(measured: Measured, on: RimBoard, rims: readonly Rim[]): Fix[] {
  const { job, cutRegion, board, shape, maxDepth } = measured;
  const clear = clearFace(on.board, job.marginMm, job.obstacles, board);
  const ways = [true, false].flatMap((isHabit) =>
    [rims, rims.slice(0, 1)].map((some) => ({ by: wayOut(some, on, isHabit), isHabit })),
  );
  for (const { by, isHabit } of ways) {
    const moved = transformRings(translation(...by), cutRegion);
    const isOff = signedArea(booleans(moved, clear, 'subtract')) >= MIN_MM2;
    const left = isOff ? [] : thinRims(moved, depthOf({ cutRegion: moved, shape, maxDepth }), on);
    if (!isOff && !left.some((rim) => isHabit || isThin(rim))) {
      return [{ do: 'move', rightMm: by[0], downMm: by[1], clears: left.length === 0 }];
    }
  }
  return [];
}

/** The move, along the board's sides, that makes each rim as wide as it should be, or as shops leave it by habit. */
function wayOut(rims: readonly Rim[], { placed }: RimBoard, isHabit: boolean): Point {
  const origin = applyTransform(placed.toBoard, [0, 0]);
  let [right, left, down, up] = [0, 0, 0, 0];
  for (const { from, to, widthMm, leastMm, habitMm } of rims) {
    const wantedMm = isHabit ? Math.max(leastMm, habitMm) : leastMm;
    const missing = (wantedMm - widthMm) / Math.hypot(to[0] - from[0], to[1] - from[1]);
    const [x, y] = applyTransform(placed.toBoard, [(from[0] - to[0]) * missing, (from[1] - to[1]) * missing]);
    [right, left] = [Math.max(right, x - origin[0]), Math.max(left, origin[0] - x)];
    [down, up] = [Math.max(down, y - origin[1]), Math.max(up, origin[1] - y)];
  }
  const back = applyTransform(placed.toArtwork, [
    origin[0] + onward(right) - onward(left),
    origin[1] + onward(down) - onward(up),
  ]);
  const [x, y] = [round(back[0]), round(back[1])];
  return [x, y];
}

/** Rounding of sums that is no move, mm. */
const ROUNDING_MM = 1e-6;

/** Rounded up to a hundredth. */
function onward(mm: number): number {
  return Math.ceil((mm - ROUNDING_MM) * 100) / 100;
}

/** Whole hundredths, a little onwards where a turned board gives others, so that the printed move is enough. */
function round(mm: number): number {
  const whole = (Math.sign(mm) * Math.ceil((Math.abs(mm) - ROUNDING_MM) * 100)) / 100;
  return whole === 0 ? 0 : whole;
}
