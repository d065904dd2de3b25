import { basename, extname, join } from 'node:path';
import { type FaultBundle, sourceName } from 'pourproof';
import type { Io } from './io.ts';

/** Names that are tried for the file of a fault; more faults than that in one folder are not kept. */
const MAX_NAMES = 99;
/** What of a name is taken into that of a file. */
const PLAIN = /[^\p{L}\p{N}._-]+/gu;

/** What a fault was and all that replays it: a `ProofFault`, or what a thread told of one. */
interface BundledFault {
  readonly what: string;
  readonly bundle: FaultBundle;
  readonly cause?: unknown;
}

/** A fault of ours with the file that replays it, if one could be written. */
export class KeptFault extends Error {
  readonly path: string | null;

  constructor(fault: BundledFault, path: string | null) {
    super(fault.what);
    this.name = 'KeptFault';
    this.path = path;
    this.cause = fault.cause ?? fault;
  }
}

/** Writes what replays a fault into a folder, over no other file. */
export async function kept(fault: BundledFault, folder: string, io: Io): Promise<KeptFault> {
  const { source } = fault.bundle;
  const name =
    source.kind === 'file'
      ? basename(source.name, extname(source.name))
      : sourceName({ ...source, font: null });
  const stem = name.replaceAll(PLAIN, '-').slice(0, 60) || 'artwork';
  for (let k = 1; k <= MAX_NAMES; k++) {
    const path = join(folder, `${stem}${k === 1 ? '' : `-${k}`}.fault.json`);
    if ((await io.fileIdentity(path)) === null) {
      try {
        await io.writeFile(path, `${JSON.stringify(fault.bundle, null, 2)}\n`);
        return new KeptFault(fault, path);
      } catch {
        // the fault is told all the same, without a file
        break;
      }
    }
  }
  return new KeptFault(fault, null);
}
