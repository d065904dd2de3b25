import { formatLength } from '@pourproof/plane';
import type { Check } from './check.ts';
import { placeOfPoint } from './places.ts';
import { noLess } from './way-length.ts';

/** A face this much out of flat is flat for carving, whatever levelling takes, mm (our choice). */
const FLAT_ENOUGH_MM = 0.1;

/** A face that rises and falls under the cut by more than levelling takes off: low spots keep a skin of resin, high ones lose depth. */
export const boardNotFlat: Check = {
  code: 'board-not-flat',
  title: 'The board is not flat enough',
  run: ({ job, heights, maxDepth }) => {
    if (heights === null) {
      return null;
    }
    const range = heights.highestMm - heights.lowestMm;
    const limit = Math.max(job.levelMm, FLAT_ENOUGH_MM);
    if (range <= limit) {
      return null;
    }
    return {
      code: 'board-not-flat',
      severity: range >= maxDepth / 2 ? 'stop' : 'caution',
      where: [placeOfPoint(heights.lowestAt), placeOfPoint(heights.highestAt)],
      measured: { value: range, unit: 'mm' },
      limit: { value: limit, unit: 'mm' },
      because: ['board-as-described', 'own-inference'],
      fix: {
        options: [{ do: 'flatten', value: Math.ceil((range - limit) * 100) / 100, unit: 'mm', clears: true }],
      },
    };
  },
  advise: (finding, unit) => ({
    headline: `Under the cut the face rises and falls by ${formatLength(finding.measured.value, unit)}, and levelling is planned to take ${formatLength(finding.limit.value, unit)}.`,
    why: 'The bit keeps one height while the face does not: pockets come out shallow where the board is low, and levelling that stops as planned leaves resin on the low spots.',
    fixes: finding.fix.options.map(
      (option) =>
        `Surface the board before carving, or level it, by at least ${noLess(Number(option.value), unit)} more at its highest place.`,
    ),
  }),
};
