import {
  type Drawing,
  type Notice,
  type OpenOutlines,
  packRings,
  type Region,
  rotation,
  textInUnits,
  transformRings,
} from '@pourproof/plane';

/** A drawing of rings given as flat coordinates, all in one nonzero shape each, optionally turned as a whole. */
export function drawingOf(
  rings: readonly (readonly number[])[],
  options: {
    readonly turnDeg?: number;
    readonly notices?: readonly Notice[];
    readonly fillRule?: Region['fillRule'];
    readonly open?: OpenOutlines;
  } = {},
): Drawing {
  const { turnDeg = 0, notices = [], fillRule = 'nonzero', open } = options;
  return {
    format: 'svg',
    scaleSource: textInUnits('made by a test'),
    toleranceMm: 0.005,
    notices,
    ...(open === undefined ? {} : { open }),
    shapes: rings.map((ring, k) => ({
      region: {
        ...transformRings(rotation((turnDeg * Math.PI) / 180), packRings([ring])),
        fillRule,
      },
      layer: '',
      colour: '#000000',
      source: `ring ${k}`,
    })),
  };
}

/** A rectangle's ring from a corner. */
export function rectangle(x: number, y: number, width: number, height: number): number[] {
  return [x, y, x + width, y, x + width, y + height, x, y + height];
}
