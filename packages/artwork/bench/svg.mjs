// Time and memory of reading SVG, by kind of drawing and size of the file. Run after `npm run build:code`:
//   node packages/artwork/bench/svg.mjs [largest size in MB, default 2] [part of a family's name] [--no-memory]
// For each family and size (doubling) it prints processor seconds for reading and for reading and resolving (least of the runs, all threads of the
// process counted), MB read per second, and memory as a multiple of the file's size:
//   peak    most live heap and array memory during the reading above what lived before it (the file's own bytes are before it), from the
//           collector's own trace, with a full collection at each step of new allocation, so that garbage does not count
//   result  what of it is the drawing that was asked for: all that lives after the reading less what lived before
//   coords  its coordinates alone: 16 bytes for each point
// working is peak less result. Then the exponents by which both times grew from the size before, and the most memory that the process held, with
// garbage, the engine and its own code. The checksum must not change with speed-ups.
import { spawnSync } from 'node:child_process';
import process from 'node:process';
import { DRAWINGS } from './svg-drawings.mjs';

const args = process.argv.slice(2).filter((arg) => !arg.startsWith('--'));
const largest = Number(args[0] ?? 2);
const only = args[1] ?? '';
const withMemory = !process.argv.includes('--no-memory');
/** Smallest size, in MB, from which growth is told. */
const SMALLEST = Math.min(0.25, largest);
/** Up to these sizes, in MB, memory is traced and shapes are resolved: a full collection at each step, and a board's worth of drawing many times over. */
const MOST_TRACED = 5;
const MOST_RESOLVED = 20;
const ONCE = new URL('./svg-once.mjs', import.meta.url).pathname;
const KB = 1024;

for (const name of Object.keys(DRAWINGS).filter((n) => n.includes(only))) {
  let before;
  for (let mb = SMALLEST; mb <= largest * 1.001; mb *= mb < 2 ? 2 : 5) {
    const time = once(name, mb, mb <= 2 ? 3 : 1, ['--expose-gc'], mb <= MOST_RESOLVED ? 'resolve' : 'read');
    const memory = withMemory && mb <= MOST_TRACED ? memoryOf(name, mb) : '';
    const { bytes, readS, bothS, bothWallS } = time;
    const both =
      bothS === null ? '' : `, with resolving ${bothS.toFixed(3)} s (wall ${bothWallS.toFixed(3)})`;
    const growth =
      before === undefined
        ? ''
        : `, growth ^${exponent(before, time, 'readS')} ^${exponent(before, time, 'bothS')}`;
    before = time;
    console.log(
      `${name} / ${(bytes / 1e6).toFixed(2)} MB, ${time.shapes} shapes: read ${readS.toFixed(3)} s${both}, ${(bytes / 1e6 / readS).toFixed(1)} MB/s${growth}${memory}, rss ${(time.rssBytes / 1e6).toFixed(0)} MB, checksum ${time.checksum}`,
    );
  }
}

function once(name, mb, runs, flags, until = 'resolve') {
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    ['--max-old-space-size=12000', ...flags, ONCE, name, String(mb * 1e6), String(runs), until],
    { encoding: 'utf8', maxBuffer: 2 ** 30 },
  );
  if (status !== 0) {
    throw new Error(`${name} at ${mb} MB ended with ${status}: ${stderr.slice(-2000)}`);
  }
  return { ...JSON.parse(stderr), stdout };
}

function exponent(a, b, key) {
  return b[key] === null ? '–' : (Math.log(b[key] / a[key]) / Math.log(b.bytes / a.bytes)).toFixed(2);
}

function memoryOf(name, mb) {
  // a full collection each time the young generation is full: every MB of new objects, in large files every 16
  const step = mb > 2 ? 16 : 1;
  const flags = [
    '--expose-gc',
    '--gc-global',
    `--max-semi-space-size=${step}`,
    '--trace-gc',
    '--trace-gc-verbose',
  ];
  const { bytes, coordBytes, stdout } = once(name, mb, 1, flags, 'read');
  const live = liveBytes(stdout);
  const marks = live.flatMap(({ asked }, i) => (asked ? [i] : []));
  const [first, last] = marks.slice(-2);
  const idle = live[first].bytes;
  const peak = Math.max(...live.slice(first, last + 1).map((l) => l.bytes)) - idle;
  const kept = live[last].bytes - idle;
  const ratio = (n) => (n / bytes).toFixed(1);
  return `, memory peak ${ratio(peak)} × file, result ${ratio(kept)}, coords ${ratio(coordBytes)}, working ${ratio(peak - kept)}`;
}

/** Live bytes after each full collection, heap and arrays outside of it, and whether the program asked for it. */
function liveBytes(trace) {
  const out = [];
  for (const line of trace.split('\n')) {
    if (line.includes(' Mark-Compact ')) {
      out.push({ asked: line.includes('testing'), bytes: 0 });
    }
    const last = out[out.length - 1];
    const found = /(?:All spaces,\s+used|Backing store memory):\s+(\d+) KB/.exec(line);
    if (found !== null && last !== undefined) {
      last.bytes += Number(found[1]) * KB;
    }
  }
  return out;
}
