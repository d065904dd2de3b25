import { type Resolved, resolveRegions } from '@pourproof/arrangement';
import type { Job } from '@pourproof/job';
import { type CleanRegion, type Drawing, perimeter, signedArea } from '@pourproof/plane';
import { type ColourCut, colourCuts } from './colours/colour-cuts.ts';
import { type DrawnColours, drawnColours } from './colours/drawn-colours.ts';
import { type CutMeasures, measureCut } from './cut/measure-cut.ts';
import { measureShop, type ShopMeasures } from './shop/measure-shop.ts';

/** Everything that the checks look at, measured once. Lengths in mm, areas in mm², volumes in mm³. */
export interface Measured extends CutMeasures, ShopMeasures {
  readonly job: Job;
  readonly drawing: Drawing;
  readonly resolved: Resolved;
  readonly artwork: CleanRegion;
  readonly artworkArea: number;
  readonly artworkPerimeter: number;
  readonly colours: DrawnColours;
  /** What is seen of each colour. */
  readonly colourCuts: readonly ColourCut[];
}

/** Measures a drawing for a job, once for all checks. */
export function measure(drawing: Drawing, job: Job): Measured {
  const resolved = resolveRegions(drawing.shapes.map((shape) => shape.region));
  const artwork = resolved.region;
  const colours = drawnColours(drawing, job);
  const measures = measureCut(artwork, job);
  const cut = {
    job,
    drawing,
    resolved,
    artwork,
    artworkArea: signedArea(artwork),
    artworkPerimeter: perimeter(artwork),
    colours,
    colourCuts: colourCuts(drawing, colours, artwork, measures.cutRegion),
    ...measures,
  };
  return { ...cut, ...measureShop(cut) };
}
