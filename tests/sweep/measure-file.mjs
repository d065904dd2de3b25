import { readFileSync } from 'node:fs';
import { parentPort } from 'node:worker_threads';
import { resolveRegions } from '@pourproof/arrangement';
import { readArtwork } from '@pourproof/artwork';
import { signedArea } from '@pourproof/plane';
import { Resvg } from '@resvg/resvg-js';
import { asCounted } from './as-counted.mjs';

/** Long side of the raster in pixels: finer changes the median by less than it is worth in time. */
const RASTER_PX = 1200;

/** Differences above this part of the area are looked into. */
const SINGLE_BOUND = 0.01;

// measures one file at a time: area by the reader and the resolver against the coverage of an independent renderer
parentPort?.on('message', (file) => {
  try {
    parentPort?.postMessage({ file, ...measure(file) });
  } catch (error) {
    parentPort?.postMessage({
      file,
      crash: error instanceof Error ? (error.stack ?? error.message) : String(error),
    });
  }
});

function measure(file) {
  const bytes = readFileSync(file);
  const drawing = readArtwork(bytes, file);
  const { region } = resolveRegions(drawing.shapes.map((shape) => shape.region));
  const areaMm2 = signedArea(region);
  const svg = bytes.toString('utf8');
  const page = drawing.pageMm;
  const rasterMm2 = coveredMm2(svg, page, 1);
  const notices = drawing.notices.map((notice) => notice.code);
  const result = { areaMm2, rasterMm2, notices };
  if (Math.abs(areaMm2 - rasterMm2) <= SINGLE_BOUND * rasterMm2) {
    return result;
  }
  const counted = asCounted(svg, notices);
  return { ...result, countedMm2: coveredMm2(counted.svg, page, counted.times) };
}

/** Area that a renderer covers, of a page so many times as long on each side as the drawing's. */
function coveredMm2(svg, page, times) {
  const { pixels, width, height } = new Resvg(svg, {
    fitTo: { mode: 'width', value: times * RASTER_PX },
  }).render();
  let sum = 0;
  for (let i = 3; i < pixels.length; i += 4) {
    sum += pixels[i];
  }
  return (sum / 255) * ((times * page.widthMm) / width) * ((times * page.heightMm) / height);
}
