// Reads thousands of drawings from open icon packages and compares every area with the coverage that an independent renderer paints.
// Fetches the packages on demand into a cache that git ignores. Needs a build (npm run build:code).
import { relative } from 'node:path';
import process from 'node:process';
import { Worker } from 'node:worker_threads';
import { EXPLAINING } from './as-counted.mjs';
import { fetchPackage } from './fetch-package.mjs';
import { PACKAGES } from './packages.mjs';

const CACHE = 'node_modules/.cache/sweep';
const WORKERS = 2;
const MEDIAN_BOUND = 0.001;
const SINGLE_BOUND = 0.01;

const started = Date.now();
const files = PACKAGES.flatMap((entry) => {
  const all = fetchPackage(CACHE, entry);
  // evenly over the package, so that every kind of file in it is met
  const step = Math.max(1, all.length / entry.take);
  const taken = Array.from({ length: Math.min(entry.take, all.length) }, (_, i) => all[Math.floor(i * step)]);
  console.log(
    `${entry.name}@${entry.version} (${entry.licence}): ${taken.length} of ${all.length} files; ${entry.shows}`,
  );
  return taken;
});
const results = await measureAll(files);

const crashes = results.filter((r) => r.crash !== undefined);
const compared = results.filter((r) => r.crash === undefined && r.rasterMm2 > 0);
const errorOf = (r) => Math.abs(r.areaMm2 - r.rasterMm2) / r.rasterMm2;
const errors = compared.map(errorOf).sort((a, b) => a - b);
const median = errors[Math.floor(errors.length / 2)] ?? Number.NaN;
const above = compared.filter((r) => errorOf(r) > SINGLE_BOUND);
// a notice explains a difference when a renderer agrees once the drawing is edited to what the notice says was counted
const unexplained = above.filter(
  (r) =>
    Math.abs(r.areaMm2 - r.countedMm2) > SINGLE_BOUND * r.countedMm2 ||
    !r.notices.some((code) => EXPLAINING.has(code)),
);

console.log(`\n${results.length} files read, ${crashes.length} crashes, ${compared.length} compared`);
console.log(`median relative error ${(100 * median).toFixed(4)} % (bound ${100 * MEDIAN_BOUND} %)`);
console.log(
  `above ${100 * SINGLE_BOUND} %: ${above.length}, of them not explained by what the notices say was counted: ${unexplained.length}`,
);
for (const code of EXPLAINING) {
  const group = above.filter((r) => r.notices.includes(code));
  if (group.length > 0) {
    console.log(
      `  with ${code}: ${group.length}, up to ${(100 * Math.max(...group.map(errorOf))).toFixed(1)} %`,
    );
  }
}
for (const r of crashes.slice(0, 10)) {
  console.log(`CRASH ${relative(CACHE, r.file)}: ${r.crash}`);
}
for (const r of unexplained.slice(0, 40)) {
  console.log(
    `OFF ${relative(CACHE, r.file)}: ${r.areaMm2.toFixed(4)} mm² against ${r.rasterMm2.toFixed(4)} (${(100 * errorOf(r)).toFixed(2)} %), edited ${r.countedMm2.toFixed(4)}; ${r.notices.join(' ')}`,
  );
}
console.log(`${((Date.now() - started) / 1000).toFixed(0)} s`);
if (crashes.length > 0 || unexplained.length > 0 || !(median < MEDIAN_BOUND) || results.length < 2000) {
  process.exitCode = 1;
}

function measureAll(queue) {
  const results = [];
  let next = 0;
  return new Promise((resolve, reject) => {
    for (let i = 0; i < WORKERS; i++) {
      const worker = new Worker(new URL('./measure-file.mjs', import.meta.url));
      const feed = () => {
        if (next < queue.length) {
          worker.postMessage(queue[next++]);
        } else {
          worker.terminate();
          if (results.length === queue.length) {
            resolve(results);
          }
        }
      };
      worker.on('message', (result) => {
        results.push(result);
        feed();
      });
      worker.on('error', reject);
      feed();
    }
  });
}
