import { combineShapes, resolveRegions } from '@pourproof/arrangement';
import { type Bit, type Job, JobError } from '@pourproof/job';
import {
  type CleanRegion,
  type Drawing,
  type DrawnShape,
  type Notice,
  type Region,
  textInUnits,
} from '@pourproof/plane';
import { type DrawnColour, type DrawnColours, drawnColours } from '../colours/drawn-colours.ts';

/** One round of the work: what is carved and poured together. */
export interface PlannedRound {
  readonly colours: readonly DrawnColour[];
  /** Its shapes, less what earlier rounds have poured and paint shows above them. */
  readonly drawing: Drawing;
  readonly depthMm: number;
  readonly bits: readonly Bit[];
  /** Whether the job gives it bits of its own. */
  readonly hasOwnBits: boolean;
}

/** The rounds of a job in the order of the work. */
export interface RoundPlan {
  readonly colours: DrawnColours;
  readonly rounds: readonly PlannedRound[];
  readonly notices: readonly Notice[];
}

/**
 * The rounds that a job makes of a drawing; one where it asks for none. Colours that the job does not name come in a last round, together.
 *
 * A round is carved in full below the colours that later rounds carve into it, and leaves standing what earlier rounds poured where paint shows that
 * above: in the end the face is as drawn, whatever the order.
 *
 * @throws {JobError} when the job names a colour or layer that is not drawn, or one twice
 */
export function plannedRounds(drawing: Drawing, job: Job): RoundPlan {
  const colours = drawnColours(drawing, job);
  const named = job.rounds.map(({ drawn, depthMm, bits }) => ({
    colours: drawn.map((name) => colours.named(name, 'rounds')),
    depthMm: depthMm ?? job.depthMm,
    bits: bits ?? job.bits,
    hasOwnBits: bits !== null,
  }));
  refuseTwice(named.flatMap((round) => round.colours));
  const others = colours.all.filter((colour) => !named.some((round) => round.colours.includes(colour)));
  const last =
    others.length === 0 ? [] : [{ colours: others, depthMm: job.depthMm, bits: job.bits, hasOwnBits: false }];
  const orders = [...named, ...last];
  const roundOf = new Map(orders.flatMap((round, k) => round.colours.map((colour) => [colour, k] as const)));
  const rankOf = (shape: DrawnShape): number => roundOf.get(colours.of(shape)) ?? 0;
  return {
    colours,
    rounds:
      orders.length < 2
        ? orders.map((order) => ({ ...order, drawing }))
        : orders.map((order, k) => ({ ...order, drawing: drawingOfRound(drawing, k, rankOf) })),
    notices: named.length === 0 || others.length === 0 ? [] : [unnamed(others)],
  };
}

/** Two names may stand for one colour. */
function refuseTwice(named: readonly DrawnColour[]): void {
  const again = named.find((colour, k) => named.indexOf(colour) < k);
  if (again !== undefined) {
    throw new JobError('round-twice', 'rounds', { name: again.name });
  }
}

/** The shapes of a round, each less what is painted above it and was poured before. */
function drawingOfRound(drawing: Drawing, round: number, rankOf: (shape: DrawnShape) => number): Drawing {
  const shapes: DrawnShape[] = [];
  let above: Region[] = [];
  let cover: CleanRegion | null = null;
  for (const shape of drawing.shapes.toReversed()) {
    const rank = rankOf(shape);
    if (rank < round) {
      above.push(shape.region);
      cover = null;
    } else if (rank === round && above.length > 0) {
      cover ??= resolveRegions(above).region;
      above = [{ ...cover, fillRule: 'nonzero' }];
      shapes.push(uncovered(shape, above));
    } else if (rank === round) {
      shapes.push(shape);
    }
  }
  return { ...drawing, shapes: shapes.toReversed() };
}

function uncovered(shape: DrawnShape, above: readonly Region[]): DrawnShape {
  const hidden = combineShapes([shape.region], above, 'intersect');
  return hidden.ringEnds.length === 0
    ? shape
    : { ...shape, region: { ...combineShapes([shape.region], above, 'subtract'), fillRule: 'nonzero' } };
}

function unnamed(colours: readonly DrawnColour[]): Notice {
  const names = colours.map(({ name }) => name);
  return {
    code: 'colour-without-round',
    params: { colours: names },
    text: textInUnits(
      `The job's rounds do not name ${names.join(', ')}: ${names.length === 1 ? 'it comes' : 'they come'} in a last round.`,
    ),
    where: [{ setting: 'rounds' }],
    severity: 'note',
  };
}

/** The reader's notice of paint over paint as it holds in rounds: the advice to carve only what is seen would leave a sliver at every joint. */
export function noticesInRounds(notices: readonly Notice[]): readonly Notice[] {
  return notices.map((notice) =>
    notice.code === 'paint-covers-paint'
      ? {
          ...notice,
          text: textInUnits(
            'Shapes lie on top of shapes of another colour, as rounds have it: each round is carved in full below what a later one carves into it, so leave the drawing as it is.',
          ),
        }
      : notice,
  );
}
