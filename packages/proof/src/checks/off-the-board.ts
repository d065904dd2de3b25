import { booleans } from '@pourproof/arrangement';
import {
  type CleanRegion,
  formatArea,
  type LengthUnit,
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
import type { FixOption } from '../report/report.ts';
import type { Check } from './check.ts';
import { placeOfRings } from './places.ts';
import { noLess } from './way-length.ts';

/** Less than this outside is rounding, mm². */
const LEAST_MM2 = 0.01;

/** A cut that leaves the board, or comes into its margin, a hole or a groove. */
export const offTheBoard: Check = {
  code: 'off-the-board',
  title: 'The cut leaves the clear face',
  run: (measured) => {
    const { job, cutRegion, board } = measured;
    if (job.board === null || cutRegion.ringEnds.length === 0) {
      return null;
    }
    const clear = clearFace(job.board, job.marginMm, job.obstacles, board);
    const outside = booleans(cutRegion, clear, 'subtract');
    const area = signedArea(outside);
    if (area < LEAST_MM2) {
      return null;
    }
    return {
      code: 'off-the-board',
      severity: 'stop',
      where: outerRings(outside).map((ring) => placeOfRings([ring[0] ?? 0, ring[1] ?? 0], packRings([ring]))),
      measured: { value: area, unit: 'mm²' },
      limit: { value: 0, unit: 'mm²' },
      because: ['board-as-described'],
      fix: { options: moves(measured, clear) },
    };
  },
  advise: (finding, unit) => ({
    headline: `${formatArea(finding.measured.value, unit)} of the cut lies off the board, in its margin, in a hole or in a groove.`,
    why: 'There the bit meets air, a clamp or hardware, and a pocket that opens to an edge does not hold resin.',
    fixes:
      finding.fix.options.length === 0
        ? ['Make the artwork smaller or the board larger: no move alone brings it onto the clear face.']
        : finding.fix.options.map((option) => {
            const [dx = 0, dy = 0] = String(option.value).split(' ').map(Number);
            return `Move the artwork ${[...wayText(dx, 'to the right', 'to the left', unit), ...wayText(dy, 'down', 'up', unit)].join(' and ')}, as it is drawn.`;
          }),
  }),
};

/** One direction of a move; none where it is 0. */
function wayText(mm: number, ahead: string, back: string, unit: LengthUnit): readonly string[] {
  return mm === 0 ? [] : [`${noLess(Math.abs(mm), unit)} ${mm > 0 ? ahead : back}`];
}

function outerRings(region: CleanRegion): readonly Float64Array[] {
  return Array.from(region.ringEnds, (_, k) => ringCoords(region, k)).filter((ring) => ringArea(ring) > 0);
}

/** The least move of the box onto the box of the clear face, tried on the cut itself. */
function moves({ cutRegion }: Measured, clear: CleanRegion): FixOption[] {
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
  return signedArea(booleans(moved, clear, 'subtract')) < LEAST_MM2
    ? [{ do: 'move', value: `${by[0]} ${by[1]}`, unit: 'mm', clears: true }]
    : [];
}

/** Away from zero to a hundredth, so that the move as printed is enough. */
function round(value: number): number {
  return (Math.sign(value) * Math.ceil(Math.abs(value) * 100)) / 100;
}
