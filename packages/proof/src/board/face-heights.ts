import { applyTransform, type CleanRegion, type Point } from '@pourproof/plane';
import { type FittedSurface, fitSurface, type HeightReading } from './flatness.ts';
import type { PlacedBoard } from './place-board.ts';

/** How far the face is from flat under a cut, mm, against the place where the bit is set: the middle of the artwork. */
export interface FaceHeights {
  readonly highestMm: number;
  readonly lowestMm: number;
  /** On the artwork. */
  readonly highestAt: Point;
  readonly lowestAt: Point;
  readonly surface: FittedSurface;
}

/**
 * The height of the face under every corner of the cut; `null` where the board was not measured or nothing is cut.
 *
 * The surface is of second degree, so between the corners of an outline and inside it can only be higher or lower by the bow over one pocket.
 * @param zeroAt where the bit is set on the face, in the artwork's frame
 */
export function faceHeights(
  cut: CleanRegion,
  zeroAt: Point,
  board: PlacedBoard,
  readings: readonly HeightReading[],
): FaceHeights | null {
  if (readings.length === 0 || cut.coords.length === 0) {
    return null;
  }
  const surface = fitSurface(readings);
  const heightAt = (at: Point): number => surface.heightAt(applyTransform(board.toBoard, at));
  const zero = heightAt(zeroAt);
  let highestMm = Number.NEGATIVE_INFINITY;
  let lowestMm = Number.POSITIVE_INFINITY;
  let highestAt: Point = zeroAt;
  let lowestAt: Point = zeroAt;
  for (let i = 0; i < cut.coords.length; i += 2) {
    const at: Point = [cut.coords[i] as number, cut.coords[i + 1] as number];
    const height = heightAt(at) - zero;
    if (height > highestMm) {
      [highestMm, highestAt] = [height, at];
    }
    if (height < lowestMm) {
      [lowestMm, lowestAt] = [height, at];
    }
  }
  return { highestMm, lowestMm, highestAt, lowestAt, surface };
}
