import { type JobInput, settleJob } from '@pourproof/job';
import type { Point } from '@pourproof/plane';
import { type Report, vetDrawing } from '@pourproof/proof';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../arbitraries.ts';
import { drawingOf } from '../support/drawing-of.ts';
import { cases } from '../support/lane.ts';

const GRAVITY: Readonly<Record<Report['verdict'], number>> = { clear: 0, caution: 1, stop: 2 };

/** Outlines of one separate part, round the origin, some 10 to 30 mm across: dots, bars, squares, stars, triangles, hairlines. */
const part: fc.Arbitrary<number[]> = fc.oneof(
  fc
    .tuple(between(0.6, 20), fc.constantFrom(3, 4, 5, 64))
    .map(([radius, corners]) => regular(radius, corners)),
  fc
    .tuple(between(8, 40), between(0.3, 8))
    .map(([length, width]) => [
      -length / 2,
      -width / 2,
      length / 2,
      -width / 2,
      length / 2,
      width / 2,
      -length / 2,
      width / 2,
    ]),
  fc
    .tuple(between(6, 15), between(0.2, 0.6), fc.integer({ min: 4, max: 7 }))
    .map(([radius, inner, tips]) =>
      Array.from({ length: 2 * tips }, (_, k) => (k % 2 === 0 ? radius : radius * inner)).flatMap((r, k) => [
        r * Math.cos((Math.PI * k) / tips),
        r * Math.sin((Math.PI * k) / tips),
      ]),
    ),
);

function regular(radius: number, corners: number): number[] {
  return Array.from({ length: corners }, (_, k) => (2 * Math.PI * k) / corners).flatMap((angle) => [
    radius * Math.cos(angle),
    radius * Math.sin(angle),
  ]);
}

const job: fc.Arbitrary<JobInput> = fc.record({
  bit: fc.constantFrom(['flat:1mm'], ['flat:3mm'], ['ball:2mm'], ['vee:60deg:1/2in']),
  depth: fc.constantFrom('2mm', '3mm', '4mm'),
  wood: fc.constantFrom('poplar', 'maple', 'walnut', 'red-oak'),
  grain: fc.constantFrom('0deg', '30deg', '90deg'),
  seal: fc.constantFrom('none', 'shellac', 'epoxy'),
  level: fc.constantFrom('0.3mm', '0.5mm', '1mm'),
  boards: fc.constant(10),
});

const vetted = (rings: readonly (readonly number[])[], input: JobInput): Report =>
  vetDrawing(drawingOf(rings), 'law', settleJob(input)).report;

const shifted = (ring: readonly number[], [x, y]: Point): number[] =>
  ring.map((value, k) => value + (k % 2 === 0 ? x : y));

/** Gravest finding of each code. */
const codes = ({ findings }: Report): ReadonlyMap<string, number> =>
  new Map(findings.map(({ code, severity }) => [code, ['note', 'caution', 'stop'].indexOf(severity)]));

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
const OF_THE_WHOLE: readonly string[] = ['batch-too-small', 'pour-hurried'];

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
