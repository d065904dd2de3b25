import {
  openFont,
  readArtwork,
  readLettering,
  readStickLettering,
  refuseEmpty,
  visibleLines,
  watchedFont,
} from '@pourproof/artwork';
import {
  artworkSize,
  fileReading,
  idleFont,
  idleSettings,
  type Job,
  type JobFile,
  letteringSetting,
  settleJobWith,
} from '@pourproof/job';
import type { Drawing } from '@pourproof/plane';
import { vetDrawing, stickStrokeMm } from '@pourproof/proof';
import type { ArtworkSource } from './artwork-source.ts';
import { failureOf } from './failure-of.ts';
import type { Answer, Question } from './question.ts';
import { USUAL_CAP_HEIGHT } from './scaled-size.ts';

/** A function that answers questions by the same code as the command line, keeping the drawing between two of them. */
export function questionAnswerer(): (question: Question) => Promise<Answer> {
  let kept: { readonly key: string; readonly drawing: Drawing } | null = null;
  return async ({ id, source, job: asked, materials }) => {
    try {
      const job = settleJobWith(materials, asked);
      const key = JSON.stringify([source.key, readingKeys(asked), job.toleranceMm, stickStrokeMm(job)]);
      if (kept?.key !== key) {
        kept = { key, drawing: await drawingOf(source, asked, job) };
      }
      return { id, kind: 'proof', proof: vetDrawing(kept.drawing, source.name, job) };
    } catch (error) {
      return { id, kind: 'failure', failure: failureOf(error) };
    }
  };
}

/** All of a job that changes how its artwork is read. */
function readingKeys(job: Partial<JobFile>): readonly unknown[] {
  return [artworkSize(job), letteringSetting(job), fileReading(job)];
}

async function drawingOf(source: ArtworkSource, asked: Partial<JobFile>, job: Job): Promise<Drawing> {
  const drawing =
    source.kind === 'lettering'
      ? await letteringDrawing(source, asked, job)
      : await fileDrawing(source, asked, job);
  refuseEmpty(drawing, source.name);
  const lines = source.kind === 'lettering' ? visibleLines(source.text) : 0;
  return { ...drawing, notices: [...drawing.notices, ...idleSettings(asked, drawing.format, lines)] };
}

async function letteringDrawing(
  { text, font }: ArtworkSource & { readonly kind: 'lettering' },
  asked: Partial<JobFile>,
  job: Job,
): Promise<Drawing> {
  const { isSingleLine, ...placing } = letteringSetting(asked);
  const sized = asked.width === undefined ? { capHeight: USUAL_CAP_HEIGHT, ...asked } : asked;
  const { widthMm, capHeightMm } = artworkSize(sized);
  const options = {
    ...placing,
    ...(widthMm === undefined ? { capHeightMm: capHeightMm ?? 0 } : { widthMm }),
    toleranceMm: job.toleranceMm,
  };
  return isSingleLine || font === null
    ? readStickLettering(text, { ...options, strokeMm: stickStrokeMm(job) })
    : readLettering(text, { ...options, font: font.bytes });
}

async function fileDrawing(
  { bytes, name, font }: ArtworkSource & { readonly kind: 'file' },
  asked: Partial<JobFile>,
  { toleranceMm }: Job,
): Promise<Drawing> {
  const { capHeightMm: _, ...size } = artworkSize(asked);
  const watched = font === null ? null : watchedFont(await openFont(font.bytes));
  const fonts = watched === null ? [] : [watched.font];
  const drawing = readArtwork(bytes, name, { toleranceMm, ...size, ...fileReading(asked), fonts });
  return watched === null || watched.isUsed()
    ? drawing
    : { ...drawing, notices: [...drawing.notices, idleFont()] };
}
