/**
 * The drawing edited so that a renderer paints all that the reader says it counted: translucent paint made opaque, gradients and patterns made plain,
 * masks and filters taken off, the page made larger. One edit for each notice that is about an area; a notice whose edit does not close the gap does not
 * explain it.
 */
const EDITS = {
  'translucent-paint': (svg) =>
    svg.replace(/((?:fill-|stroke-|stop-)?opacity\s*[:=]\s*["']?)(0?\.\d+|\d+%)/g, (whole, head, value) =>
      Number.parseFloat(value) === 0 ? whole : `${head}1`,
    ),
  'gradient-fill': plainPaint,
  'pattern-fill': plainPaint,
  'mask-ignored': (svg) =>
    svg.replace(/\smask\s*=\s*(?:"[^"]*"|'[^']*')/g, ' ').replace(/([;"'])\s*mask\s*:[^;"']*/g, '$1'),
  'filter-ignored': (svg) =>
    svg.replace(/\sfilter\s*=\s*(?:"[^"]*"|'[^']*')/g, ' ').replace(/([;"'])\s*filter\s*:[^;"']*/g, '$1'),
};

/** Notices of things that a renderer without fonts and pictures does not paint either, so that they explain nothing here. */
export const EXPLAINING = new Set([...Object.keys(EDITS), 'outside-page']);

/** The drawing after the edits for these notices, and by how much its page was made longer on each side, as a multiple of it. */
export function asCounted(svg, notices) {
  let edited = svg;
  for (const code of notices) {
    edited = EDITS[code]?.(edited) ?? edited;
  }
  return notices.includes('outside-page') ? { svg: widePage(edited), times: 3 } : { svg: edited, times: 1 };
}

function plainPaint(svg) {
  return svg.replace(/\b((?:fill|stroke)\s*[:=]\s*["']?)url\([^)]*\)/g, '$1#000');
}

/** The page three times as wide and as high, the drawing in its middle. */
function widePage(svg) {
  return svg.replace(/<svg\b[^>]*>/, (tag) => {
    const box = /\bviewBox\s*=\s*["']([^"']+)["']/.exec(tag)?.[1];
    const side = (name) =>
      Number.parseFloat(new RegExp(`\\s${name}\\s*=\\s*["']([^"']+)["']`).exec(tag)?.[1] ?? '0');
    const [x, y, w, h] = box?.split(/[\s,]+/).map(Number) ?? [0, 0, side('width'), side('height')];
    const bare = tag.replace(/\s(?:width|height|viewBox)\s*=\s*(?:"[^"]*"|'[^']*')/g, '');
    return bare.replace(
      /^<svg/,
      `<svg width="${3 * w}" height="${3 * h}" viewBox="${x - w} ${y - h} ${3 * w} ${3 * h}"`,
    );
  });
}
