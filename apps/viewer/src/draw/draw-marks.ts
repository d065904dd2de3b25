import type { MarkedPlace } from '@pourproof/wording';
import type { G } from '@svgdotjs/svg.js';
import { type SheetSize, toPx, type View } from './view.ts';

/** A place to mark: the chosen one, another of the open finding, or one of another finding. */
export interface Mark {
  readonly place: MarkedPlace;
  readonly rank: 'chosen' | 'open' | 'other';
}

/** Minimum gap between flags while no finding is open, px: enough to see what they point at. */
const ROOM_PX: readonly [number, number] = [46, 26];
/** Distance of a flag's middle from its place, and its height, px. */
const POLE_PX = 26;
const HEIGHT_PX = 20;
const RANKS = ['chosen', 'open', 'other'] as const;

/**
 * Draws a flag with its label at each place, the chosen one first. A flag that would cover an earlier one is left out until zooming in
 * makes room.
 */
export function drawMarks(into: G, marks: readonly Mark[], view: View, size: SheetSize): void {
  into.clear();
  const by = size.lettersBy ?? 1;
  const taken: (readonly [x: number, y: number, width: number])[] = [];
  const group = { chosen: into.group(), open: into.group(), other: into.group() };
  // later groups lie on top
  group.open.front();
  group.chosen.front();
  for (const rank of RANKS) {
    for (const { place } of marks.filter((mark) => mark.rank === rank)) {
      const [x, y] = toPx(place.atMm, view, size);
      const width = by * (12 + 7 * place.label.length);
      const isOff = x < 0 || y < 0 || x > size.widthPx || y > size.heightPx;
      const [roomX, roomY] = rank === 'other' ? ROOM_PX : [3, 4];
      const isCovering = taken.some(
        ([tx, ty, w]) =>
          Math.abs(tx - x) < (w + width) / 2 + roomX && Math.abs(ty - y) < by * HEIGHT_PX + roomY,
      );
      if (isOff || isCovering) {
        continue;
      }
      taken.push([x, y, width]);
      drawFlag(group[rank], place.label, rank, [x, y, width, by]);
    }
  }
}

function drawFlag(
  into: G,
  label: string,
  rank: Mark['rank'],
  [x, y, width, by]: readonly [x: number, y: number, width: number, by: number],
): void {
  const pole = by * POLE_PX;
  const height = by * HEIGHT_PX;
  // below the place if there is no room above
  const middle = y + (y > pole + height ? -pole : pole);
  const flag = into.group().addClass(`flag ${rank}`).attr('data-label', label);
  flag.line(x, y, x, middle);
  flag.circle(5).center(x, y);
  flag.rect(width, height).radius(2).center(x, middle);
  flag.plain(label).attr({ x, y: middle + 4.5 * by, 'text-anchor': 'middle' });
}
