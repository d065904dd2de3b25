import { combineShapes } from '@pourproof/arrangement';
import type { Job } from '@pourproof/job';
import type { Bounds, CleanRegion, Drawing, Region } from '@pourproof/plane';
import { boundsOrZero } from '../board/bounds-or-zero.ts';
import { measureCut } from '../cut/measure-cut.ts';
import { measureArtwork } from '../measured.ts';
import { plannedRounds } from '../rounds/planned-rounds.ts';
import { Stages } from '../stages/stages.ts';
import { colourCuts } from './colour-cuts.ts';

/** What of a drawing is outlined: all that is seen of a colour, what the bits really cut of that, or what they leave for a later round. */
export type OutlinedPart = 'drawn' | 'cut' | 'left';

/** One colour in one round of the work. */
export interface ColourOutline {
  /** `#rrggbb`, or the name of the layer. */
  readonly name: string;
  /** `#rrggbb` of what is drawn in it. */
  readonly paint: string;
  /** From 1; `null` where all is poured at once. */
  readonly round: number | null;
  readonly region: CleanRegion;
}

/** Outlines of a drawing by colours and rounds, in the order of the work. */
export interface ColourOutlines {
  readonly outlines: readonly ColourOutline[];
  /** Bounds of the whole drawing, mm, whatever part is outlined. */
  readonly boundsMm: Bounds;
}

/**
 * The clean outlines of a drawing by colour and round, as they are carved: what later paint covers belongs to that. Parts that are empty are left out.
 *
 * @throws {JobError} when the job names a colour or layer that is not drawn, or one twice; for `cut` and `left` also when a bit is too short
 */
export function colourOutlines(drawing: Drawing, job: Job, part: OutlinedPart): ColourOutlines {
  const stages = new Stages();
  const { rounds, colours } = plannedRounds(drawing, job);
  const outlines = rounds.flatMap((round, k) => {
    const whole = measureArtwork(round.drawing, stages).artwork;
    const { cut, left } = part === 'drawn' ? { cut: whole, left: [] } : cutOf(whole, round, job, stages);
    const here = { ...colours, all: round.colours };
    return colourCuts(round.drawing, here, { artwork: whole, cut }, stages).map(
      ({ colour, cut: own, drawn }) => ({
        name: colour.name,
        paint: round.drawing.shapes.find((shape) => colours.of(shape) === colour)?.colour ?? '#000000',
        round: rounds.length < 2 ? null : k + 1,
        region: part === 'left' ? leftIn(drawn, left) : own,
      }),
    );
  });
  return {
    outlines: outlines.filter(({ region }) => region.ringEnds.length > 0),
    boundsMm: boundsOrZero(measureArtwork(drawing, stages).artwork),
  };
}

function cutOf(
  artwork: CleanRegion,
  {
    depthMm,
    bits,
    drawing,
  }: { readonly depthMm: number; readonly bits: Job['bits']; readonly drawing: Drawing },
  job: Job,
  stages: Stages,
): { readonly cut: CleanRegion; readonly left: readonly Region[] } {
  const { cutRegion, standing } = measureCut(artwork, { ...job, depthMm, bits }, drawing.toleranceMm, stages);
  return { cut: cutRegion, left: standing.map(({ outline }) => ({ ...outline, fillRule: 'nonzero' })) };
}

function leftIn(drawn: CleanRegion, left: readonly Region[]): CleanRegion {
  return combineShapes([{ ...drawn, fillRule: 'nonzero' }], left, 'intersect');
}
