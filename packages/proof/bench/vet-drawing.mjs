// How long a whole proof takes as artwork grows: node packages/proof/bench/vet-drawing.mjs [largest] [family …]
// Processor time of this process, so that other work on the machine counts little; build first (npm run build:code).
import { readFile } from 'node:fs/promises';
import { openFont, readLettering } from '@pourproof/artwork';
import { settleJob } from '@pourproof/job';
import { judgeDrawing } from '@pourproof/proof';

const LETTERS = 'Handgloves';
const FONT = new URL('../../../fixtures/fonts/lora-400.ttf', import.meta.url);

/** Jobs by name; the board is as wide as the artwork needs. */
const JOBS = {
  plain: { bit: ['flat:1mm'], depth: '2.5mm', wood: 'maple', seal: 'none', coats: 0 },
  sealed: { bit: ['flat:1mm'], depth: '2.5mm', wood: 'walnut', seal: 'epoxy', coats: 1 },
  checks: {
    bit: ['flat:1mm'],
    depth: '2.5mm',
    seal: 'none',
    coats: 0,
    board: 'checkerboard 2400x2400x20mm maple walnut square:60mm',
  },
  vee: { bit: ['vee:60deg:12.7mm'], depth: '4mm', wood: 'maple', seal: 'epoxy', coats: 1 },
};

/** Drawings of about `points` vertices. */
const FAMILIES = {
  lettering: async (points) => {
    const font = await openFont(new Uint8Array(await readFile(FONT)));
    const line = await readLettering(LETTERS, { font, capHeightMm: 12, toleranceMm: 0.005 });
    const each = count(line);
    const rows = Math.max(1, Math.round(points / each));
    const shapes = Array.from({ length: rows }, (_, row) =>
      line.shapes.map((shape) => ({ ...shape, region: moved(shape.region, 0, 20 * row) })),
    ).flat();
    return { ...line, shapes };
  },
  discs: (points) => {
    const side = Math.max(1, Math.round(Math.sqrt(points / 64)));
    return drawing(
      Array.from({ length: side * side }, (_, k) =>
        ring(10 * (k % side), 10 * Math.floor(k / side), 64, () => 3),
      ),
    );
  },
  coast: (points) =>
    drawing([
      ring(
        0,
        0,
        points,
        (angle) =>
          400 * (1 + 0.2 * Math.sin(5 * angle) + 0.05 * Math.sin(97 * angle) + 0.01 * Math.sin(1511 * angle)),
      ),
    ]),
};

function ring(x, y, points, radius) {
  const coords = new Float64Array(2 * points);
  for (let k = 0; k < points; k++) {
    const angle = (2 * Math.PI * k) / points;
    coords[2 * k] = x + radius(angle) * Math.cos(angle);
    coords[2 * k + 1] = y + radius(angle) * Math.sin(angle);
  }
  return coords;
}

function drawing(rings) {
  return {
    format: 'svg',
    scaleSource: 'made by the bench',
    toleranceMm: 0.005,
    notices: [],
    shapes: rings.map((coords, k) => ({
      region: { coords, ringEnds: Uint32Array.of(coords.length / 2), fillRule: 'nonzero' },
      layer: '',
      colour: '#000000',
      source: `ring ${k}`,
    })),
  };
}

function moved(region, dx, dy) {
  return { ...region, coords: region.coords.map((value, i) => value + (i % 2 === 0 ? dx : dy)) };
}

function count({ shapes }) {
  return shapes.reduce((sum, { region }) => sum + region.coords.length / 2, 0);
}

const [largest = '100000', ...chosen] = process.argv.slice(2);
const families = Object.keys(FAMILIES).filter((name) => chosen.length === 0 || chosen.includes(name));
const jobs = Object.keys(JOBS).filter(
  (name) => !chosen.some((each) => each in JOBS) || chosen.includes(name),
);
const sizes = [Number(largest) / 16, Number(largest) / 4, Number(largest)];
console.log('family     job     vertices  processor s  growth');
for (const family of families.length > 0 ? families : Object.keys(FAMILIES)) {
  for (const job of jobs) {
    let before = null;
    for (const size of sizes) {
      const art = await FAMILIES[family](size);
      const start = process.cpuUsage();
      judgeDrawing(art, family, settleJob(JOBS[job]));
      const { user, system } = process.cpuUsage(start);
      const seconds = (user + system) / 1e6;
      const points = count(art);
      // exponent between this size and the one before
      const growth =
        before === null
          ? ''
          : (Math.log(seconds / before.seconds) / Math.log(points / before.points)).toFixed(2);
      console.log(
        `${family.padEnd(10)} ${job.padEnd(7)} ${String(points).padStart(8)}  ${seconds.toFixed(2).padStart(11)}  ${growth.padStart(6)}`,
      );
      before = { seconds, points };
    }
  }
}
