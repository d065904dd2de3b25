import { type Drawing, packRings } from '@pourproof/plane';
import { drawingOf } from './drawing-of.ts';

/** A painted shape: its paint, or paint and layer, and its rings by even-odd. */
export type Painted = readonly [
  paint: string | { readonly colour: string; readonly layer: string },
  ...rings: readonly (readonly number[])[],
];

/** A drawing of painted shapes in painter's order. */
export function painted(shapes: readonly Painted[]): Drawing {
  return {
    ...drawingOf([]),
    shapes: shapes.map(([paint, ...rings], k) => ({
      region: { ...packRings(rings), fillRule: 'evenodd' },
      source: `shape ${k}`,
      ...(typeof paint === 'string' ? { colour: paint, layer: '' } : paint),
    })),
  };
}
