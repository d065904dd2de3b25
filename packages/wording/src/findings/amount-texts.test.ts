import type { Amount } from '@pourproof/proof';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { amountTexts } from './amount-texts.ts';

const QUANTITIES = [
  { quantity: 'width', unit: 'mm' },
  { quantity: 'area', unit: 'mm²' },
  { quantity: 'mass', unit: 'g' },
  { quantity: 'time', unit: 'h' },
  { quantity: 'temperature', unit: '°C' },
  { quantity: 'share', unit: '%' },
  { quantity: 'colour-difference', unit: 'ΔE00' },
] as const;

const value = fc.double({ min: 1e-6, max: 500, noNaN: true });
/** From nothing to a tenth: how far a measured value lies off its limit. */
const off = fc.oneof(fc.constant(0), fc.double({ min: -0.1, max: 0.1, noNaN: true }));

test('two amounts that differ never print alike, in either unit, and each keeps the digits of its size', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...QUANTITIES),
      value,
      off,
      fc.constantFrom('mm' as const, 'in' as const),
      (kind, limit, share, unit) => {
        const measured = limit * (1 + share);
        const texts = amountTexts(
          { measured: { ...kind, value: measured } as Amount, limit: { ...kind, value: limit } as Amount },
          unit,
        );
        if (Math.abs(measured - limit) > 1e-8 * limit) {
          expect(texts.measured).not.toBe(texts.limit);
        }
        const plain = /^(?:just (?:over|under) )?(-?[\d.]+) (\S+)$/u;
        const [, size, sign] = plain.exec(texts.measured) ?? [];
        expect(size, texts.measured).toBeDefined();
        // the side of the limit on which it lies is never told wrong
        if (Number(size) === Number(plain.exec(texts.limit)?.[1]) && measured !== limit) {
          expect(
            texts.measured.startsWith(measured > limit ? 'just over' : 'just under') || share ** 2 < 1e-15,
          ).toBe(true);
        }
        expect(sign).toBe(plain.exec(texts.limit)?.[2]);
      },
    ),
  );
});

test.each([
  [1.0004, 1, 'mm', 'just over 1.00 mm', '1.00 mm'],
  [0.9996, 1, 'mm', 'just under 1.00 mm', '1.00 mm'],
  [0.999, 1, 'in', 'just under 0.039 in', '0.039 in'],
  [1, 1, 'mm', '1.00 mm', '1.00 mm'],
  [0.3, 1, 'mm', '0.30 mm', '1.00 mm'],
] as const)('%s against %s in %s', (measured, limit, unit, one, other) => {
  const amount = (mm: number): Amount => ({ value: mm, quantity: 'width', unit: 'mm' });
  expect(amountTexts({ measured: amount(measured), limit: amount(limit) }, unit)).toEqual({
    measured: one,
    limit: other,
  });
});

test('a share that is not all is never told as all', () => {
  const share = (percent: number): Amount => ({ value: percent, quantity: 'share', unit: '%' });
  expect(amountTexts({ measured: share(99.7), limit: share(50) }, 'mm').measured).toBe('just under 100 %');
  expect(amountTexts({ measured: share(100), limit: share(50) }, 'mm').measured).toBe('100 %');
});
