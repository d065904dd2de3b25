import { type Resolved, resolveRegions } from '@pourproof/arrangement';
import type { Job } from '@pourproof/job';
import { type CleanRegion, type Drawing, perimeter, signedArea } from '@pourproof/plane';
import { type ColourCut, colourCuts } from './colours/colour-cuts.ts';
import { coloursIn, type DrawnColours, drawnColours } from './colours/drawn-colours.ts';
import { type CutMeasures, measureCut } from './cut/measure-cut.ts';
import { type ResinContact, resinContact } from './rounds/filled-pockets.ts';
import { BARE_SITE, type Site } from './rounds/site.ts';
import { measureShop, type ShopMeasures } from './shop/measure-shop.ts';
import { Stages } from './stages/stages.ts';

/** What is measured of the artwork, whatever is done to it. */
interface ArtworkMeasures {
  readonly resolved: Resolved;
  readonly artwork: CleanRegion;
  readonly artworkArea: number;
  readonly artworkPerimeter: number;
}

/** Everything that the checks look at, measured once. Lengths in mm, areas in mm², volumes in mm³. */
export interface Measured extends ArtworkMeasures, CutMeasures, ShopMeasures {
  readonly job: Job;
  readonly drawing: Drawing;
  /** What is kept for other jobs. */
  readonly stages: Stages;
  /** What was done to the board before. */
  readonly site: Site;
  /** How much of the cut stands in cured resin of earlier rounds. */
  readonly contact: ResinContact;
  readonly colours: DrawnColours;
  /** What is seen of each colour. */
  readonly colourCuts: readonly ColourCut[];
}

/**
 * Measures a drawing for a job, once for all checks.
 *
 * @param site what was done to the board before
 * @param stages results of proofs before, from which is taken what has not changed
 */
export function measure(
  drawing: Drawing,
  given: Job,
  site: Site = BARE_SITE,
  stages: Stages = new Stages(),
): Measured {
  const artwork = measureArtwork(drawing, stages);
  const measures = measureCut(artwork.artwork, given, drawing.toleranceMm, stages);
  const colours = site.colours === null ? drawnColours(drawing, given) : coloursIn(drawing, site.colours);
  const contact = resinContact(measures.cutRegion, measures.maxDepth, site.filled);
  const job = contact.wall >= ALL && contact.floor >= ALL ? unsealed(given) : given;
  const cut = {
    job,
    drawing,
    ...artwork,
    site,
    contact,
    colours,
    colourCuts: colourCuts(drawing, colours, { artwork: artwork.artwork, cut: measures.cutRegion }, stages),
    ...measures,
    stages,
  };
  return { ...cut, ...measureShop(cut) };
}

/** Measures the artwork of a drawing by itself. */
export function measureArtwork({ shapes }: Drawing, stages: Stages): ArtworkMeasures {
  return stages.of('resolve', [shapes], null, () => {
    const resolved = resolveRegions(shapes.map(({ region }) => region));
    const artwork = resolved.region;
    return {
      resolved,
      artwork,
      artworkArea: signedArea(artwork),
      artworkPerimeter: perimeter(artwork),
    };
  });
}

/** Share from which a surface counts as resin throughout: rounding. */
const ALL = 1 - 1e-6;

/** A cut that opens no wood needs no seal. */
function unsealed(job: Job): Job {
  const { none } = job.materials.sealers;
  return none === undefined ? job : { ...job, seal: 'none', coats: 0, rows: { ...job.rows, seal: none } };
}
