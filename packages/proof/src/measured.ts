import { type Resolved, resolveRegions } from '@pourproof/arrangement';
import type { Job } from '@pourproof/job';
import { type CleanRegion, type Drawing, perimeter, signedArea } from '@pourproof/plane';
import { type ColourCut, colourCuts } from './colours/colour-cuts.ts';
import { coloursIn, type DrawnColours, drawnColours } from './colours/drawn-colours.ts';
import { type CutMeasures, isSameCut, measureCut } from './cut/measure-cut.ts';
import { type ResinContact, resinContact } from './rounds/filled-pockets.ts';
import { BARE_SITE, type Site } from './rounds/site.ts';
import { measureShop, type ShopMeasures } from './shop/measure-shop.ts';

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
  /** What another job for the same drawing may share. */
  readonly stages: { readonly artwork: ArtworkMeasures; readonly cut: CutMeasures };
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
 * @param like measures for another job, from which is taken what both have in common
 */
export function measure(
  drawing: Drawing,
  given: Job,
  site: Site = BARE_SITE,
  like: Measured | null = null,
): Measured {
  const same = like !== null && like.drawing === drawing ? like : null;
  const artwork = same?.stages.artwork ?? measureArtwork(drawing);
  const measures =
    same !== null && isSameCut(given, same.job) ? same.stages.cut : measureCut(artwork.artwork, given);
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
    colourCuts: colourCuts(drawing, colours, artwork.artwork, measures.cutRegion),
    ...measures,
  };
  return { ...cut, ...measureShop(cut), stages: { artwork, cut: measures } };
}

function measureArtwork(drawing: Drawing): ArtworkMeasures {
  const resolved = resolveRegions(drawing.shapes.map((shape) => shape.region));
  const artwork = resolved.region;
  return {
    resolved,
    artwork,
    artworkArea: signedArea(artwork),
    artworkPerimeter: perimeter(artwork),
  };
}

/** Share from which a surface counts as resin throughout: rounding. */
const ALL = 1 - 1e-6;

/** A cut that opens no wood needs no seal. */
function unsealed(job: Job): Job {
  const { none } = job.materials.sealers;
  return none === undefined ? job : { ...job, seal: 'none', coats: 0, rows: { ...job.rows, seal: none } };
}
