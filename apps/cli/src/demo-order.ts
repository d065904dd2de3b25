import { relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Io } from './io.ts';
import { run } from './run.ts';

const DEMO = fileURLToPath(new URL('../../../fixtures/demo/', import.meta.url));
/** Where sheet and overlay go, below the folder that the demo is run in. */
const OUT = 'proof-out';

/**
 * Vets the demo order, writes its sheet and overlay, vets it again with the change, and says in words what happened.
 *
 * @returns 0 when the first job is stopped and the changed one is clear, as they are meant to; the failing exit code otherwise
 */
export async function demoOrder(io: Io): Promise<number> {
  const out = resolve(io.cwd, OUT);
  await io.makeFolder(out);
  const sheet = resolve(out, 'sheet.html');
  const overlay = resolve(out, 'overlay.svg');
  const changedJob = resolve(DEMO, 'job-after.json');
  io.out.write(
    [
      'An invented order: a serving board in hard maple with the made-up family name Ellerwick',
      'over a sprig, to be carved with one 1.5 mm bit in bare wood and filled with dark green resin.',
      '',
      '',
    ].join('\n'),
  );
  const before = await run(
    ['vet', '--job', resolve(DEMO, 'job.json'), '--report', sheet, '--overlay', overlay],
    io,
  );
  if (before !== 1) {
    return before === 0 ? 70 : before;
  }
  io.out.write(
    [
      '',
      'What clears it: a 1 mm bit after the 1.5 mm one, and a coat of clear epoxy the day before.',
      `That job is ${relative(io.cwd, changedJob)}. Vetted now:`,
      '',
      '',
    ].join('\n'),
  );
  const pieces: string[] = [];
  const kept: Io = { ...io, out: { write: (text) => void pieces.push(text), isTerminal: false } };
  const after = await run(['vet', '--job', changedJob, '--fail-on', 'note'], kept);
  // the verdict and what will be cut: the first two paragraphs
  io.out.write(`${pieces.join('').split('\n\n').slice(0, 2).join('\n\n')}\n\n`);
  io.out.write(
    `Sheet to print: ${relative(io.cwd, sheet)}\nOverlay in real size: ${relative(io.cwd, overlay)}\n`,
  );
  return after;
}
