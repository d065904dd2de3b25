import { type Resolved, resolveRegions } from '@pourproof/arrangement';
import type { Job } from '@pourproof/job';
import { type CleanRegion, type Drawing, perimeter, signedArea } from '@pourproof/plane';
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
}

/** Measures a drawing for a job, once for all checks. */
export function measure(drawing: Drawing, job: Job): Measured {
  const resolved = resolveRegions(drawing.shapes.map((shape) => shape.region));
  const artwork = resolved.region;
  const cut = {
    job,
    drawing,
    resolved,
    artwork,
    artworkArea: signedArea(artwork),
    artworkPerimeter: perimeter(artwork),
    ...measureCut(artwork, job),
  };
  return { ...cut, ...measureShop(cut) };
}
