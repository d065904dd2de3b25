import type { MarkedPlace } from '@pourproof/wording';
import type { G } from '@svgdotjs/svg.js';
import { type SheetSize, toPx, type View } from './view.ts';

/** A place to mark, and whether it belongs to the finding that is open, or is the place looked at. */
export interface Mark {
  readonly place: MarkedPlace;
  readonly rank: 'chosen' | 'open' | 'other';
}

/** Room between flags of no open finding, px: enough to see what they point at. */
const ROOM_PX: readonly [number, number] = [46, 26];
const LIFT_PX = 26;
const HEIGHT_PX = 20;
const RANKS = ['chosen', 'open', 'other'] as const;

/**
 * Draws flags with the labels of the places, the chosen one first; a flag that would cover one before it is left out until there
 * is room, that is, at a closer look.
 */
export function drawMarks(into: G, marks: readonly Mark[], view: View, size: SheetSize): void {
  into.clear();
  const taken: (readonly [x: number, y: number, width: number])[] = [];
  const group = { chosen: into.group(), open: into.group(), other: into.group() };
  // what is drawn last lies on top
  group.open.front();
  group.chosen.front();
  for (const rank of RANKS) {
    for (const { place } of marks.filter((mark) => mark.rank === rank)) {
      const [x, y] = toPx(place.atMm, view, size);
      const width = 12 + 7 * place.label.length;
      const isOff = x < 0 || y < 0 || x > size.widthPx || y > size.heightPx;
      const [roomX, roomY] = rank === 'other' ? ROOM_PX : [3, 4];
      const isCovering = taken.some(
        ([tx, ty, w]) => Math.abs(tx - x) < (w + width) / 2 + roomX && Math.abs(ty - y) < HEIGHT_PX + roomY,
      );
      if (isOff || isCovering) {
        continue;
      }
      taken.push([x, y, width]);
      drawFlag(group[rank], place.label, rank, x, y, width);
    }
  }
}

function drawFlag(into: G, label: string, rank: Mark['rank'], x: number, y: number, width: number): void {
  // below the place where there is no room above
  const up = y > LIFT_PX + HEIGHT_PX ? -1 : 1;
  const middle = y + up * LIFT_PX;
  const flag = into.group().addClass(`flag ${rank}`).attr('data-label', label);
  flag.line(x, y, x, middle);
  flag.circle(5).center(x, y);
  flag.rect(width, HEIGHT_PX).radius(2).center(x, middle);
  flag.plain(label).attr({ x, y: middle + 4.5, 'text-anchor': 'middle' });
}
