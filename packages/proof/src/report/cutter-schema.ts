import * as z from 'zod';

const diameterMm = z.number().positive().meta({ description: 'Cutting diameter, mm' });
const cuttingLengthMm = z
  .number()
  .positive()
  .nullable()
  .meta({ description: 'Length of the cutting edge above the tip, mm; null where it was not given' });

/** A cutter of the job by its shape. */
export const cutterSchema = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('flat'), diameterMm, cuttingLengthMm }),
    z.object({ kind: z.literal('ball'), diameterMm, cuttingLengthMm }),
    z.object({
      kind: z.literal('bull'),
      diameterMm,
      cornerMm: z.number().positive().meta({ description: 'Radius between floor and side, mm' }),
      cuttingLengthMm,
    }),
    z.object({
      kind: z.literal('vee'),
      angleDeg: z.number().positive().meta({ description: 'Included angle' }),
      diameterMm,
      tipMm: z.number().nonnegative().meta({ description: 'Width of the flat at the tip, mm' }),
      tipRadiusMm: z.number().nonnegative().meta({ description: 'Radius of the round at the tip, mm' }),
      cuttingLengthMm,
    }),
    z.object({
      kind: z.literal('taper'),
      tipDiameterMm: z.number().positive().meta({ description: 'Diameter of the ball at the tip, mm' }),
      sideDeg: z.number().positive().meta({ description: 'Angle of one side against the axis' }),
      diameterMm,
      cuttingLengthMm,
    }),
    z.object({
      kind: z.literal('profile'),
      points: z
        .array(z.object({ heightMm: z.number(), diameterMm: z.number() }).readonly())
        .readonly()
        .meta({ description: 'From the tip up, straight between' }),
      cuttingLengthMm,
    }),
  ])
  .readonly();
