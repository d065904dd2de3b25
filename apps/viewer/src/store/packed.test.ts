import fc from 'fast-check';
import { expect, test } from 'vitest';
import { filesIn, packed, unpacked } from './packed.ts';

const plain = fc.letrec((tie) => ({
  value: fc.oneof(
    { depthSize: 'small' },
    fc.string(),
    fc.double({ noNaN: true }),
    fc.constant(null),
    fc.constant(undefined),
    fc.uint8Array({ maxLength: 4 }),
    fc.array(tie('value'), { maxLength: 4 }),
    fc.dictionary(
      fc.string({ minLength: 1 }).filter((key) => key !== '__proto__'),
      tie('value'),
      { maxKeys: 4 },
    ),
  ),
})).value;

test('packed, cloned and unpacked, data is what it was, and no bytes are left in what was packed', () => {
  fc.assert(
    fc.property(plain, (data) => {
      const ids = new Map<Uint8Array, string>();
      const { data: bare, files } = packed(data, (bytes) => {
        const id = ids.get(bytes) ?? `${ids.size}`;
        ids.set(bytes, id);
        return id;
      });
      expect(filesIn(bare)).toEqual(new Set(files.keys()));
      expect(unpacked(structuredClone(bare), files)).toEqual(data);
    }),
  );
});

test('what stands in several places stays one thing, and missing bytes are no silent hole', () => {
  const order = { bytes: Uint8Array.of(1, 2) };
  const { data, files } = packed([order, order], () => 'x');
  const [first, second] = data as readonly unknown[];
  expect(first).toBe(second);
  const again = unpacked(data, files) as (typeof order)[];
  expect(again[0]).toBe(again[1]);
  expect(() => unpacked(data, new Map())).toThrow('file x is missing');
});
