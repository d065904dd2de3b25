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
/** Flags at once (our choice): more hide the drawing, and the browser needs longer than a frame to move them. The gravest come first. */
const MOST = 120;

/** A flag on the sheet. */
interface Flag {
  readonly place: MarkedPlace;
  readonly group: Element;
}

/** Flags of marked places, with their labels. */
export class MarkFlags {
  readonly #into: G;
  /** A flag to copy: making each of its parts takes many times as long. */
  readonly #pattern: Element;
  #flags: readonly Flag[] = [];

  constructor(into: G) {
    this.#into = into;
    this.#pattern = patternFlag(into);
  }

  /**
   * Draws a flag at each place, the chosen one first, but not more than a few dozen. A flag that would cover an earlier one is left out until
   * zooming in makes room.
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
      for (const { place, rank: own } of marks) {
        if (own !== rank || flags.length >= MOST) {
          continue;
        }
        const [x, y] = toPx(place.atMm, view, size);
        const width = by * (12 + 7 * place.label.length);
        if (x < 0 || y < 0 || x > size.widthPx || y > size.heightPx) {
          continue;
        }
        const [roomX, roomY] = rank === 'other' ? ROOM_PX : [3, 4];
        const isCovering = taken.some(
          ([tx, ty, w]) =>
            Math.abs(tx - x) < (w + width) / 2 + roomX && Math.abs(ty - y) < by * HEIGHT_PX + roomY,
        );
        if (isCovering) {
          continue;
        }
        taken.push([x, y, width]);
        // below the place if there is no room above
        const isAbove = y > by * (POLE_PX + HEIGHT_PX);
        const flag = filledFlag(this.#pattern.cloneNode(true) as Element, place.label, rank, [
          width,
          by,
          isAbove,
        ]);
        group[rank].node.append(flag);
        flags.push({ place, group: flag });
      }
    }
    this.#flags = flags;
    this.move(view, size);
  }

  /** Moves the flags with the view, which is far cheaper than to choose them anew. */
  move(view: View, size: SheetSize): void {
    for (const { place, group } of this.#flags) {
      const [x, y] = toPx(place.atMm, view, size);
      group.setAttribute('transform', `translate(${x} ${y})`);
    }
  }
}

/** A flag at the origin of its own group, not drawn anywhere. */
function patternFlag(into: G): Element {
  const flag = into.group();
  flag.line(0, 0, 0, 0);
  flag.circle(5).center(0, 0);
  flag.rect(0, 0).radius(2);
  flag.plain('').attr({ x: 0, 'text-anchor': 'middle' });
  flag.remove();
  return flag.node;
}

/** A copy of the pattern with its label and sizes. */
function filledFlag(
  flag: Element,
  label: string,
  rank: Mark['rank'],
  [width, by, isAbove]: readonly [width: number, by: number, isAbove: boolean],
): Element {
  const middle = by * (isAbove ? -POLE_PX : POLE_PX);
  const height = by * HEIGHT_PX;
  const [pole, , board, text] = flag.children;
  set(flag, { class: `flag ${rank}`, 'data-label': label });
  set(pole, { y2: middle });
  set(board, { x: -width / 2, y: middle - height / 2, width, height });
  set(text, { y: middle + 4.5 * by });
  text?.append(label);
  return flag;
}

function set(element: Element | undefined, attributes: Readonly<Record<string, string | number>>): void {
  for (const [name, value] of Object.entries(attributes)) {
    element?.setAttribute(name, String(value));
  }
}
