import { type Rings, ringStart } from '@pourproof/plane';
import type { Picture, PicturedGradeId } from '@pourproof/proof';
import type { Layer } from './layer.ts';

/** What a shape of the picture means; its look follows from it. */
export type ArtName =
  | 'bleed-high'
  | 'bleed-median'
  | 'drawn'
  | 'cut'
  | 'depth'
  | 'standing'
  | 'narrow'
  | 'bleed-wall'
  | 'level-ground'
  | `level-${PicturedGradeId}`;

/** All lines of one meaning. Open lines come first, closed ones after them. */
export interface ArtShape {
  readonly name: ArtName;
  /** `x0, y0, x1, y1, …` in mm from the origin of the art. */
  readonly coords: Float32Array;
  /** Points before the end of each line, summed up. */
  readonly ends: Uint32Array;
  readonly openCount: number;
}

/**
 * The lines of a picture in arrays that a worker hands over without a copy. They count from an origin close by, so that single precision
 * holds them: 0.03 µm within a metre, a tenth of a pixel at the closest view.
 */
export interface Art {
  readonly originMm: readonly [x: number, y: number];
  /** Shapes of each layer, from the lowest to the topmost; none is empty. */
  readonly layers: Readonly<Record<Layer, readonly ArtShape[]>>;
}

/** What a shape is made of, before it is packed. */
interface Lines {
  readonly open: readonly ArrayLike<number>[];
  readonly closed: readonly Rings[];
}

/** The lines of a picture, packed. */
export function artOf(picture: Picture): Art {
  const originMm = [picture.boundsMm[0], picture.boundsMm[1]] as const;
  const pack = (shapes: readonly (readonly [ArtName, Partial<Lines>])[]): ArtShape[] =>
    shapes
      .map(([name, { open = [], closed = [] }]) => packed(name, { open, closed }, originMm))
      .filter(({ ends }) => ends.length > 0);
  return {
    originMm,
    layers: {
      cut: pack([
        ['bleed-high', { closed: picture.bleed.map(({ high }) => high) }],
        ['bleed-median', { closed: picture.bleed.map(({ median }) => median) }],
        ['drawn', { closed: [picture.artwork] }],
        ['cut', { closed: [picture.cut] }],
        ['depth', { closed: picture.depths.map(({ outline }) => outline) }],
        ['standing', { closed: picture.standing }],
        ['narrow', { open: picture.narrow.map(({ path }) => path) }],
        ['bleed-wall', { open: picture.bleedWalls }],
      ]),
      levelling: pack([
        ['drawn', { closed: [picture.artwork] }],
        // the gravest last, on top
        ...picture.levelling.grades.toReversed().flatMap(({ grade, lines, outlines }) => {
          const parts = { open: lines, closed: outlines };
          const ground = grade === 'lost' || grade === 'spoilt' ? [['level-ground', parts] as const] : [];
          return [...ground, [`level-${grade}`, parts] as const];
        }),
      ]),
    },
  };
}

/** The memory behind the lines, to be handed over with them. */
export function artBuffers({ layers }: Art): ArrayBuffer[] {
  return Object.values(layers)
    .flat()
    .flatMap(({ coords, ends }) => [coords.buffer as ArrayBuffer, ends.buffer as ArrayBuffer]);
}

function packed(name: ArtName, { open, closed }: Lines, [x0, y0]: Art['originMm']): ArtShape {
  const lines = [
    ...open,
    ...closed.flatMap((rings) =>
      Array.from(rings.ringEnds, (end, k) => rings.coords.subarray(2 * ringStart(rings, k), 2 * end)),
    ),
  ];
  const coords = new Float32Array(lines.reduce((sum, line) => sum + line.length, 0));
  const ends = new Uint32Array(lines.length);
  let at = 0;
  lines.forEach((line, k) => {
    for (let i = 0; i + 1 < line.length; i += 2) {
      coords[at++] = (line[i] ?? 0) - x0;
      coords[at++] = (line[i + 1] ?? 0) - y0;
    }
    ends[k] = at / 2;
  });
  return { name, coords, ends, openCount: open.length };
}
