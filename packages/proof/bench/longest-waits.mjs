// Longest processor time between two polls of a proof: how long it takes a proof to end that is stopped. node packages/proof/bench/longest-waits.mjs
// [letters …] [--page], after npm run build:code; --page writes docs/method/stopping.md. Linux only: it reads the time of this thread alone, so that
// other work on the machine and the threads of the compiler are not in it.
import { openSync, readSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { openFont, readLettering } from '@pourproof/artwork';
import { settleJob } from '@pourproof/job';
import { judgeDrawing, STAGE_NAMES, Stages, vetDrawing } from '@pourproof/proof';
import { JOBS } from './bench-jobs.mjs';

/** A proof that is stopped is to end within this time, ms. */
const AIM_MS = 50;
/** Up to so many letters ways out are found and tried too. */
const VETTED_LETTERS = 100;
/** One line, which is repeated: letters of it and spaces between lines of equal length. */
const LINE = 'HamburgefonstivWillowBrok';
const asked = process.argv.slice(2).map(Number).filter(Number.isFinite);
const counts = asked.length > 0 ? asked : [100, 1000];
const font = await openFont(
  new Uint8Array(await readFile(new URL('../../../fixtures/fonts/lora-400.ttf', import.meta.url))),
);

const thread = openSync('/proc/thread-self/schedstat');
const line = Buffer.alloc(64);

/** Processor time of this thread so far, ms. */
function threadMs() {
  const length = readSync(thread, line, 0, line.length, 0);
  return Number.parseInt(line.toString('latin1', 0, length), 10) / 1e6;
}

/** Longest waits of one proof, ms by stage; what runs after a stage and in none counts as that stage. */
function waitsOf(drawing, job, isVetted) {
  const waits = new Map();
  let stage = STAGE_NAMES[0];
  let polls = 0;
  let since = threadMs();
  const stages = new Stages({
    onStage: (next) => {
      stage = next;
    },
    isStopped: () => {
      polls++;
      waits.set(stage, Math.max(waits.get(stage) ?? 0, threadMs() - since));
      since = threadMs();
      return false;
    },
  });
  if (isVetted) {
    vetDrawing(drawing, 'bench', job, stages);
  } else {
    judgeDrawing(drawing, 'bench', job, stages, 'none');
  }
  return { waits: [...waits].sort(([, a], [, b]) => b - a), polls };
}

const rows = [];
for (const count of counts) {
  const text = Array.from({ length: Math.ceil(count / LINE.length) }, () => LINE).join('\n');
  const drawing = await readLettering(text, { font, capHeightMm: 15, toleranceMm: 0.01 });
  const edges = drawing.shapes.reduce((sum, { region }) => sum + region.coords.length / 2, 0);
  for (const [name, settings] of Object.entries(JOBS)) {
    for (const run of ['first', 'second']) {
      const { waits, polls } = waitsOf(drawing, settleJob(settings), count <= VETTED_LETTERS);
      const longest = waits.slice(0, 3).map(([stage, ms]) => `${stage} ${ms.toFixed(0)}`);
      rows.push([
        count,
        edges.toLocaleString('en'),
        name,
        run,
        waits[0][1].toFixed(0),
        longest.join(', '),
        polls.toLocaleString('en'),
      ]);
      console.log(rows.at(-1).join(' | '));
    }
  }
}

if (process.argv.includes('--page')) {
  const page = `# How soon a proof stops

Rendered by \`node packages/proof/bench/longest-waits.mjs ${counts.join(' ')} --page\` on ${new Date().toISOString().slice(0, 10)}: ${cpus()[0].model.trim()}, Node ${process.versions.node}.

Loops that take long ask as they go on whether they are to end (\`poll\` and \`pollStep\` of \`packages/plane/src/poll.ts\`). The table has the longest processor time of the
thread between two such questions, ms, by bits and size: of whole vettings up to ${VETTED_LETTERS} letters, of judgings without ways out beyond. The aim is ${AIM_MS} ms. The first run of each
has compiling in it; what is left above some 30 ms is the collector of garbage, which asks nobody. \`tests/proof/work-between-polls.test.ts\` counts work between polls, so that a loop
that does not ask turns it red.

| letters | edges | bits | run | longest, ms | longest stages, ms | polls |
| --- | --- | --- | --- | --- | --- | --- |
${rows.map((row) => `| ${row.join(' | ')} |`).join('\n')}
`;
  writeFileSync(fileURLToPath(new URL('../../../docs/method/stopping.md', import.meta.url)), page);
}
