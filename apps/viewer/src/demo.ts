import type { JobFile } from '@pourproof/proof';
import { readJobFile } from '@pourproof/proof';
import artwork from '../../../fixtures/demo/board.svg?raw';
import job from '../../../fixtures/demo/job.json?raw';
import type { Source } from './proof-request.ts';

/** The demo artwork: an invented order, the same that the command line's demo vets. */
export function demoSource(): Source {
  return { kind: 'file', name: 'board.svg', bytes: new TextEncoder().encode(artwork), widthMm: null };
}

/** The settings that the demo starts with. */
export function demoJob(): JobFile {
  return readJobFile(JSON.parse(job), 'job.json');
}
