import type { CleanRegion } from '@pourproof/plane';

/**
 * Local thickness of a region on a raster, as Hildebrand and Rüegsegger define it (1997, from memory): at each pixel the diameter of the
 * largest disc that fits and covers it. Knows nothing of a medial axis: distances are to every edge by brute force, centres are pixels.
 */
export interface RasterThickness {
  readonly pixelMm: number;
  readonly columns: number;
  readonly rows: number;
  /** Thickness in mm at the middle of each pixel, row by row; 0 outside. */
  readonly thickness: Float64Array;
  /** Index of the pixel that holds a point. */
  readonly pixelAt: (x: number, y: number) => number;
}

export function rasterThickness(region: CleanRegion, pixelMm: number): RasterThickness {
  const edges = edgesOf(region);
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < region.coords.length; i += 2) {
    minX = Math.min(minX, region.coords[i]);
    maxX = Math.max(maxX, region.coords[i]);
    minY = Math.min(minY, region.coords[i + 1]);
    maxY = Math.max(maxY, region.coords[i + 1]);
  }
  const columns = Math.ceil((maxX - minX) / pixelMm) + 1;
  const rows = Math.ceil((maxY - minY) / pixelMm) + 1;
  const clearance = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    const inside = insideAlong(edges, minX, minY + (row + 0.5) * pixelMm, pixelMm, columns);
    for (let column = 0; column < columns; column++) {
      if (inside[column] === 1) {
        const x = minX + (column + 0.5) * pixelMm;
        clearance[row * columns + column] = distance(edges, x, minY + (row + 0.5) * pixelMm);
      }
    }
  }
  return {
    pixelMm,
    columns,
    rows,
    thickness: largestCover(clearance, columns, rows, pixelMm),
    pixelAt: (x, y) => Math.floor((y - minY) / pixelMm) * columns + Math.floor((x - minX) / pixelMm),
  };
}

function edgesOf({ coords, ringEnds }: CleanRegion): Float64Array {
  const edges = new Float64Array(2 * coords.length);
  let from = 0;
  for (const to of ringEnds) {
    for (let i = from; i < to; i++) {
      const j = i + 1 === to ? from : i + 1;
      edges.set([coords[2 * i], coords[2 * i + 1], coords[2 * j], coords[2 * j + 1]], 4 * i);
    }
    from = to;
  }
  return edges;
}

/** Which middles of pixels along a row lie inside, by crossings of the row. */
function insideAlong(edges: Float64Array, x0: number, y: number, step: number, count: number): Uint8Array {
  const inside = new Uint8Array(count);
  for (let i = 0; i < edges.length; i += 4) {
    if (edges[i + 1] <= y !== edges[i + 3] <= y) {
      const at = edges[i] + ((y - edges[i + 1]) / (edges[i + 3] - edges[i + 1])) * (edges[i + 2] - edges[i]);
      for (let column = Math.max(0, Math.ceil((at - x0) / step - 0.5)); column < count; column++) {
        inside[column] ^= 1;
      }
    }
  }
  return inside;
}

function distance(edges: Float64Array, x: number, y: number): number {
  let least = Infinity;
  for (let i = 0; i < edges.length; i += 4) {
    const dx = edges[i + 2] - edges[i];
    const dy = edges[i + 3] - edges[i + 1];
    const along = ((x - edges[i]) * dx + (y - edges[i + 1]) * dy) / (dx * dx + dy * dy);
    const t = Math.min(1, Math.max(0, along));
    const gx = x - edges[i] - t * dx;
    const gy = y - edges[i + 1] - t * dy;
    least = Math.min(least, gx * gx + gy * gy);
  }
  return Math.sqrt(least);
}

/** Every pixel's disc is laid over the pixels that it covers; the largest stays. */
function largestCover(clearance: Float64Array, columns: number, rows: number, pixelMm: number): Float64Array {
  const thickness = new Float64Array(clearance.length);
  for (let at = 0; at < clearance.length; at++) {
    const radius = clearance[at] / pixelMm;
    const [column, row] = [at % columns, Math.floor(at / columns)];
    for (let dy = -Math.floor(radius); dy <= radius; dy++) {
      const half = Math.sqrt(radius * radius - dy * dy);
      const y = row + dy;
      if (y < 0 || y >= rows) {
        continue;
      }
      for (let x = Math.max(0, Math.ceil(column - half)); x <= Math.min(columns - 1, column + half); x++) {
        const k = y * columns + x;
        thickness[k] = Math.max(thickness[k], 2 * clearance[at]);
      }
    }
  }
  return thickness;
}
