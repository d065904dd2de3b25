import { bitText, type Shop } from '@pourproof/job';
import type { ListRow } from './tables/lists.ts';

/** What a shop file has of each list that a flag takes its words from. */
const OF_SHOP: Readonly<Record<string, (shop: Shop) => readonly ListRow[]>> = {
  bits: ({ bits, usual: { units = 'mm' } }) =>
    bits.map(({ text, bit, price, changeMinutes, isToBuy }) => [
      text,
      told([
        bitText(bit, units),
        isToBuy ? 'to buy' : 'at hand',
        price === null ? '' : `price ${price.toFixed(2)}`,
        changeMinutes === null ? '' : `${changeMinutes} min to put in`,
      ]),
    ]),
  woods: ({ woods, materials }) => woods.map((id) => [id, materials.woods[id]?.name ?? id]),
  seals: ({ seals, materials }) =>
    seals.map(({ seal, coats, sealHours, pricePerG }) => [
      seal,
      told([
        materials.sealers[seal]?.name ?? seal,
        coats === undefined ? '' : `${coats} ${coats === 1 ? 'coat' : 'coats'}`,
        sealHours === undefined ? '' : `${sealHours} to wait`,
        pricePerG === null ? '' : `price ${pricePerG} a gram`,
      ]),
    ]),
  resins: ({ resins, materials }) =>
    resins.map(({ resin, pricePerG }) => [
      resin,
      told([materials.resins[resin]?.name ?? resin, pricePerG === null ? '' : `price ${pricePerG} a gram`]),
    ]),
};

/** Lists of which a shop file has its own. */
export const SHOP_LIST_NAMES: readonly string[] = Object.keys(OF_SHOP);

/** The rows of a list as a shop file has them; none where it says nothing. */
export function shopRows(what: string, shop: Shop): readonly ListRow[] {
  return OF_SHOP[what]?.(shop) ?? [];
}

function told(parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(', ');
}
