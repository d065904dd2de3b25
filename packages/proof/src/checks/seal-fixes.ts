import type { Job } from '@pourproof/job';
import { type BlockMeasures, travelIn } from '../board/block-measures.ts';
import type { Fix } from '../report/fix-schema.ts';

/**
 * The mildest seal, in the order of the tables, that brings the reach of colour below a limit; empty when
 * none does.
 *
 * @param reachMm reach under the job's own seal
 */
export function sealFixes(job: Job, inBlock: BlockMeasures, reachMm: number, limitMm: number): Fix[] {
  const coats = Math.max(1, job.coats);
  for (const [id, seal] of Object.entries(job.materials.sealers)) {
    const sealHours = seal.readyHours.high;
    const travel = travelIn(inBlock.block, job, { seal, coats, sealHours });
    const isSeal = seal.curve.value.length > 0;
    if (isSeal && (travel.medianMm * reachMm) / inBlock.travel.medianMm < limitMm) {
      return [{ do: 'change-seal', seal: id, coats, hours: sealHours, clears: true }];
    }
  }
  return [];
}
