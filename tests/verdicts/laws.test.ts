import type { Report } from '@pourproof/proof';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cases } from '../support/lane.ts';
import { codes, GRAVITY, job, part, shifted, vetted } from './random-jobs.ts';

test('more levelling never makes the verdict milder', () => {
  fc.assert(
    fc.property(part, job, fc.constantFrom('1.5mm', '2.5mm', '5mm'), (ring, input, level) => {
      const [less, more] = [vetted([ring], input), vetted([ring], { ...input, level })];
      expect(GRAVITY[more.verdict]).toBeGreaterThanOrEqual(GRAVITY[less.verdict]);
    }),
    cases(60),
  );
});

test('what levels more than the whole cut is a stop, whatever the shape', () => {
  fc.assert(
    fc.property(part, job, (ring, input) => {
      const report = vetted([ring], { ...input, level: '6mm' });
      // a shape that no bit enters has its own stop
      expect(report.verdict).toBe('stop');
      if (report.cut.areaMm2 > 1) {
        expect([...codes(report).keys()]).toContain('sands-through');
      }
    }),
    cases(60),
  );
});

/** What is judged of all pockets together: more of them can only help the mix. */
const OF_THE_WHOLE: readonly string[] = ['batch-too-small', 'mix-too-small', 'pour-hurried'];

test('a mix that is too small for one part alone may be enough for two', () => {
  const bar = (half: number): number[] => [-4, -half, 4, -half, 4, half, -4, half];
  const input = {
    bit: ['vee:60deg:1/2in'],
    depth: '2mm',
    wood: 'poplar',
    grain: '30deg',
    seal: 'none',
    level: '0.3mm',
    boards: 10,
  };
  const alone = codes(vetted([bar(0.15)], input));
  const together = codes(vetted([bar(0.15), shifted(bar(1.06), [120, 7])], input));
  expect(alone.get('mix-too-small')).toBe(1);
  expect(together.get('mix-too-small') ?? -1).toBeLessThan(1);
  expect(together.get('sands-through') ?? -1).toBeGreaterThanOrEqual(alone.get('sands-through') ?? -1);
});

test('company never helps: a part keeps its stops and cautions beside another', () => {
  fc.assert(
    fc.property(part, part, job, (ring, other, input) => {
      const alone = codes(vetted([ring], input));
      const together = codes(vetted([ring, shifted(other, [120, 7])], input));
      for (const [code, gravity] of alone) {
        if (gravity > 0 && !OF_THE_WHOLE.includes(code)) {
          expect(together.get(code) ?? -1, code).toBeGreaterThanOrEqual(gravity);
        }
      }
    }),
    cases(60),
  );
});

test('a thinner board never makes the verdict milder', () => {
  fc.assert(
    fc.property(part, job, fc.constantFrom(18, 12, 8, 6), (ring, { wood, grain: _, ...rest }, mm) => {
      const rings = [ring];
      const on = (thick: number): Report =>
        vetted(rings, { ...rest, board: `plain 300x180x${thick}mm ${String(wood)}` });
      expect(GRAVITY[on(mm).verdict]).toBeGreaterThanOrEqual(GRAVITY[on(25).verdict]);
    }),
    cases(40),
  );
});
