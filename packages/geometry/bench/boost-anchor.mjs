// The native Voronoi diagram of segments as an anchor, where a compiler and the library's headers are found.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Coordinates are whole numbers below 2^30, so that differences fit into 32 bits. */
const MOST = 2 ** 30;

/**
 * `{ time(region, runs), close() }`, or undefined where the program can't be built. Headers are looked for in the system's place and in
 * the directory that BOOST_INCLUDE names (the Debian package is libboost-dev).
 */
export function boostAnchor() {
  const dir = mkdtempSync(join(tmpdir(), 'anchor-'));
  const program = join(dir, 'anchor');
  const source = fileURLToPath(new URL('./boost-anchor.cpp', import.meta.url));
  const include = process.env.BOOST_INCLUDE === undefined ? [] : ['-I', process.env.BOOST_INCLUDE];
  const built = spawnSync('g++', ['-O2', '-std=c++17', ...include, '-o', program, source], {
    encoding: 'utf8',
  });
  if (built.status !== 0) {
    rmSync(dir, { recursive: true });
    return undefined;
  }
  return {
    time: (region, runs) => {
      const file = join(dir, 'segments');
      writeFileSync(file, segments(region));
      const { status, stdout } = spawnSync(program, [file, String(runs)], { encoding: 'utf8' });
      return status === 0 ? Number(stdout.split(' ')[0]) : Number.NaN;
    },
    close: () => rmSync(dir, { recursive: true }),
  };
}

/** The count of segments and their ends, scaled to whole numbers; segments that shrink to a point are left out. */
function segments({ coords, ringEnds }) {
  const most = coords.reduce((a, v) => Math.max(a, Math.abs(v)), 0);
  const scale = MOST / most;
  const numbers = [0];
  let from = 0;
  for (const end of ringEnds) {
    for (let i = from; i < end; i++) {
      const j = i + 1 === end ? from : i + 1;
      const ends = [coords[2 * i], coords[2 * i + 1], coords[2 * j], coords[2 * j + 1]].map((v) =>
        Math.round(v * scale),
      );
      if (ends[0] !== ends[2] || ends[1] !== ends[3]) {
        numbers.push(...ends);
      }
    }
    from = end;
  }
  numbers[0] = (numbers.length - 1) / 4;
  return new Uint8Array(Int32Array.from(numbers).buffer);
}
