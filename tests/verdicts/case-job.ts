import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { JobInput } from '@pourproof/job';
import { type MaterialsBook, readMaterialsFile, type Source } from 'pourproof';
import { ROOT } from '../support/cli/captured-run.ts';
import { jobOfFlags } from '../support/job-of-flags.ts';
import { caseArtwork } from './artwork.ts';
import type { VerdictCase } from './read-cases.ts';

/** What a case is vetted with. */
interface CaseJob {
  readonly source: Source;
  readonly job: JobInput;
  /** Where the case names materials of its own. */
  readonly materials?: MaterialsBook;
}

/** The source and the job of a case, as the command line makes them of its flags. */
export async function caseJob({ artwork, flags }: VerdictCase): Promise<CaseJob> {
  const at = flags.indexOf('--materials');
  if (at >= 0) {
    const path = flags[at + 1] ?? '';
    const rest = flags.toSpliced(at, 2);
    const text = new TextDecoder().decode(await bytesAt(path));
    return { ...(await plainJob(artwork, rest)), materials: readMaterialsFile(JSON.parse(text), path) };
  }
  return plainJob(artwork, flags);
}

async function plainJob(artwork: string, flags: readonly string[]): Promise<CaseJob> {
  const drawn = caseArtwork(artwork);
  if (drawn.kind === 'svg') {
    const bytes = new TextEncoder().encode(drawn.svg);
    return { source: { kind: 'file', name: 'case.svg', bytes }, job: jobOfFlags(flags) };
  }
  const [name = ''] = drawn.flags;
  if (!name.startsWith('--')) {
    const bytes = await bytesAt(name);
    return { source: { kind: 'file', name, bytes }, job: jobOfFlags(flags) };
  }
  const { text = '', font, ...job } = jobOfFlags([...drawn.flags, ...flags]);
  const source = { kind: 'lettering', text, font: font === undefined ? null : await bytesAt(font) } as const;
  return { source, job };
}

async function bytesAt(path: string): Promise<Uint8Array> {
  return new Uint8Array(await readFile(resolve(ROOT, path)));
}
