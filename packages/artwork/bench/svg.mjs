// Time and memory of reading SVG, by kind of drawing and size of the file. Run after `npm run build:code`:
//   node --expose-gc packages/artwork/bench/svg.mjs [largest size in MB, default 2]
// Prints seconds of processor time (least of three), per MB, the memory that the result and the work took on top of the file, as a
// multiple of its size, and a checksum that must not change with speed-ups.
import process from 'node:process';
import { readSvg } from '@pourproof/artwork';

const largest = Number(process.argv[2] ?? 2);

const drawings = {
  'fill of small curves': (bytes) => page(`<path d="${curves(bytes, 3)}"/>`),
  'fill of large curves': (bytes) => page(`<path d="${curves(bytes, 300)}"/>`),
  'fill of lines': (bytes) => page(`<path d="${lines(bytes)}"/>`),
  'stroke of lines': (bytes) => page(`<path fill="none" stroke="#000" d="${lines(bytes)}"/>`),
  squares: (bytes) =>
    page(
      repeat(
        bytes / 45,
        (i) => `<rect x="${(i % 300) * 3}" y="${Math.floor(i / 300) * 3}" width="2" height="2"/>`,
      ),
    ),
  'squares of two colours by class': (bytes) =>
    page(
      `<style>.a{fill:red}.b{fill:blue}</style>${repeat(bytes / 55, (i) => `<rect class="${i % 2 ? 'a' : 'b'}" x="${(i % 300) * 3}" y="${Math.floor(i / 300) * 3}" width="2" height="2"/>`)}`,
    ),
};

function page(body) {
  return new TextEncoder().encode(
    `<svg xmlns="http://www.w3.org/2000/svg" width="1000mm" height="1000mm" viewBox="0 0 1000 1000">${body}</svg>`,
  );
}

function repeat(count, make) {
  return Array.from({ length: Math.floor(count) }, (_, i) => make(i)).join('');
}

/** A fixed sequence of numbers 0…1, so that runs compare. */
function numbers(seed) {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    return state / 0x7fffffff;
  };
}

function curves(bytes, size) {
  const next = numbers(1);
  const off = () => (size * (next() - 0.5)).toFixed(2);
  return repeat(bytes / 33, (i) =>
    i % 40 === 0
      ? `M${(1000 * next()).toFixed(1)} ${(1000 * next()).toFixed(1)}`
      : `c${off()} ${off()} ${off()} ${off()} ${off()} ${off()}${i % 40 === 39 ? 'z' : ''}`,
  );
}

function lines(bytes) {
  const next = numbers(7);
  const off = () => (6 * (next() - 0.5)).toFixed(2);
  return repeat(bytes / 11, (i) =>
    i % 40 === 0
      ? `M${(1000 * next()).toFixed(1)} ${(1000 * next()).toFixed(1)}`
      : `l${off()} ${off()}${i % 40 === 39 ? 'z' : ''}`,
  );
}

function measure(bytes) {
  let least = Number.POSITIVE_INFINITY;
  let memory = 0;
  let checksum = 0;
  for (let run = 0; run < 3; run++) {
    globalThis.gc?.();
    const before = process.memoryUsage();
    const started = process.cpuUsage();
    const drawing = readSvg(bytes);
    const { user, system } = process.cpuUsage(started);
    const after = process.memoryUsage();
    least = Math.min(least, (user + system) / 1e6);
    memory = Math.max(memory, after.heapUsed + after.arrayBuffers - before.heapUsed - before.arrayBuffers);
    checksum = drawing.shapes.reduce((sum, { region }) => sum + region.coords.reduce((s, c) => s + c, 0), 0);
  }
  return { least, memory, checksum };
}

for (const [name, make] of Object.entries(drawings)) {
  for (let mb = largest / 8; mb <= largest; mb *= 2) {
    const bytes = make(mb * 1e6);
    const size = bytes.length / 1e6;
    const { least, memory, checksum } = measure(bytes);
    console.log(
      `svg / ${name} / ${size.toFixed(2)} MB: ${least.toFixed(3)} s, ${(least / size).toFixed(3)} s/MB, memory ${(memory / bytes.length).toFixed(1)} × file, checksum ${checksum.toPrecision(12)}`,
    );
  }
}
