import * as z from 'zod/mini';
import { type BitInput, bitSchema } from '../bits/bit-input.ts';
import { materialsEntries } from '../materials-file/materials-file.ts';
import { SETTING_KEYS, SETTINGS, type SettingKey } from '../settings/table.ts';
import { measureSchema, type TimeInput } from '../values/measure-input.ts';

/** The id of the file of a shop. */
export const SHOP_SCHEMA = 'pourproof/shop@1';

/** Rows that a list may hold (our choice: more than a small shop has). */
const MAX_ROWS = 200;

/** Settings that a shop may state for all its jobs: what is said of one artwork or one board is none. */
export const SHOP_SETTING_KEYS: readonly SettingKey[] = SETTING_KEYS.filter(
  (key) => SETTINGS[key].isOfShop === true,
);

function told<Schema extends z.ZodMiniType>(schema: Schema, description: string): Schema {
  return schema.check(z.meta({ description }));
}

const price = z.optional(z.number().check(z.nonnegative()));

const bitRow = z.union([
  bitSchema,
  z.strictObject({
    bit: told(bitSchema, 'As after --bit, such as "flat:1/8in:length 12mm"'),
    price: told(price, 'What it costs, in your money'),
    changeMinutes: told(
      z.optional(z.number().check(z.nonnegative(), z.lte(1000))),
      'Minutes to put it in and to set it to the face',
    ),
    toBuy: told(
      z.optional(z.boolean()),
      'true where it would have to be bought: its price then counts among what a change costs',
    ),
  }),
]);

const sealRow = z.union([
  z.string(),
  z.strictObject({
    seal: told(z.string(), 'An id or a name of the seals'),
    coats: told(z.optional(z.int().check(z.gte(1), z.lte(10))), 'Coats that you give it'),
    sealHours: told(
      z.optional(measureSchema('time')),
      'How long you leave it before the pour, such as "24h"',
    ),
    pricePerG: told(price, 'Price of a gram of liquid, in your money'),
  }),
]);

const resinRow = z.union([
  z.string(),
  z.strictObject({
    resin: told(z.string(), 'An id or a name of the resins'),
    pricePerG: told(price, 'Price of a gram of mix, in your money'),
  }),
]);

const list = <Row extends z.ZodMiniType>(row: Row, what: string): z.ZodMiniOptional<z.ZodMiniArray<Row>> =>
  told(z.optional(z.array(row).check(z.minLength(1), z.maxLength(MAX_ROWS))), what);

const usual = told(
  z.optional(
    z.strictObject(
      Object.fromEntries(
        SHOP_SETTING_KEYS.map((key) => {
          const { holds, help } = SETTINGS[key];
          return [key, told(z.optional(holds.schema), `${help}; ${holds.form}`)];
        }),
      ),
    ),
  ),
  'Settings as they are in every job that does not say otherwise',
);

/**
 * The file `pourproof/shop@1`: what a shop has in its drawers and how it works. A job takes from it what it does not say itself; what
 * neither says is assumed.
 */
export const shopFileSchema = z.strictObject({
  schema: z.literal(SHOP_SCHEMA),
  bits: list(bitRow, 'The bits, the one that you take first at the top'),
  woods: list(z.string(), 'Woods on the shelf: ids or names; the first is taken where a job names none'),
  seals: list(sealRow, 'Seals on the shelf; where a job seals with one, its coats and its wait are taken'),
  resins: list(resinRow, 'Resins on the shelf; the first is taken where a job names none'),
  scales: list(z.string(), 'Scales: ids or names; the first is taken where a job names none'),
  usual,
  materials: told(
    z.optional(z.strictObject(materialsEntries)),
    'Your own values for woods, seals, resins and scales, as in materials@1',
  ),
});

/** A row of the bits as it stands in a file. */
export type BitRow =
  | BitInput
  | {
      readonly bit: BitInput;
      readonly price?: number;
      readonly changeMinutes?: number;
      readonly toBuy?: boolean;
    };

/** A row of the seals as it stands in a file. */
export type SealRow =
  | string
  | {
      readonly seal: string;
      readonly coats?: number;
      readonly sealHours?: TimeInput;
      readonly pricePerG?: number;
    };

/** A row of the resins as it stands in a file. */
export type ResinRow = string | { readonly resin: string; readonly pricePerG?: number };
