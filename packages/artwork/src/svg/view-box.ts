import type { Transform } from '@pourproof/plane';

/** A `viewBox`: the part of user space that is fitted into a viewport. */
export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Reads a `viewBox`; `undefined` when it is missing or not four numbers with sizes ≥ 0, which counts as
 * missing.
 */
export function parseViewBox(text: string | undefined): ViewBox | undefined {
  const parts = (text ?? '').trim().split(/\s*,\s*|\s+/);
  if (parts.length !== 4 || !parts.every((p) => /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(p))) {
    return undefined;
  }
  const [x, y, width, height] = parts.map(Number) as [number, number, number, number];
  return width >= 0 && height >= 0 && [x, y, width, height].every(Number.isFinite)
    ? { x, y, width, height }
    : undefined;
}

/** Part of the spare room that lies before the drawing, by the word of `preserveAspectRatio`. */
const ALIGN: ReadonlyMap<string, number> = new Map([
  ['min', 0],
  ['mid', 0.5],
  ['max', 1],
]);

/**
 * The map from a view box into a viewport of the given size at the origin, by `preserveAspectRatio` (SVG 2
 * §8.2: equivalent transform). The sizes of the view box must be above 0.
 */
export function fitViewBox(box: ViewBox, width: number, height: number, preserveAspectRatio = ''): Transform {
  const [align = '', meetOrSlice = ''] = preserveAspectRatio
    .trim()
    .replace(/^defer\s+/, '')
    .split(/\s+/);
  let sx = width / box.width;
  let sy = height / box.height;
  if (align === 'none') {
    return [sx, 0, 0, sy, -sx * box.x, -sy * box.y];
  }
  const match = /^x(Min|Mid|Max)Y(Min|Mid|Max)$/.exec(align);
  const known = match !== null && /^(?:|meet|slice)$/.test(meetOrSlice);
  sx = known && meetOrSlice === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy);
  sy = sx;
  const alignX = known ? (ALIGN.get((match[1] as string).toLowerCase()) as number) : 0.5;
  const alignY = known ? (ALIGN.get((match[2] as string).toLowerCase()) as number) : 0.5;
  return [
    sx,
    0,
    0,
    sy,
    alignX * (width - sx * box.width) - sx * box.x,
    alignY * (height - sy * box.height) - sy * box.y,
  ];
}
