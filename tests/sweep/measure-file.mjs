import { readFileSync } from 'node:fs';
import { parentPort } from 'node:worker_threads';
import { readArtwork } from '@pourproof/artwork';
import { resolveRegions } from '@pourproof/geometry';
import { signedArea } from '@pourproof/plane';
import { Resvg } from '@resvg/resvg-js';

/** Long side of the raster in pixels: finer changes the median by less than it is worth in time. */
const RASTER_PX = 1200;

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
  const image = new Resvg(bytes.toString('utf8'), { fitTo: { mode: 'width', value: RASTER_PX } }).render();
  const { pixels } = image;
  let sum = 0;
  for (let i = 3; i < pixels.length; i += 4) {
    sum += pixels[i];
  }
  const page = drawing.pageMm;
  const rasterMm2 = (sum / 255) * (page.widthMm / image.width) * (page.heightMm / image.height);
  return { areaMm2, rasterMm2, notices: drawing.notices.map((notice) => notice.code) };
}
