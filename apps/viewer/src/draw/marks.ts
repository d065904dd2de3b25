import type { Finding } from '@pourproof/proof';
import type { G } from '@svgdotjs/svg.js';

/** How marks are drawn. */
export interface MarkOptions {
  readonly mmPerPx: number;
  readonly chosen: number;
  readonly place: number;
  readonly onChoose: (finding: number, place: number) => void;
}

/** Size of a mark on screen, px. */
const RADIUS_PX = 9;
/** Places drawn for each finding that is not chosen; the rest would only cover the artwork. */
const MOST_MARKS = 12;

/** Draws a numbered mark at each place: the number is the finding's in the list. The chosen one is filled and has its outline. */
export function drawMarks(group: G, findings: readonly Finding[], options: MarkOptions): void {
  const { chosen, mmPerPx } = options;
  const order = findings.map((_, k) => k).filter((k) => k !== chosen);
  for (const k of chosen === -1 ? order : [chosen]) {
    const places = findings[k]?.where ?? [];
    const shown = k === chosen ? places.length : Math.min(places.length, MOST_MARKS);
    for (let p = 0; p < shown; p++) {
      const isHere = k === chosen && p === options.place;
      const [x, y] = places[p]?.atMm ?? [0, 0];
      if (isHere) {
        drawOutline(group, places[p]?.outline ?? []);
      }
      const mark = group.group().addClass('mark').addClass(`mark-${findings[k]?.severity}`);
      if (isHere) {
        mark.addClass('mark-here');
      }
      const radius = RADIUS_PX * mmPerPx;
      // beside the place, so that the place itself stays in sight
      const [cx, cy] = [x + radius * 1.6, y - radius * 1.6];
      mark.line(x, y, cx, cy);
      mark.circle(2 * radius).center(cx, cy);
      mark.plain(String(k + 1)).attr({
        x: cx,
        y: cy,
        'font-size': radius * 1.3,
        'text-anchor': 'middle',
        'dominant-baseline': 'central',
      });
      mark.on('click', () => options.onChoose(k, p));
    }
  }
}

function drawOutline(group: G, outline: Finding['where'][number]['outline']): void {
  for (const line of outline) {
    const points = line.map(([x, y]) => [x, y] as [number, number]);
    group.polyline(points).addClass('place-outline');
  }
}
