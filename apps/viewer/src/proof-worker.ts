import { ArtworkError, readArtwork, readLettering } from '@pourproof/artwork';
import { type Drawing, MeasureError } from '@pourproof/plane';
import { JobError, prove, settleJob } from '@pourproof/proof';
import type { ProofAnswer, ProofRequest, Source, Trouble } from './proof-request.ts';

addEventListener('message', (event: MessageEvent<ProofRequest>) => {
  answer(event.data).then((reply) => postMessage(reply));
});

async function answer({ id, source, job }: ProofRequest): Promise<ProofAnswer> {
  try {
    const settled = settleJob(job);
    const drawing = await read(source, settled.toleranceMm);
    const name = source.kind === 'file' ? source.name : source.text;
    if (drawing.shapes.length === 0) {
      const told = drawing.notices.map((notice) => notice.text).join(' ');
      return {
        id,
        trouble: { what: `${name} has nothing painted in it. ${told}`, where: '', remedy: NOTHING_PAINTED },
      };
    }
    return { id, proof: prove(drawing, name, settled) };
  } catch (error) {
    return { id, trouble: troubleOf(error) };
  }
}

const NOTHING_PAINTED =
  'Check that the shapes have a fill or a stroke and are visible, and export the drawing again.';

function read(source: Source, toleranceMm: number): Promise<Drawing> | Drawing {
  if (source.kind === 'lettering') {
    const { text, font, capHeightMm } = source;
    return readLettering(text, { font, capHeightMm, toleranceMm });
  }
  const { bytes, name, widthMm } = source;
  return readArtwork(bytes, name, widthMm === null ? { toleranceMm } : { toleranceMm, widthMm });
}

function troubleOf(error: unknown): Trouble {
  if (error instanceof ArtworkError) {
    const place =
      error.line === undefined
        ? ''
        : `line ${error.line}${error.column === undefined ? '' : `, column ${error.column}`}`;
    return { what: error.message, where: place, remedy: error.remedy };
  }
  if (error instanceof JobError || error instanceof MeasureError) {
    return { what: error.message, where: '', remedy: '' };
  }
  return {
    what: `pourproof itself failed: ${error instanceof Error ? error.message : String(error)}`,
    where: '',
    remedy: 'This is our fault, not yours. Please report it with the artwork and these settings.',
  };
}
