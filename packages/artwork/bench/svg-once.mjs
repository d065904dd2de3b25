// Reads one drawing of svg-drawings.mjs in a process of its own and prints what it cost as JSON: node svg-once.mjs <name> <bytes> <runs> <resolve|read>
// In a process of its own since a heap that another drawing has grown hides what this one needs.
import process from 'node:process';
import { resolveRegions } from '@pourproof/arrangement';
import { readSvg } from '@pourproof/artwork';
import { DRAWINGS } from './svg-drawings.mjs';

const [, , name, size, runs, until] = process.argv;
const bytes = DRAWINGS[name](Number(size));
const seconds = (work) => {
  const started = process.cpuUsage();
  const wallStarted = performance.now();
  const result = work();
  const { user, system } = process.cpuUsage(started);
  return { result, cpu: (user + system) / 1e6, wall: (performance.now() - wallStarted) / 1e3 };
};

const read = [];
const both = [];
let drawing;
for (let run = 0; run < Number(runs); run++) {
  drawing = undefined;
  // these two calls are the marks by which the trace of the collector is cut into before, during and after
  globalThis.gc();
  const reading = seconds(() => readSvg(bytes));
  drawing = reading.result;
  globalThis.gc();
  read.push(reading.cpu);
  if (until === 'resolve') {
    const resolving = seconds(() => resolveRegions(drawing.shapes.map((shape) => shape.region)));
    both.push({ cpu: reading.cpu + resolving.cpu, wall: reading.wall + resolving.wall });
  }
}
const coordBytes = drawing.shapes.reduce((sum, { region }) => sum + region.coords.byteLength, 0);
const shapes = drawing.shapes.length;
const areaLike = drawing.shapes.reduce(
  (sum, { region }) => sum + region.coords.reduce((s, c) => s + c, 0),
  0,
);
process.stderr.write(
  JSON.stringify({
    bytes: bytes.length,
    shapes,
    coordBytes,
    checksum: areaLike.toPrecision(12),
    readS: Math.min(...read),
    bothS: Math.min(...both.map((b) => b.cpu)),
    bothWallS: Math.min(...both.map((b) => b.wall)),
    rssBytes: process.resourceUsage().maxRSS * 1024,
  }),
);
