import type { OutlinePath, OutlinePiece, XY } from '../fit/outline-path.ts';
import { lengthText, type OutlineFile, type OutlineGroup } from './outline-file.ts';
import { splitArc } from './split-arc.ts';

/** Arcs are written in parts of at most this turn, radians: beyond, rounding of the radius would move their middle. */
const MOST_TURN = (Math.PI / 2) * (1 + 1e-9);

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/**
 * An SVG file (SVG 2) in real size: one unit is one millimetre. One group for each colour and round, with its id and title; one path for each shape with
 * its holes, filled by the even-odd rule, without strokes.
 */
export function svgFile({ title, mark, boundsMm: [minX, minY, maxX, maxY], groups }: OutlineFile): string {
  const [width, height] = [lengthText(maxX - minX), lengthText(maxY - minY)];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${lengthText(minX)} ${lengthText(minY)} ${width} ${height}">`,
    `<title>${escaped(title)}</title>`,
    `<desc>${escaped(mark)}</desc>`,
    ...groups.map(groupText),
    '</svg>',
    '',
  ].join('\n');
}

function groupText({ id, title, colour, shapes }: OutlineGroup): string {
  return [
    `<g id="${id}" fill="${colour}" fill-rule="evenodd">`,
    `<title>${escaped(title)}</title>`,
    ...shapes.map((rings, k) => `<path id="${id}-${k + 1}" d="${rings.map(pathData).join('')}"/>`),
    '</g>',
  ].join('\n');
}

/** Path data of a closed outline. */
function pathData({ start, pieces }: OutlinePath): string {
  let at = start;
  const parts = [`M${pointText(start)}`];
  pieces.forEach((piece, k) => {
    // the last straight side is what closing draws
    if (!(piece.kind === 'line' && k === pieces.length - 1)) {
      parts.push(pieceText(at, piece));
    }
    at = piece.to;
  });
  return `${parts.join('')}Z`;
}

function pieceText(from: XY, piece: OutlinePiece): string {
  switch (piece.kind) {
    case 'line':
      return `L${pointText(piece.to)}`;
    case 'cubic':
      return `C${pointText(piece.control[0])} ${pointText(piece.control[1])} ${pointText(piece.to)}`;
    case 'arc':
      return splitArc(from, piece, MOST_TURN)
        .map(({ to, radius, bulge }) => {
          const r = lengthText(radius);
          return `A${r} ${r} 0 0 ${bulge > 0 ? 1 : 0} ${pointText(to)}`;
        })
        .join('');
  }
}

function pointText([x, y]: XY): string {
  return `${lengthText(x)} ${lengthText(y)}`;
}

/** Text safe in XML; control characters that XML 1.0 bars become `�`. */
function escaped(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that XML 1.0 §2.2 bars
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/gu, '\ufffd')
      .replace(/[&<>"]/gu, (char) => ESCAPES[char] ?? char)
  );
}
