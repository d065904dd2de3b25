import { bitSize } from '@pourproof/job';
import { type LengthUnit, mmFromInches } from '@pourproof/plane';
import type { G } from '@svgdotjs/svg.js';
import type { SheetSize, View } from './view.ts';

/** Maximum length of the scale bar, and its distance from the sheet's edge, px. */
const MAX_BAR_PX = 150;
const EDGE_PX = 22;

/** What the margin shows of the fibres: their angle, end grain, or nothing where blocks differ. */
export type FibreSign = number | 'end' | 'mixed';

/** Draws what stands in the margin of the sheet: a scale bar in the maker's unit and the arrow of the fibres. */
export function drawMargin(into: G, view: View, size: SheetSize, fibres: FibreSign, unit: LengthUnit): void {
  into.clear();
  drawScaleBar(into, view, size, unit);
  if (typeof fibres === 'number') {
    drawFibreArrow(into, size, fibres);
  } else if (fibres === 'end') {
    into.plain('end grain up').attr({ x: size.widthPx - 14, y: size.heightPx - 10, 'text-anchor': 'end' });
  }
}

function drawScaleBar(into: G, view: View, size: SheetSize, unit: LengthUnit): void {
  const lengthMm = barLengthMm(MAX_BAR_PX / view.pxPerMm, unit);
  const length = lengthMm * view.pxPerMm;
  const y = size.heightPx - EDGE_PX;
  const bar = into.group().addClass('bar');
  bar.path(`M${EDGE_PX} ${y - 5}v10M${EDGE_PX} ${y}h${length}m0 -5v10`);
  bar.plain(bitSize(lengthMm, unit)).attr({ x: EDGE_PX + length + 8, y: y + 4 });
}

/** The longest of 1, 2, 5 × 10ⁿ mm that fits; in inches, of the same and of ½, ¼, … in. */
function barLengthMm(maxMm: number, unit: LengthUnit): number {
  const oneMm = unit === 'mm' ? 1 : mmFromInches(1);
  const max = maxMm / oneMm;
  if (unit === 'in' && max < 1) {
    return oneMm * 2 ** Math.floor(Math.log2(max));
  }
  const power = 10 ** Math.floor(Math.log10(max));
  return oneMm * power * ([5, 2].find((step) => step * power <= max) ?? 1);
}

function drawFibreArrow(into: G, size: SheetSize, grainDeg: number): void {
  const x = size.widthPx - 60;
  const y = size.heightPx - EDGE_PX - 16;
  const arrow = into.group().addClass('fibre-arrow');
  const shaft = arrow.group();
  shaft.path(`M${x - 24} ${y}h48m-7 -5l7 5l-7 5M${x - 17} ${y - 5}l-7 5l7 5`);
  shaft.path(`M${x - 15} ${y - 4.5}h30M${x - 15} ${y + 4.5}h30`).addClass('fibres');
  // angles are counter-clockwise here, clockwise in SVG
  shaft.attr('transform', `rotate(${-grainDeg} ${x} ${y})`);
  arrow
    .plain(`fibres ${Number(grainDeg.toFixed(1))}°`)
    .attr({ x: size.widthPx - 14, y: size.heightPx - 10, 'text-anchor': 'end' });
}
