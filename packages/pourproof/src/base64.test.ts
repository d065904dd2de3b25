import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fromBase64, toBase64 } from './base64.ts';

test('bytes come back from text, which is that of RFC 4648', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 40 }), (bytes) => {
      expect(toBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
      expect(fromBase64(toBase64(bytes))).toEqual(bytes);
    }),
  );
  expect(() => fromBase64('ab*=')).toThrow(RangeError);
  expect(() => fromBase64('abc')).toThrow(RangeError);
});
