import * as z from 'zod';

/** A number of the report with its unit in its description. */
export const mm = (what: string): z.ZodNumber => z.number().meta({ description: `${what}, mm` });
/** An area, never negative. */
export const mm2 = (what: string): z.ZodNumber => sized(`${what}, mm²`);
/** A volume, never negative. */
export const mm3 = (what: string): z.ZodNumber => sized(`${what}, mm³`);
/** A mass, never negative. */
export const gram = (what: string): z.ZodNumber => sized(`${what}, g`);
/** A number that is never negative, its unit in its description. */
export const sized = (what: string): z.ZodNumber => z.number().nonnegative().meta({ description: what });

/** A place on the artwork. */
export const point = z
  .tuple([z.number(), z.number()])
  .readonly()
  .meta({ description: 'A place in the frame of the report: x to the right, y down, mm' });

const value = z.number();

/** A measured value or its limit: what kind of quantity it is, and the one unit that this quantity has. */
export const amount = z
  .discriminatedUnion('quantity', [
    z.object({ quantity: z.literal('width'), unit: z.literal('mm'), value }),
    z.object({ quantity: z.literal('diameter'), unit: z.literal('mm'), value }),
    z.object({ quantity: z.literal('tip-width'), unit: z.literal('mm'), value }),
    z.object({ quantity: z.literal('depth'), unit: z.literal('mm'), value }),
    z.object({ quantity: z.literal('height'), unit: z.literal('mm'), value }),
    z.object({ quantity: z.literal('length'), unit: z.literal('mm'), value }),
    z.object({ quantity: z.literal('area'), unit: z.literal('mm²'), value }),
    z.object({ quantity: z.literal('mass'), unit: z.literal('g'), value }),
    z.object({ quantity: z.literal('time'), unit: z.literal('h'), value }),
    z.object({ quantity: z.literal('temperature'), unit: z.literal('°C'), value }),
    z.object({ quantity: z.literal('share'), unit: z.literal('%'), value }),
    z.object({ quantity: z.literal('probability'), unit: z.literal('%'), value }),
    z.object({ quantity: z.literal('colour-difference'), unit: z.literal('ΔE00'), value }),
    z.object({ quantity: z.literal('count'), unit: z.literal('1'), value }),
  ])
  .readonly();
