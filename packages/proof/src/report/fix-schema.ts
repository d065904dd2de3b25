import * as z from 'zod';
import { FINDING_CODES } from '../codes.ts';
import { gram, mm, mm2, sized } from './quantities.ts';

const clears = z.boolean().meta({ description: 'Whether it clears the finding by itself, as computed' });
const count = z.number().int().positive();
const round = count
  .optional()
  .meta({ description: 'The round of the job whose depth it changes; absent where it is that of the job' });
const roundOfBits = count.optional().meta({
  description: 'The round of the job whose bits it changes; absent where they are those of the job',
});

/** Kinds of ways out by what they do: ids of the materials and numbers in named units, no words. */
const KINDS = [
  z.object({
    do: z.literal('use-bit'),
    kind: z.literal('flat'),
    diameterMm: mm('Diameter of a bit to add'),
    floorSharePct: sized('Share of the floor that it clears, percent').optional(),
    edgeMm: mm(
      'Least length of its cutting edge, where bits of this diameter are usually shorter',
    ).optional(),
    isToBuy: z
      .literal(true)
      .optional()
      .meta({ description: 'The shop would have to buy it, by its own list; absent where it would not' }),
    leftShortMm: sized('How far short the worst tip or corner still ends, mm').optional(),
    round: roundOfBits,
    clears,
  }),
  z.object({
    do: z.literal('use-vee'),
    angleDeg: z.number().meta({ description: 'Included angle' }),
    diameterMm: mm('Least diameter of the V to use instead'),
    round: roundOfBits,
    clears,
  }),
  z.object({
    do: z.literal('use-tip'),
    tipMm: mm('Widest flat that the tip of a V may have; 0 for a true point'),
    round: roundOfBits,
    clears,
  }),
  z.object({
    do: z.literal('scale'),
    factor: z.number().positive().meta({ description: 'Factor for the size of the artwork' }),
    clears,
  }),
  z.object({
    do: z.literal('widen'),
    what: z.enum(['stroke', 'dot', 'wood']).meta({ description: 'A stroke, a dot, or the wood between two' }),
    byMm: mm('By how much'),
    clears,
  }),
  z.object({
    do: z.literal('move-apart'),
    byMm: mm('How much farther apart the parts on both sides of the place, with all that lies beyond'),
    clears,
  }),
  z.object({
    do: z.literal('track'),
    byMm: mm('How much more room between letters'),
    clears,
  }),
  z.object({
    do: z.literal('space-lines'),
    factor: z.number().positive().meta({ description: 'Factor for the distance of lines' }),
    clears,
  }),
  z.object({
    do: z.literal('turn'),
    deg: z.number().meta({ description: 'Turn of the artwork on the board, counter-clockwise, degrees' }),
    sparedPct: sized('Share of the open end grain that this spares, percent'),
    clears,
  }),
  z.object({
    do: z.literal('move'),
    rightMm: mm('To the right as drawn; to the left where negative'),
    downMm: mm('Down as drawn; up where negative'),
    clears,
  }),
  z.object({
    do: z.literal('change-seal'),
    seal: z.string().meta({ description: 'Id of a sealer' }),
    coats: count,
    hours: sized('Wait before the pour, hours'),
    bondsUnsanded: z.boolean().meta({
      description: 'Whether the colour still bonds to it without sanding, which no narrow pocket allows',
    }),
    clears,
  }),
  z.object({ do: z.literal('fewer-coats'), coats: count, clears }),
  z.object({
    do: z.literal('wait'),
    hours: sized('Longer wait before the pour, hours'),
    warmthHelps: z.boolean().meta({
      description: 'Whether a warmer shop would do instead: never where what cures is a solvent that leaves',
    }),
    clears,
  }),
  z.object({ do: z.literal('pour-sooner'), hours: sized('Wait before the pour, hours'), clears }),
  z.object({ do: z.literal('abrade'), widthMm: mm('Narrowest pocket that a hand can abrade'), clears }),
  z.object({ do: z.literal('deepen'), byMm: mm('By how much'), round, clears }),
  z.object({ do: z.literal('cut-shallower'), toMm: mm('Depth to cut to'), round, clears }),
  z.object({ do: z.literal('level-less'), byMm: mm('By how much less'), clears }),
  z.object({
    do: z.literal('level-by'),
    method: z.enum(['planer', 'drum', 'hand', 'cutter']).meta({ description: 'Another way of levelling' }),
    clears,
  }),
  z.object({ do: z.literal('flatten'), byMm: mm('By how much more, at the highest place'), clears }),
  z.object({
    do: z.literal('use-scale'),
    scale: z.string().meta({ description: 'Id of a scale' }),
    clears,
  }),
  z.object({
    do: z.literal('zero-between'),
    enoughG: gram('Smallest mix once the display is set to zero between the parts'),
    clears,
  }),
  z.object({
    do: z.literal('read-label'),
    ratio: z.enum(['by-volume', 'by-weight']).meta({
      description: 'The kind that the ratio looks like, to be entered as such or beside the other',
    }),
    clears,
  }),
  z.object({ do: z.literal('mix-more'), massG: gram('Mass to mix'), clears }),
  z.object({ do: z.literal('top-up'), volumeMl: sized('Resin to have ready, ml'), clears }),
  z.object({
    do: z.literal('change-temperature'),
    toC: z.number().meta({ description: 'Temperature of shop and resin, °C' }),
    besideSolvent: z.boolean().meta({
      description: 'Whether a solvent is in use, which has to leave before anything is warmed',
    }),
    clears,
  }),
  z.object({
    do: z.literal('less-pigment'),
    toPct: sized('Pigment by weight of the mix, percent'),
    clears,
  }),
  z.object({ do: z.literal('pour-proud'), overpourMm: mm('How proud of the face to pour'), clears }),
  z.object({
    do: z.literal('more-cups'),
    cups: count.meta({ description: 'Cups of one layer, mixed one after the other' }),
    clears,
  }),
  z.object({ do: z.literal('pour-in-layers'), layers: count, clears }),
  z.object({
    do: z.literal('use-resin'),
    resin: z.string().meta({ description: 'Id of a resin' }),
    clears,
  }),
  z.object({
    do: z.literal('clean'),
    step: count.meta({ description: 'Step of the cleaning of an oiled board, from 1' }),
    clears,
  }),
  z.object({
    do: z.literal('test-coupon'),
    slots: count.meta({ description: 'Test slots to cut across the grain of the same board' }),
    lengthMm: mm('Length of a slot, across the grain'),
    depthMm: mm('Depth of a slot'),
    tellsApart: z
      .object({
        nearEndMm: mm('Distance of half of the slots from the board’s end'),
        farMm: mm('Least distance of the others'),
      })
      .optional()
      .meta({ description: 'How the slots tell whether viscosity or trapped air stops a streak' }),
    clears,
  }),
  z.object({ do: z.literal('move-clamp'), byMm: mm('How much farther from the cut, at least'), clears }),
  z.object({ do: z.literal('thicker-board'), thicknessMm: mm('Least thickness of the board'), clears }),
  z.object({
    do: z.literal('part-by-wall'),
    widthMm: mm('Least width of the wall of wood between two colours'),
    clears,
  }),
  z.object({
    do: z.literal('pour-in-rounds'),
    rounds: z
      .array(z.array(z.string()).min(1))
      .min(2)
      .meta({ description: 'Names of colours by round, in the order of the work' }),
    clears,
  }),
  z.object({
    do: z.literal('join-ends'),
    toleranceMm: mm('Least joining tolerance that closes the most outlines, tried by reading with it'),
    closes: count.meta({ description: 'Outlines that it closes' }),
    areaMm2: mm2('Area that these bound'),
    clears,
  }),
  z.object({ do: z.literal('redraw-ends'), clears }),
  z.object({ do: z.literal('close-gap'), gapMm: mm('Widest gap'), clears }),
  z.object({ do: z.literal('merge-shapes'), crossings: count, clears }),
] as const;

