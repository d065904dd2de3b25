import { bitSize } from '@pourproof/job';
import { type LengthUnit, mmFromInches } from '@pourproof/plane';
import type { G } from '@svgdotjs/svg.js';
import type { SheetSize, View } from './view.ts';

const MOST_PX = 150;
const EDGE_PX = 22;

/** What the margin says of the fibres: their angle, that they end at the face, or nothing where blocks differ. */
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
  const lengthMm = barLengthMm(MOST_PX / view.pxPerMm, unit);
  const length = lengthMm * view.pxPerMm;
  const y = size.heightPx - EDGE_PX;
  const bar = into.group().addClass('bar');
  bar.path(`M${EDGE_PX} ${y - 5}v10M${EDGE_PX} ${y}h${length}m0 -5v10`);
  bar.plain(bitSize(lengthMm, unit)).attr({ x: EDGE_PX + length + 8, y: y + 4 });
}

/** The longest of 1, 2, 5 × 10ⁿ mm, or of such inches and their halves down to a 32nd, that is no longer than there is room. */
function barLengthMm(mostMm: number, unit: LengthUnit): number {
  const oneMm = unit === 'mm' ? 1 : mmFromInches(1);
  const most = mostMm / oneMm;
  if (unit === 'in' && most < 1) {
    return oneMm * 2 ** Math.floor(Math.log2(most));
  }
  const power = 10 ** Math.floor(Math.log10(most));
  return oneMm * power * ([5, 2].find((step) => step * power <= most) ?? 1);
}

function drawFibreArrow(into: G, size: SheetSize, grainDeg: number): void {
  const x = size.widthPx - 60;
  const y = size.heightPx - EDGE_PX - 16;
  const arrow = into.group().addClass('fibre-arrow');
  const shaft = arrow.group();
  shaft.path(`M${x - 24} ${y}h48m-7 -5l7 5l-7 5M${x - 17} ${y - 5}l-7 5l7 5`);
  shaft.path(`M${x - 15} ${y - 4.5}h30M${x - 15} ${y + 4.5}h30`).addClass('fibres');
  // counter-clockwise for a reader; SVG turns the other way
  shaft.attr('transform', `rotate(${-grainDeg} ${x} ${y})`);
  arrow
    .plain(`fibres ${Number(grainDeg.toFixed(1))}°`)
    .attr({ x: size.widthPx - 14, y: size.heightPx - 10, 'text-anchor': 'end' });
}
