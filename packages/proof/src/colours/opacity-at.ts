import { type Opacity, opacityOf } from '@pourproof/materials';
import type { Point } from '@pourproof/plane';
import { isInside } from '../board/is-inside.ts';
import type { ColourCut } from './colour-cuts.ts';

/** The opacity of the colour at each place of the artwork; that of the palest colour where none is drawn. */
export function opacityAt(colourCuts: readonly ColourCut[]): (at: Point) => Opacity {
  const kinds = colourCuts.map(({ colour, drawn }) => ({
    drawn,
    opacity: opacityOf(colour.lab, colour.colourant),
  }));
  const [first = { opacity: opacityOf(null) }] = kinds;
  if (kinds.every(({ opacity }) => opacity.opaque === first.opacity.opaque)) {
    return () => first.opacity;
  }
  const palest = kinds.reduce(
    (most, { opacity }) => (opacity.opaque.value > most.opaque.value ? opacity : most),
    first.opacity,
  );
  return (at) => kinds.find(({ drawn }) => isInside(drawn, ...at))?.opacity ?? palest;
}
