import type { Job } from '@pourproof/job';
import { cureSpeed, rowsAtHandFirst, type Sealer, sealFilm } from '@pourproof/materials';
import { type BlockMeasures, travelIn } from '../board/block-measures.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import { paleShare } from './pale-share.ts';

/** Hours are told to a tenth, rounded down, so that a window still holds them. */
const STEPS_PER_HOUR = 10;

/** A seal coat and how long it is left before the colour. */
interface SealPlan {
  readonly id: string;
  readonly seal: Sealer;
  readonly coats: number;
  readonly sealHours: number;
  readonly bondsUnsanded: boolean;
}

/**
 * The mildest seal, in the order of the tables, that brings the reach of colour below a limit and fills no more strokes with clear than
 * the job's own; with the shortest wait that is enough. Empty when none does.
 *
 * @param reachMm reach under the job's own seal
 */
export function sealFixes(
  measured: Measured,
  inBlock: BlockMeasures,
  reachMm: number,
  limitMm: number,
): Fix[] {
  const { job } = measured;
  const isEnough = ({ seal, coats, sealHours }: SealPlan): boolean => {
    const travel = travelIn(inBlock.block, job, { seal, coats, sealHours });
    return (travel.medianMm * reachMm) / inBlock.travel.medianMm < limitMm;
  };
  const plan = sealPlans(job).find(
    (each) =>
      isEnough(each) &&
      paleShare(measured, sealFilm(each.seal, each.coats).filmMm) <= paleShare(measured, measured.sealFilm),
  );
  return plan === undefined ? [] : [fixOf(plan, job)];
}

/** Every seal of the list with the waits that a maker can follow: those at hand, then the others, mildest first. */
function sealPlans(job: Job): readonly SealPlan[] {
  const coats = Math.max(1, job.coats);
  return rowsAtHandFirst(job.materials.sealers, job.materials.atHand?.sealers)
    .filter(([, seal]) => seal.curve.value.length > 0)
    .flatMap(([id, seal]) => waitsOf(seal, job.shopTempC).map((wait) => ({ id, seal, coats, ...wait })));
}

/**
 * Waits before the pour, shortest first. On a coat that stays tacky: to the end of that window, in which the pour bonds unsanded, and to
 * the time from which the coat has to be abraded, which nobody can do in a narrow pocket. On others: until they are ready.
 */
function waitsOf(seal: Sealer, shopTempC: number): readonly Pick<SealPlan, 'sealHours' | 'bondsUnsanded'>[] {
  const speed = seal.hardens === 'reaction' ? cureSpeed(shopTempC) : 1;
  const atMost = (hours: number): number => Math.floor((hours / speed) * STEPS_PER_HOUR) / STEPS_PER_HOUR;
  if (seal.tackyHours === null) {
    return [
      {
        sealHours: Math.ceil((seal.readyHours.high / speed) * STEPS_PER_HOUR) / STEPS_PER_HOUR,
        bondsUnsanded: false,
      },
    ];
  }
  const tacky = { sealHours: atMost(seal.tackyHours.high), bondsUnsanded: true };
  return seal.abradeAfterHours === null
    ? [tacky]
    : [tacky, { sealHours: atMost(seal.abradeAfterHours.value), bondsUnsanded: false }];
}

/** Never names what the job has: where only the wait differs, it is the wait that is told. */
function fixOf({ id, coats, sealHours, bondsUnsanded }: SealPlan, job: Job): Fix {
  return id === job.seal && coats === job.coats && sealHours > job.sealHours
    ? {
        do: 'wait',
        hours: Math.ceil((sealHours - job.sealHours) * STEPS_PER_HOUR) / STEPS_PER_HOUR,
        warmthHelps: false,
        clears: true,
      }
    : { do: 'change-seal', seal: id, coats, hours: sealHours, bondsUnsanded, clears: true };
}
