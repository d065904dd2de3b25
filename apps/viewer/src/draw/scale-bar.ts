import { type Bounds, type LengthUnit, MM_PER_INCH } from '@pourproof/plane';
import type { G } from '@svgdotjs/svg.js';

/** The bar is at most this long on screen, px. */
const LONGEST_PX = 140;
const PAD_PX = 14;
const STEPS_MM: readonly number[] = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500];
const STEPS_IN: readonly number[] = [1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 5, 10, 20];

/** Draws a bar of a round length in the lower left corner of the visible box. */
export function drawScaleBar(group: G, box: Bounds, mmPerPx: number, unit: LengthUnit): void {
  const most = LONGEST_PX * mmPerPx;
  const steps = unit === 'mm' ? STEPS_MM : STEPS_IN.map((inches) => inches * MM_PER_INCH);
  const lengthMm = steps.filter((step) => step <= most).at(-1) ?? steps[0] ?? 1;
  const label = unit === 'mm' ? `${lengthMm} mm` : `${inchText(lengthMm / MM_PER_INCH)} in`;
  const x = box[0] + PAD_PX * mmPerPx;
  const y = box[3] - PAD_PX * mmPerPx;
  const tick = 5 * mmPerPx;
  const bar = group.group().addClass('scale-bar');
  bar.path(`M${x} ${y - tick}V${y}H${x + lengthMm}V${y - tick}`);
  bar
    .plain(label)
    .attr({ x: x + lengthMm / 2, y: y - tick, 'font-size': 12 * mmPerPx, 'text-anchor': 'middle' });
}

function inchText(inches: number): string {
  return inches >= 1 ? String(inches) : `1/${Math.round(1 / inches)}`;
}
