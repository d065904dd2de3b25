import { booleans, combineShapes, resolveRegions } from '@pourproof/arrangement';
import type { CleanRegion, Drawing, Region } from '@pourproof/plane';
import type { DrawnColour, DrawnColours } from './drawn-colours.ts';

/** What is seen of a colour, as paint covers paint. */
export interface ColourCut {
  readonly colour: DrawnColour;
  /** Its part of the cut. */
  readonly cut: CleanRegion;
  /** Its part of the artwork. */
  readonly drawn: CleanRegion;
}

/**
 * Divides artwork and cut among the colours of a drawing: where shapes overlap, the one drawn later is seen. Together the colours take all of it. In
 * the order in which colours are first drawn.
 */
export function colourCuts(
  drawing: Drawing,
  colours: DrawnColours,
  artwork: CleanRegion,
  cut: CleanRegion,
): readonly ColourCut[] {
  const [only, second] = colours.all;
  if (only === undefined) {
    return [];
  }
  if (second === undefined) {
    return [{ colour: only, cut, drawn: artwork }];
  }
  const seen = new Map<DrawnColour, Region[]>();
  let covered: Region[] = [];
  for (const { colour, regions } of runsOf(drawing, colours).toReversed()) {
    const own = filled(combineShapes(regions, covered, 'subtract'));
    seen.set(colour, [...(seen.get(colour) ?? []), own]);
    covered = [filled(resolveRegions([...covered, ...regions]).region)];
  }
  return colours.all.map((colour) => {
    const { region } = resolveRegions(seen.get(colour) ?? []);
    return {
      colour,
      cut: booleans(cut, region, 'intersect'),
      drawn: booleans(artwork, region, 'intersect'),
    };
  });
}

/** Shapes of one colour that are drawn one after the other. */
function runsOf(
  { shapes }: Drawing,
  colours: DrawnColours,
): readonly { readonly colour: DrawnColour; readonly regions: Region[] }[] {
  const runs: { readonly colour: DrawnColour; readonly regions: Region[] }[] = [];
  for (const shape of shapes) {
    const colour = colours.of(shape);
    const last = runs.at(-1);
    if (last?.colour === colour) {
      last.regions.push(shape.region);
    } else {
      runs.push({ colour, regions: [shape.region] });
    }
  }
  return runs;
}

function filled(region: CleanRegion): Region {
  return { ...region, fillRule: 'nonzero' };
}
