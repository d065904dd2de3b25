import { readArtwork, readLettering } from '@pourproof/artwork';
import { type Drawing, parseLengthMm } from '@pourproof/plane';
import { type JobFile, prove, settleJob } from '@pourproof/proof';
import type { ArtworkSource } from './artwork-source.ts';
import { failureOf } from './failure-of.ts';
import type { Answer, Question } from './question.ts';

/** A function that answers questions by the same code as the command line, keeping the drawing between two of them. */
export function questionAnswerer(): (question: Question) => Promise<Answer> {
  let kept: { readonly key: string; readonly drawing: Drawing } | null = null;
  return async ({ id, source, job: jobFile }) => {
    try {
      const job = settleJob(jobFile);
      const key = JSON.stringify([source.key, ...sizeOf(jobFile), job.toleranceMm]);
      if (kept?.key !== key) {
        kept = { key, drawing: await drawingOf(source, jobFile, job.toleranceMm) };
      }
      return { id, kind: 'proof', proof: prove(kept.drawing, source.name, job) };
    } catch (error) {
      return { id, kind: 'failure', failure: failureOf(error) };
    }
  };
}

function sizeOf({ width, height, scale, capHeight }: Partial<JobFile>): readonly unknown[] {
  return [width, height, scale, capHeight];
}

async function drawingOf(
  source: ArtworkSource,
  { width, height, scale, capHeight }: Partial<JobFile>,
  toleranceMm: number,
): Promise<Drawing> {
  if (source.kind === 'lettering') {
    const size =
      width === undefined
        ? { capHeightMm: parseLengthMm(capHeight ?? '15mm') * (scale ?? 1) }
        : { widthMm: parseLengthMm(width) * (scale ?? 1) };
    return readLettering(source.text, { font: source.font, toleranceMm, ...size });
  }
  return readArtwork(source.bytes, source.name, {
    toleranceMm,
    ...(width === undefined ? {} : { widthMm: parseLengthMm(width) }),
    ...(height === undefined ? {} : { heightMm: parseLengthMm(height) }),
    ...(scale === undefined ? {} : { scale }),
  });
}
