import type { Io } from './io.ts';
import { KeptFault } from './kept-fault.ts';

/** What is told of a fault of ours: no stack trace unless asked for. */
export function faultText(error: unknown, io: Io): string {
  const what = error instanceof Error ? error.message : String(error);
  return [
    `pourproof: a fault in pourproof itself, not in your file: ${what}\n`,
    error instanceof KeptFault ? '  No figure of this proof is shown, since one of them may be wrong.\n' : '',
    `  What to do: please report it with ${reportedWith(error)}. POURPROOF_DEBUG=1 shows where it happened.\n`,
    io.env.POURPROOF_DEBUG === '1' ? stackOf(error) : '',
  ].join('');
}

function reportedWith(error: unknown): string {
  return error instanceof KeptFault && error.path !== null
    ? `${error.path}, which holds the artwork, its font and the job`
    : 'the input and the command';
}

/** Where it happened: of a fault that was kept, where that was thrown first. */
function stackOf(error: unknown): string {
  const first = error instanceof KeptFault ? error.cause : error;
  return first instanceof Error ? `${first.stack ?? ''}\n` : '';
}
