import { booleans, combineShapes, resolveRegions } from '@pourproof/arrangement';
import type { CleanRegion, Drawing, Region } from '@pourproof/plane';
import type { Stages } from '../stages/stages.ts';
import type { DrawnColour, DrawnColours } from './drawn-colours.ts';

/** What is seen of a colour, as paint covers paint. */
export interface ColourCut {
  readonly colour: DrawnColour;
  /** Its part of the cut. */
  readonly cut: CleanRegion;
  /** Its part of the artwork. */
  readonly drawn: CleanRegion;
}

/** Artwork and cut that colours divide. */
interface Divided {
  readonly artwork: CleanRegion;
  readonly cut: CleanRegion;
}

/**
 * Divides artwork and cut among the colours of a drawing: where shapes overlap, the one drawn later is seen. Together the colours take all of it. In
 * the order in which colours are first drawn.
 */
export function colourCuts(
  drawing: Drawing,
  colours: DrawnColours,
  whole: Divided,
  stages: Stages,
): readonly ColourCut[] {
  const [only, second] = colours.all;
  if (only === undefined) {
    return [];
  }
  if (second === undefined) {
    return [{ colour: only, cut: whole.cut, drawn: whole.artwork }];
  }
  const { shapes } = drawing;
  const ranks = shapes.map((shape) => colours.all.indexOf(colours.of(shape)));
  const parts = stages.of('colours', [shapes, whole.artwork, whole.cut], ranks, () =>
    dividedParts(drawing, colours, whole),
  );
  return colours.all.flatMap((colour, k) => {
    const part = parts[k];
    return part === undefined ? [] : [{ colour, ...part }];
  });
}

/** What is seen of each colour, in their order. */
function dividedParts(
  drawing: Drawing,
  colours: DrawnColours,
  { artwork, cut }: Divided,
): readonly Omit<ColourCut, 'colour'>[] {
  const seen = new Map<DrawnColour, Region[]>();
  let covered: Region[] = [];
  for (const { colour, regions } of runsOf(drawing, colours).toReversed()) {
    const own = filled(combineShapes(regions, covered, 'subtract'));
    seen.set(colour, [...(seen.get(colour) ?? []), own]);
    covered = [filled(resolveRegions([...covered, ...regions]).region)];
  }
  return colours.all.map((colour) => {
    const { region } = resolveRegions(seen.get(colour) ?? []);
    return { cut: booleans(cut, region, 'intersect'), drawn: booleans(artwork, region, 'intersect') };
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