// named, so that the published schema holds it once
const step = z.discriminatedUnion('do', KINDS).meta({ id: 'step', description: 'What else a way out takes' });

const findingCode = z.enum(FINDING_CODES).meta({ id: 'findingCode', description: 'Code of a finding' });

/** What a full proof of the changed job said of a way out. */
const tried = {
  leaves: z
    .object({ severity: z.enum(['stop', 'caution', 'note']), value: z.number() })
    .optional()
    .meta({
      description:
        'What it leaves of the finding, in the unit of its measured value, where it does not clear it',
    }),
  also: z
    .array(step)
    .optional()
    .meta({ description: 'What else it takes, so that nothing as grave comes instead; applied after it' }),
  couponRows: z.array(count).optional().meta({
    description:
      'Rows of the coupons that leave out what it changes, from 1: what the job says now has to be written into them first, for they were cut with it',
  }),
  brings: z.array(findingCode).optional().meta({ description: 'Findings that it brings' }),
};

type Tried<Kinds extends readonly z.ZodObject[]> = {
  -readonly [Index in keyof Kinds]: Kinds[Index] extends z.ZodObject<infer Shape>
    ? z.ZodObject<Shape & typeof tried, z.core.$strip>
    : never;
};

/**
 * One way to clear a finding.
 *
 * `applyFix` makes those that a setting of the job expresses; the others are work on the drawing, the board
 * or at the bench.
 */
export const fixSchema = z
  // each kind keeps its own fields and takes the same ones more
  .discriminatedUnion('do', KINDS.map((kind) => kind.extend(tried)) as unknown as Tried<typeof KINDS>)
  .readonly();

/** One way to clear a finding. */
export type Fix = z.infer<typeof fixSchema>;
/** What else a way out takes. */
export type FixStep = z.infer<typeof step>;
