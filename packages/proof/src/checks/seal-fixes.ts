import type { Job } from '@pourproof/job';
import { type BlockMeasures, travelIn } from '../board/block-measures.ts';
import type { FixOption } from '../report/report.ts';
import { sealWords } from '../seal-words.ts';

/**
 * The mildest seal, as the tables order them, that brings a reach of colour below a limit; none when no seal does.
 *
 * @param reachMm reach under the job's own seal
 */
export function sealFixes(job: Job, inBlock: BlockMeasures, reachMm: number, limitMm: number): FixOption[] {
  const coats = Math.max(1, job.coats);
  for (const seal of Object.values(job.materials.sealers)) {
    const sealHours = seal.readyHours.high;
    const travel = travelIn(inBlock.block, job, { seal, coats, sealHours });
    const isSeal = seal.curve.value.length > 0;
    if (isSeal && (travel.medianMm * reachMm) / inBlock.travel.medianMm < limitMm) {
      return [{ do: 'change-seal', value: sealWords(coats, seal), unit: 'seal', clears: true }];
    }
  }
  return [];
}
