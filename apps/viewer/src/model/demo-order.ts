import { readJobFile, type TypedJob, typedJob } from '@pourproof/job';
import boardUrl from '../../../../fixtures/demo/board.svg?url';
import demoJob from '../../../../fixtures/demo/job.json?raw';
import type { ArtworkSource } from './artwork-source.ts';
import { fetchBytes } from './fetch-bytes.ts';

/** The job of the demo order. */
export function demoOrderJob(): TypedJob {
  const { artwork: _, ...job } = typedJob(readJobFile(JSON.parse(demoJob), 'job.json'));
  return job;
}

/** The artwork of the demo order, an SVG file. */
export async function demoOrderArtwork(): Promise<ArtworkSource> {
  return { kind: 'file', name: 'board.svg', bytes: await fetchBytes(boardUrl), font: null };
}
