import { mkdir } from 'node:fs/promises';
import { relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { nodeIo, surviveClosedPipe } from './node-io.ts';
import { run } from './run.ts';

const DEMO = fileURLToPath(new URL('../../../fixtures/demo/', import.meta.url));
const OUT = 'proof-out';

/** Vets the demo order, writes its sheet and overlay, vets it again with the change, and says in words what happened. */
async function demo(): Promise<number> {
  const io = nodeIo();
  const out = resolve(io.cwd, OUT);
  await mkdir(out, { recursive: true });
  const sheet = resolve(out, 'sheet.html');
  const overlay = resolve(out, 'overlay.svg');
  io.out.write(
    'An invented order: a maple serving board, the name Ellerwick over a sprig, carved with one\n1.5 mm bit in bare wood and filled with dark green resin.\n\n',
  );
  const job = resolve(DEMO, 'job.json');
  const before = await run(['vet', '--job', job, '--report', sheet, '--overlay', overlay], io);
  if (before !== 1) {
    return before === 0 ? 70 : before;
  }
  io.out.write(
    [
      '',
      'What clears it: a 1 mm bit after the 1.5 mm one, and one coat of shellac before the colour.',
      `That is ${shown(resolve(DEMO, 'job-after.json'), io.cwd)}; vetted now:`,
      '',
      '',
    ].join('\n'),
  );
  const pieces: string[] = [];
  const quiet = { ...io, out: { write: (text: string) => void pieces.push(text), isTerminal: false } };
  const after = await run(['vet', '--job', resolve(DEMO, 'job-after.json'), '--fail-on', 'note'], quiet);
  io.out.write(`${pieces.join('').split('\n\n')[0] ?? ''}\n\n`);
  io.out.write(`Sheet to print  ${shown(sheet, io.cwd)}\nOverlay         ${shown(overlay, io.cwd)}\n`);
  return after;
}

function shown(path: string, cwd: string): string {
  return relative(cwd, path);
}

surviveClosedPipe();
process.exitCode = await demo();
