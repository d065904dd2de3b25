import { bareSource } from '../model/artwork-source.ts';
import type { Asked } from '../model/asked.ts';
import { newBench, stateOf } from '../model/bench.ts';
import { BLANK_PAGE } from '../model/page-state.ts';
import type { PackedAnswer, PageVetted, Posted } from '../model/question.ts';
import { tablesOf, vetOptions } from '../model/shelf.ts';
import { type ShownProof, shownProof } from '../model/shown-proof.ts';
import { unpackAnswer } from '../model/unpack-answer.ts';
import { startWorker } from '../start-worker.ts';

const BARS = `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="30mm" viewBox="0 0 60 30">
  <rect x="5" y="5" width="40" height="6"/><rect x="5" y="20" width="20" height="1.2"/><text x="3" y="28">מלים</text></svg>`;

/** A proof as the page shows it, before and after its ways out were tried. */
export interface GalleryProof {
  readonly judged: ShownProof;
  readonly whole: ShownProof;
}

/** Two bars, proved by the page's own worker. */
export async function galleryProof(): Promise<GalleryProof> {
  const state = stateOf(newBench('', BLANK_PAGE, ''));
  const source = {
    kind: 'file',
    name: 'bars שלט.svg',
    bytes: new TextEncoder().encode(BARS),
    font: null,
  } as const;
  const tables = tablesOf(state.shelf);
  const asked: Asked = { source, job: { depth: '3mm' }, shelf: state.shelf, tables };
  const worker = startWorker();
  let vetted: PageVetted | null = null;
  const proof = new Promise<GalleryProof>((resolve, reject) => {
    worker.addEventListener('error', reject);
    worker.addEventListener('message', ({ data }: MessageEvent<PackedAnswer>) => {
      const answer = unpackAnswer(data);
      if (answer.kind === 'judged') {
        vetted = answer.vetted;
      } else if (answer.kind === 'vetted' && vetted !== null) {
        resolve({
          judged: shownProof(asked, vetted, false),
          whole: shownProof(asked, { ...vetted, report: answer.report }, true),
        });
      }
    });
  });
  const posted: Posted = {
    kind: 'ask',
    question: { id: 1, source: bareSource(source), job: asked.job, options: vetOptions(tables) },
  };
  worker.postMessage(posted);
  return proof;
}
