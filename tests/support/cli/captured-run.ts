import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Io, nodeIo, run } from '@pourproof/cli';
import { rememberedVet } from '../remembered-vet.ts';

/** The root of the checkout. */
export const ROOT: string = fileURLToPath(new URL('../../..', import.meta.url));

/** What a command line answered. */
export interface Captured {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command line in this process on real files and keeps what it prints. What was vetted before, byte for byte, is not proved again. */
export async function captured(argv: readonly string[], changes: Partial<Io> = {}): Promise<Captured> {
  const out: string[] = [];
  const err: string[] = [];
  const io: Io = {
    ...nodeIo(),
    out: { write: (more) => void out.push(more), isTerminal: false },
    err: { write: (more) => void err.push(more), isTerminal: false },
    cwd: ROOT,
    env: {},
    ...changes,
  };
  const code = await run(argv, io, rememberedVet);
  return { code, out: out.join(''), err: err.join('') };
}

/** A path in fixtures/. */
export function fixture(name: string): string {
  return resolve(ROOT, 'fixtures', name);
}
