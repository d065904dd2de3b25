import type { MaterialsBook } from '@pourproof/materials';
import type { Bit } from '../bits/bit.ts';
import type { RoundSetting } from '../settings/rounds.ts';
import { type JobInput, SETTING_KEYS, SETTINGS, type SettingKey } from '../settings/table.ts';
import { typedUnit } from '../typed-unit.ts';
import { knownId } from '../values/known-row.ts';
import { type Shop, shopBit } from './shop.ts';

/** A job with what its shop says, and which settings it has from there. */
export interface Filled {
  readonly filled: JobInput;
  readonly fromShop: readonly SettingKey[];
}

/**
 * A job with the settings of the shop in place of those that it does not give. What stands in a list of the shop goes before its usual
 * settings where it is of the seal or the resin that the job has.
 *
 * @throws {JobError} where the seal or the resin of the job is unknown
 */
export function filledByShop(input: JobInput, shop: Shop | null, materials: MaterialsBook): Filled {
  if (shop === null) {
    return { filled: input, fromShop: [] };
  }
  const base: JobInput = { ...firstOfLists(shop), ...shop.usual };
  const seal = input.seal ?? base.seal;
  const resin = input.resin ?? base.resin;
  const offered: JobInput = {
    ...base,
    ...(seal === undefined ? {} : sealSettings(knownId('seal', seal, materials.sealers), shop)),
    ...(resin === undefined ? {} : resinSettings(knownId('resin', resin, materials.resins), shop)),
  };
  const fromShop = SETTING_KEYS.filter((key) => offered[key] !== undefined && isLeftOut(key, input));
  const taken = Object.fromEntries(fromShop.map((key) => [key, offered[key]]));
  return { filled: { ...input, ...taken }, fromShop };
}

/** Settled bits with the edge of the same bit of the shop where none was given. */
export function withEdges<
  Fields extends { readonly bits: readonly Bit[]; readonly rounds: readonly RoundSetting[] },
>(fields: Fields, shop: Shop | null): Fields {
  const edged = (bit: Bit): Bit =>
    bit.cuttingLengthMm === null
      ? { ...bit, cuttingLengthMm: shopBit(shop, bit)?.bit.cuttingLengthMm ?? null }
      : bit;
  return shop === null
    ? fields
    : {
        ...fields,
        bits: fields.bits.map(edged),
        rounds: fields.rounds.map((round) => ({ ...round, bits: round.bits?.map(edged) ?? null })),
      };
}

/** The first of each list that has one; nothing is sealed because a seal is at hand. */
function firstOfLists({ bits, woods, resins, scales }: Shop): JobInput {
  const bit = bits.find(({ isToBuy }) => !isToBuy);
  return {
    ...(bit === undefined ? {} : { bit: [bit.text] }),
    ...(woods[0] === undefined ? {} : { wood: woods[0] }),
    ...(resins[0] === undefined ? {} : { resin: resins[0].resin }),
    ...(scales[0] === undefined ? {} : { weigh: scales[0] }),
  };
}

function sealSettings(id: string, { seals }: Shop): JobInput {
  const { coats, sealHours } = seals.find((each) => each.seal === id) ?? {};
  return { ...(coats === undefined ? {} : { coats }), ...(sealHours === undefined ? {} : { sealHours }) };
}

function resinSettings(id: string, { resins }: Shop): JobInput {
  const pricePerG = resins.find((each) => each.resin === id)?.pricePerG ?? null;
  return pricePerG === null ? {} : { pricePerG };
}

/** Whether a job leaves a setting to others: a board says its woods itself, and typed lengths say the unit. */
function isLeftOut(key: SettingKey, input: JobInput): boolean {
  const isOfBoard = input.board !== undefined && SETTINGS[key].only?.board === 'without';
  const isTyped = key === 'units' && typedUnit(input) !== undefined;
  return input[key] === undefined && !isOfBoard && !isTyped;
}
