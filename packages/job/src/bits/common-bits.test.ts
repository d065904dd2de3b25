import { defaultMaterials } from '@pourproof/materials';
import { expect, test } from 'vitest';
import { readShopFile } from '../shop-file/read-shop-file.ts';
import { flatBitsBelow } from './common-bits.ts';

test('of the sizes in trade those made in the maker’s unit, of a maker’s own all', () => {
  const inTrade = defaultMaterials.cutters;
  expect(flatBitsBelow(3.1, 'mm', inTrade)).toEqual([3, 2, 1.5, 1]);
  expect(flatBitsBelow(3.1, 'in', inTrade)).not.toContain(2);
  const { materials } = readShopFile(
    {
      schema: 'pourproof/shop@1',
      bits: ['flat:2mm', 'flat:1/16in', 'vee:60deg:6mm'].map((bit) => ({ bit })),
    },
    'shop.json',
  );
  expect(flatBitsBelow(3.1, 'mm', materials.cutters)).toEqual([2, 25.4 / 16]);
  expect(flatBitsBelow(3.1, 'in', materials.cutters)).toEqual([2, 25.4 / 16]);
});
