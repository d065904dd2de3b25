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

/** A flag on the sheet. */
interface Flag {
  readonly place: MarkedPlace;
  readonly group: G;
}

/** Flags of marked places, with their labels. */
export class MarkFlags {
  readonly #into: G;
  #flags: readonly Flag[] = [];

  constructor(into: G) {
    this.#into = into;
  }

  /**
   * Draws a flag at each place, the chosen one first. A flag that would cover an earlier one is left out until zooming in makes room.
   */
  draw(marks: readonly Mark[], view: View, size: SheetSize): void {
    this.#into.clear();
    const by = size.lettersBy ?? 1;
    const taken: (readonly [x: number, y: number, width: number])[] = [];
    const group = { chosen: this.#into.group(), open: this.#into.group(), other: this.#into.group() };
    // later groups lie on top
    group.open.front();
    group.chosen.front();
    const flags: Flag[] = [];
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
        // below the place if there is no room above
        const isAbove = y > by * (POLE_PX + HEIGHT_PX);
        flags.push({ place, group: drawFlag(group[rank], place.label, rank, [width, by, isAbove]) });
      }
    }
    this.#flags = flags;
    this.move(view, size);
  }

  /** Moves the flags with the view, which is far cheaper than to choose them anew. */
  move(view: View, size: SheetSize): void {
    for (const { place, group } of this.#flags) {
      const [x, y] = toPx(place.atMm, view, size);
      group.attr('transform', `translate(${x} ${y})`);
    }
  }
}

/** A flag at the origin of its own group. */
function drawFlag(
  into: G,
  label: string,
  rank: Mark['rank'],
  [width, by, isAbove]: readonly [width: number, by: number, isAbove: boolean],
): G {
  const middle = by * (isAbove ? -POLE_PX : POLE_PX);
  const flag = into.group().addClass(`flag ${rank}`).attr('data-label', label);
  flag.line(0, 0, 0, middle);
  flag.circle(5).center(0, 0);
  flag
    .rect(width, by * HEIGHT_PX)
    .radius(2)
    .center(0, middle);
  flag.plain(label).attr({ x: 0, y: middle + 4.5 * by, 'text-anchor': 'middle' });
  return flag;
}
