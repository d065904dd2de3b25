import type { MaterialsBook } from '@pourproof/materials';
import { parseMeasure } from '@pourproof/plane';
import { type FixOption, type JobFile, sealWords } from '@pourproof/proof';
import type { JobPart } from './changed-job.ts';
import { scaledSize } from './scaled-size.ts';

/** The part of the job that a way out asks for, and the words on its button. */
export interface JobChange {
  readonly part: JobPart;
  readonly label: string;
}

/** What the change is made to. */
export interface ChangedThing {
  readonly job: Partial<JobFile>;
  /** Fibres of the job against the artwork, degrees. */
  readonly grainDeg: number;
  readonly materials: MaterialsBook;
  readonly isLettering: boolean;
}

/** What a way out changes in the job; `null` where it is work on the drawing instead. */
export function jobChange(
  option: FixOption,
  { job, grainDeg, materials, isLettering }: ChangedThing,
): JobChange | null {
  switch (option.do) {
    case 'use-bit':
      return { part: { bit: [...(job.bit ?? []), `flat:${option.value}mm`] }, label: 'Add this bit' };
    case 'scale':
      return { part: scaledSize(job, Number(option.value), isLettering), label: 'Scale it' };
    case 'turn-grain':
      return { part: turnedPart(job, grainDeg, Number(option.value)), label: 'Turn it' };
    case 'change-seal': {
      const part = sealPart(String(option.value), job, materials);
      return part === null ? null : { part, label: 'Use this seal' };
    }
    default:
      return null;
  }
}

function turnedPart({ board, turn }: Partial<JobFile>, grainDeg: number, byDeg: number): JobPart {
  if (board !== undefined) {
    return { turn: `${Number((parseMeasure(turn ?? '0deg', 'angle').value + byDeg).toFixed(3))}deg` };
  }
  // turning the artwork counter-clockwise is turning the fibres clockwise under it
  return { grain: `${(((grainDeg - byDeg) % 180) + 180) % 180}deg` };
}

// the way out names the seal in words, so the seal is found by saying the same words of each
function sealPart(words: string, job: Partial<JobFile>, materials: MaterialsBook): JobPart | null {
  const coats = Math.max(1, job.coats ?? 1);
  for (const [seal, row] of Object.entries(materials.sealers)) {
    if (words === sealWords(coats, row)) {
      return { seal, coats, sealHours: `${row.readyHours.high}h` };
    }
  }
  return null;
}
