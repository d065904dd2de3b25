import * as z from 'zod/mini';

/** Length of the cutting edge above the tip in mm; left out or `null` where it is not known. */
interface CuttingLength {
  readonly cuttingLengthMm?: number | null | undefined;
}

/**
 * A bit as a structure. Lengths in mm, angles in degrees; see {@link Bit} for what each means. A bit of a
 * settled job is one, too.
 */
export type BitStructure = CuttingLength &
  (
    | { readonly kind: 'flat' | 'ball'; readonly diameterMm: number }
    | { readonly kind: 'bull'; readonly diameterMm: number; readonly cornerMm: number }
    | {
        readonly kind: 'vee';
        readonly angleDeg: number;
        readonly diameterMm: number;
        readonly tipMm?: number | undefined;
        readonly tipRadiusMm?: number | undefined;
      }
    | {
        readonly kind: 'taper';
        readonly tipDiameterMm: number;
        readonly sideDeg: number;
        readonly diameterMm: number;
      }
    | {
        readonly kind: 'profile';
        readonly points: readonly { readonly heightMm: number; readonly diameterMm: number }[];
      }
  );

/** A bit as typed, such as `flat:1/8in`, or as a structure. */
export type BitInput = string | BitStructure;

const cuttingLengthMm = z.optional(z.nullable(z.number()));
const diameterMm = z.number();

/** The schema of a {@link BitInput}. */
export const bitSchema: z.ZodMiniType = z.union([
  z.string(),
  z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.enum(['flat', 'ball']), diameterMm, cuttingLengthMm }),
    z.strictObject({ kind: z.literal('bull'), diameterMm, cornerMm: z.number(), cuttingLengthMm }),
    z.strictObject({
      kind: z.literal('vee'),
      angleDeg: z.number(),
      diameterMm,
      tipMm: z.optional(z.number()),
      tipRadiusMm: z.optional(z.number()),
      cuttingLengthMm,
    }),
    z.strictObject({
      kind: z.literal('taper'),
      tipDiameterMm: z.number(),
      sideDeg: z.number(),
      diameterMm,
      cuttingLengthMm,
    }),
    z.strictObject({
      kind: z.literal('profile'),
      points: z.array(z.strictObject({ heightMm: z.number(), diameterMm: z.number() })).check(z.minLength(2)),
      cuttingLengthMm,
    }),
  ]),
]);
