import { settleJob, type TypedJob } from '@pourproof/job';
import type { MaterialsBook } from '@pourproof/materials';
import { parseMeasure } from '@pourproof/plane';
import type { Fix } from '@pourproof/proof';
import type { JobPart } from './changed-job.ts';
import { lengthLike } from './length-like.ts';
import { scaledSize } from './scaled-size.ts';

/** The part of the job that a way out asks for, and the words on its button. */
export interface JobChange {
  readonly part: JobPart;
  readonly label: string;
}

/** What the change is made to. */
export interface ChangedThing {
  readonly job: TypedJob;
  /** Fibres of the job against the artwork, degrees. */
  readonly grainDeg: number;
  readonly materials: MaterialsBook;
  readonly isLettering: boolean;
}

/** What the button of each kind of way out says. */
const LABELS: Readonly<Partial<Record<Fix['do'], string>>> = {
  'use-bit': 'Add this bit',
  scale: 'Scale it',
  turn: 'Turn it',
  'change-seal': 'Use this seal',
  deepen: 'Cut deeper',
  'cut-shallower': 'Cut shallower',
  'level-less': 'Level less',
  'fewer-coats': 'Fewer coats',
  wait: 'Wait longer',
  'use-scale': 'Use this scale',
  'use-resin': 'Use this resin',
};

/** What a way out changes in the job; `null` where it is work on the drawing, or where no value of the job expresses it. */
export function jobChange(fix: Fix, thing: ChangedThing): JobChange | null {
  const part = partOf(fix, thing);
  const label = LABELS[fix.do];
  return part === null || label === undefined ? null : { part, label };
}

function partOf(fix: Fix, { job, grainDeg, materials, isLettering }: ChangedThing): JobPart | null {
  const settled = () => settleJob(job, { materials });
  switch (fix.do) {
    case 'use-bit':
      return { bit: [...(job.bit ?? []), `flat:${fix.diameterMm}mm`] };
    case 'scale':
      return scaledSize(job, fix.factor, isLettering);
    case 'turn':
      return turnedPart(fix.deg, job, grainDeg);
    case 'change-seal':
      return { seal: fix.seal, coats: fix.coats, sealHours: `${fix.hours}h` };
    case 'deepen':
      return { depth: lengthLike(settled().depthMm + fix.byMm, job.depth) };
    case 'cut-shallower':
      return { depth: lengthLike(fix.toMm, job.depth) };
    case 'level-less':
      return { level: lengthLike(settled().levelMm - fix.byMm, job.level) };
    case 'fewer-coats':
      return { coats: fix.coats };
    case 'wait':
      return { sealHours: `${Number((settled().sealHours + fix.hours).toFixed(2))}h` };
    case 'use-scale':
      return { weigh: fix.scale };
    case 'use-resin':
      return { resin: fix.resin };
    default:
      return null;
  }
}

function turnedPart(byDeg: number, job: TypedJob, grainDeg: number): JobPart {
  if (job.board !== undefined) {
    const turnDeg = parseMeasure(job.turn ?? '0deg', 'angle').value + byDeg;
    return { turn: `${Number(turnDeg.toFixed(3))}deg` };
  }
  // turning the artwork counter-clockwise is turning the fibres clockwise under it
  return { grain: `${(((grainDeg - byDeg) % 180) + 180) % 180}deg` };
}
