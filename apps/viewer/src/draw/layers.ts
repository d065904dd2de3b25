import type { Proof } from '@pourproof/proof';
import type { G } from '@svgdotjs/svg.js';
import { pathOfLine, pathOfRings } from './path-text.ts';
import { STANDING_FILL } from './patterns.ts';
import { streaks } from './streaks.ts';

/** Streaks are drawn no longer than this, mm, so that a wild prior does not hide the artwork. */
const LONGEST_STREAK_MM = 4;

/** Draws the proof's shapes from the ground up: cut, what stays wood, streaks, walls at risk, thin strokes, outline. */
export function drawLayers(group: G, { picture, report }: Proof, grainDeg: number): void {
  group.path(pathOfRings(picture.cut)).addClass('cut').attr('fill-rule', 'evenodd');
  for (const piece of picture.standing) {
    group.path(pathOfRings(piece)).addClass('standing').fill(STANDING_FILL);
  }
  const travel = report.bleed.blocks[0]?.travelMm.median ?? 0;
  const length = Math.min(LONGEST_STREAK_MM, travel);
  for (const wall of picture.bleedWalls) {
    group.path(streaks(wall, grainDeg, length)).addClass('streak');
    group.path(pathOfLine(wall)).addClass('bleed-wall');
  }
  for (const stroke of picture.narrow) {
    group.path(pathOfLine(stroke.path)).addClass('narrow');
  }
  group.path(pathOfRings(picture.artwork)).addClass('artwork-line');
}
