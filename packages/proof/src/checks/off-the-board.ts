import { booleans } from '@pourproof/arrangement';
import {
  type CleanRegion,
  type Point,
  packRings,
  ringArea,
  ringCoords,
  ringsBounds,
  signedArea,
  transformRings,
  translation,
} from '@pourproof/plane';
import { clearFace } from '../board/keep-clear.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { placeOfRings } from './places.ts';

/** A smaller area outside is rounding, mm². */
const MIN_MM2 = 0.01;

/** A cut that leaves the board, or comes into its margin, a hole or a groove. */
export const offTheBoard: Check = {
  code: 'off-the-board',
  run: (measured) => {
    const { job, cutRegion, board } = measured;
    if (job.board === null || cutRegion.ringEnds.length === 0) {
      return null;
    }
    const clear = clearFace(job.board, job.marginMm, job.obstacles, board);
    const outside = booleans(cutRegion, clear, 'subtract');
    const area = signedArea(outside);
    if (area < MIN_MM2) {
      return null;
    }
    return {
      code: 'off-the-board',
      severity: 'stop',
      where: outerRings(outside).map((ring) =>
        placeOfRings([ring[0] ?? 0, ring[1] ?? 0], packRings([ring]), {
          what: 'area',
          areaMm2: ringArea(ring),
        }),
      ),
      measured: { value: area, quantity: 'area', unit: 'mm²' },
      limit: { value: 0, quantity: 'area', unit: 'mm²' },
      because: ['board-as-described'],
      fix: { options: moves(measured, clear) },
    };
  },
};

function outerRings(region: CleanRegion): readonly Float64Array[] {
  return Array.from(region.ringEnds, (_, k) => ringCoords(region, k)).filter((ring) => ringArea(ring) > 0);
}

/** The least move of the cut's bounding box into that of the clear face, tried on the cut itself. */
function moves({ cutRegion }: Measured, clear: CleanRegion): Fix[] {
  if (clear.ringEnds.length === 0) {
    return [];
  }
  const cut = ringsBounds(cutRegion);
  const face = ringsBounds(clear);
  const shift = (low: 0 | 1): number => {
    const high = (low + 2) as 2 | 3;
    return Math.max(0, face[low] - cut[low]) - Math.max(0, cut[high] - face[high]);
  };
  const by: Point = [round(shift(0)), round(shift(1))];
  const moved = transformRings(translation(...by), cutRegion);
  return signedArea(booleans(moved, clear, 'subtract')) < MIN_MM2
    ? [{ do: 'move', rightMm: by[0], downMm: by[1], clears: true }]
    : [];
}

/** Rounded away from zero to a hundredth, so that the printed move is enough. */
function round(value: number): number {
  return (Math.sign(value) * Math.ceil(Math.abs(value) * 100)) / 100;
}
