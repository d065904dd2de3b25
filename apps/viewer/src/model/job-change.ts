import type { MaterialsBook } from '@pourproof/materials';
import { type FixOption, type JobFile, sealWords } from '@pourproof/proof';

/** The part of the job that a way out asks for, and the words on its button. */
export interface JobChange {
  readonly part: Partial<JobFile>;
  readonly label: string;
}

/** What a way out changes in the job; `null` where it is work on the drawing instead. */
export function jobChange(
  option: FixOption,
  job: Partial<JobFile>,
  grainDeg: number,
  materials: MaterialsBook,
): JobChange | null {
  switch (option.do) {
    case 'use-bit':
      return { part: { bit: [...(job.bit ?? []), `flat:${option.value}mm`] }, label: 'Add this bit' };
    case 'scale': {
      const scale = Number(((job.scale ?? 1) * Number(option.value)).toFixed(4));
      return { part: { scale }, label: 'Scale it' };
    }
    case 'turn-grain': {
      // turning the artwork counter-clockwise is turning the fibres clockwise under it
      const turned = (((grainDeg - Number(option.value)) % 180) + 180) % 180;
      return { part: { grain: `${turned}deg` }, label: 'Turn it' };
    }
    case 'change-seal': {
      const part = sealPart(String(option.value), job, materials);
      return part === null ? null : { part, label: 'Use this seal' };
    }
    default:
      return null;
  }
}

// the way out names the seal in words, so the seal is found by saying the same words of each
function sealPart(words: string, job: Partial<JobFile>, materials: MaterialsBook): Partial<JobFile> | null {
  const coats = Math.max(1, job.coats ?? 1);
  for (const [seal, row] of Object.entries(materials.sealers)) {
    if (words === sealWords(coats, row)) {
      return { seal, coats, sealHours: `${row.readyHours.high}h` };
    }
  }
  return null;
}
