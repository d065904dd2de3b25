import { type DrawnShape, packRings } from '@pourproof/plane';

/**
 * The rings of a letter, or of one of its glyphs, as a shape that may overlap its neighbours; none where it
 * is blank.
 *
 * @param nodes points of the font that join its lines and curves
 */
export function letterShape(
  rings: readonly (readonly number[])[],
  source: string,
  nodes?: number,
): readonly DrawnShape[] {
  return rings.length === 0
    ? []
    : [
        {
          region: { ...packRings(rings), fillRule: 'nonzero' },
          layer: '',
          colour: '#000000',
          source,
          isPieced: true,
          ...(nodes === undefined ? {} : { nodes }),
        },
      ];
}
