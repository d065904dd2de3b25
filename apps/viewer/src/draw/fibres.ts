import { type Bounds, radians } from '@pourproof/plane';
import type { G } from '@svgdotjs/svg.js';

const LENGTH_PX = 52;
const PAD_PX = 40;

/** Draws three strokes along the fibres in the lower right corner of the visible box. */
export function drawFibres(group: G, box: Bounds, mmPerPx: number, grainDeg: number): void {
  const half = (LENGTH_PX * mmPerPx) / 2;
  const dx = Math.cos(radians(grainDeg));
  const dy = -Math.sin(radians(grainDeg));
  const cx = box[2] - PAD_PX * mmPerPx;
  const cy = box[3] - PAD_PX * mmPerPx;
  const fibres = group.group().addClass('fibre-sign');
  for (const [offset, share] of [
    [-6, 0.7],
    [0, 1],
    [6, 0.7],
  ] as const) {
    const ox = cx - dy * offset * mmPerPx;
    const oy = cy + dx * offset * mmPerPx;
    fibres.line(
      ox - dx * half * share,
      oy - dy * half * share,
      ox + dx * half * share,
      oy + dy * half * share,
    );
  }
}
