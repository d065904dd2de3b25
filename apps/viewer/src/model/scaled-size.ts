import type { TypedJob } from '@pourproof/job';
import { parseLengthMm } from '@pourproof/plane';
import type { JobPart } from './changed-job.ts';
import { lengthLike } from './length-like.ts';
import { OFFERED_CAP_HEIGHT } from './lettering-part.ts';

/** The size of a job times a factor, in the key and the unit that it is typed in: lettering is sized by its capitals. */
export function scaledSize(job: TypedJob, factor: number, isLettering: boolean): JobPart {
  const { width, height, scale, capHeight } = job;
  if (width !== undefined) {
    return { width: times(width, factor) };
  }
  if (height !== undefined) {
    return { height: times(height, factor) };
  }
  return isLettering
    ? { capHeight: times(capHeight ?? OFFERED_CAP_HEIGHT, factor) }
    : { scale: Number(((scale ?? 1) * factor).toFixed(4)) };
}

function times(text: string, factor: number): string {
  return lengthLike(parseLengthMm(text) * factor, text);
}
