// Time and memory of reading DXF, by kind of drawing and number of lines. Run after `npm run build:code`:
//   node --expose-gc packages/artwork/bench/dxf.mjs [largest number of lines, default 100000]
// Prints seconds of processor time, which other programs on the machine do not add to (median of three, lowest–highest),
// microseconds per line, and a checksum that must not change with speed-ups.
import { readDxf } from '@pourproof/artwork';

const largest = Number(process.argv[2] ?? 100_000);

const line = (x0, y0, x1, y1) => `0\nLINE\n8\nA\n10\n${x0}\n20\n${y0}\n11\n${x1}\n21\n${y1}\n`;

const drawings = {
  squares: (n) => repeat(n / 4, (i) => square((i % 1000) * 3, Math.floor(i / 1000) * 3, 2)),
  'squares drawn twice': (n) =>
    repeat(n / 8, (i) => square((i % 1000) * 3, Math.floor(i / 1000) * 3, 2).repeat(2)),
  'one long outline': (n) => repeat(n, (i) => spoke(i, i + 1, n, 1000)),
  'crossing grid': (n) => repeat(n / 2, (i) => line(i, -1, i, n / 2) + line(-1, i, n / 2, i)),
  'cells of a grid': (n) => {
    const side = Math.floor(Math.sqrt(n / 2));
    return repeat(side * side, (i) => {
      const [x, y] = [i % side, Math.floor(i / side)];
      return line(x, y, x + 1, y) + line(x, y, x, y + 1);
    });
  },
  'lines through one node': (n) => repeat(n, (i) => line(0, 0, 1000 * Math.cos(i), 1000 * Math.sin(i))),
  'triangles at one node': (n) => repeat(n / 3, (i) => fan(i, n / 3)),
  'lines upon one line': (n) => repeat(n, (i) => line(0, 0, 1 + i / 100, 0)),
  'squares in squares': (n) => repeat(n / 4, (i) => square(-i - 1, -i - 1, 2 * i + 2)),
  'squares from one corner': (n) => repeat(n / 4, (i) => square(0, 0, i + 1)),
  'small gaps': (n) => repeat(n / 4, (i) => gapped((i % 1000) * 3, Math.floor(i / 1000) * 3)),
  circles: (n) =>
    repeat(n, (i) => `0\nCIRCLE\n8\nA\n10\n${(i % 1000) * 3}\n20\n${Math.floor(i / 1000) * 3}\n40\n1\n`),
  'copies of a block': (n) => `0\nINSERT\n8\nA\n2\nB\n70\n${Math.floor(n / 4)}\n44\n3\n10\n0\n20\n0\n`,
};

function repeat(count, make) {
  const parts = [];
  for (let i = 0; i < Math.floor(count); i++) {
    parts.push(make(i));
  }
  return parts.join('');
}

function square(x, y, s) {
  return (
    line(x, y, x + s, y) + line(x + s, y, x + s, y + s) + line(x + s, y + s, x, y + s) + line(x, y + s, x, y)
  );
}

function gapped(x, y) {
  return (
    line(x, y, x + 2, y) +
    line(x + 2, y + 0.02, x + 2, y + 2) +
    line(x + 2, y + 2, x, y + 2.03) +
    line(x, y + 2, x, y)
  );
}

function spoke(i, j, n, r) {
  const at = (k) => [r * Math.cos((2 * Math.PI * (k % n)) / n), r * Math.sin((2 * Math.PI * (k % n)) / n)];
  return line(...at(i), ...at(j));
}

function fan(i, n) {
  const at = (k) => [1000 * Math.cos((2 * Math.PI * k) / n), 1000 * Math.sin((2 * Math.PI * k) / n)];
  return line(0, 0, ...at(i)) + line(...at(i), ...at(i + 0.5)) + line(...at(i + 0.5), 0, 0);
}

function file(entities) {
  const header = '0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n';
  const block = `0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n8\n0\n2\nB\n10\n0\n20\n0\n${square(0, 0, 2)}0\nENDBLK\n0\nENDSEC\n`;
  return `${header}${block}0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;
}

function checksum(drawing) {
  let sum = 0;
  for (const { region } of drawing.shapes) {
    for (const c of region.coords) {
      sum = (sum * 31 + Math.round(c * 1000)) % 2147483647;
    }
  }
  return sum;
}

for (const [name, make] of Object.entries(drawings)) {
  for (let n = 10_000; n <= largest; n *= 10) {
    const source = new TextEncoder().encode(file(make(n)));
    const seconds = [];
    let drawing;
    for (let round = 0; round < (n > 200_000 ? 1 : 3); round++) {
      const start = process.cpuUsage();
      drawing = readDxf(source);
      const { user, system } = process.cpuUsage(start);
      seconds.push((user + system) / 1e6);
    }
    seconds.sort((a, b) => a - b);
    const median = seconds[Math.floor(seconds.length / 2)];
    globalThis.gc?.();
    const peak = process.memoryUsage().heapUsed / 1e6;
    console.log(
      `${name.padEnd(24)} ${String(n).padStart(8)} lines ${(source.length / 1e6).toFixed(1).padStart(6)} MB  ${median.toFixed(3)} s (${seconds[0].toFixed(3)}–${seconds.at(-1).toFixed(3)})  ${((median / n) * 1e6).toFixed(2)} µs/line  kept ${peak.toFixed(0)} MB  sum ${checksum(drawing)}`,
    );
  }
}
