import type { Svg } from '@svgdotjs/svg.js';

/** Pattern ids, for fills that stay apart in black and white. */
export const STANDING_FILL = 'url(#standing-hatch)';

/** Adds the patterns to a drawing: size in mm, so that they zoom with the artwork. */
export function definePatterns(svg: Svg): void {
  svg
    .pattern(0.7, 0.7, (add) => {
      add.rect(0.7, 0.7).addClass('hatch-ground');
      add.line(0, 0, 0, 0.7).addClass('hatch-line');
    })
    .id('standing-hatch')
    .attr({ patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' });
}
