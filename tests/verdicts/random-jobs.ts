import { type JobInput, settleJob } from '@pourproof/job';
import type { Point } from '@pourproof/plane';
import { judgeDrawing, type Report } from '@pourproof/proof';
import fc from 'fast-check';
import { between } from '../arbitraries.ts';
import { drawingOf } from '../support/drawing-of.ts';

/** Verdicts by how grave they are. */
export const GRAVITY: Readonly<Record<Report['verdict'], number>> = { clear: 0, caution: 1, stop: 2 };

/** Outlines of one separate part, round the origin, some 10 to 30 mm across: dots, bars, squares, stars, triangles, hairlines. */
export const part: fc.Arbitrary<number[]> = fc.oneof(
  fc
    .tuple(between(0.3, 20), fc.constantFrom(3, 4, 5, 64))
    .map(([radius, corners]) => regular(radius, corners)),
  fc
    .tuple(between(8, 40), between(0.15, 8))
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

/** Jobs of common woods, seals and bits. */
export const job: fc.Arbitrary<JobInput> = fc.record({
  bit: fc.constantFrom(
    ['flat:1mm'],
    ['flat:3mm'],
    ['ball:2mm'],
    ['vee:60deg:1/2in'],
    ['vee:20deg:6mm'],
    ['taper:0.4mm:5deg:1/4in'],
  ),
  depth: fc.constantFrom('2mm', '3mm', '4mm'),
  wood: fc.constantFrom('poplar', 'maple', 'walnut', 'red-oak'),
  grain: fc.constantFrom('0deg', '30deg', '90deg'),
  seal: fc.constantFrom('none', 'shellac', 'epoxy'),
  level: fc.constantFrom('0.3mm', '0.5mm', '1mm'),
  colourant: fc.constantFrom('pigment', 'dye'),
  boards: fc.constant(10),
});

/** The report on a drawing of rings, its ways out not tried: they change neither verdict nor codes. */
export const vetted = (rings: readonly (readonly number[])[], input: JobInput): Report =>
  judgeDrawing(drawingOf(rings), 'law', settleJob(input)).report;

/** A ring moved. */
export const shifted = (ring: readonly number[], [x, y]: Point): number[] =>
  ring.map((value, k) => value + (k % 2 === 0 ? x : y));

/** Gravest finding of each code. */
export const codes = ({ findings }: Report): ReadonlyMap<string, number> =>
  new Map(findings.map(({ code, severity }) => [code, ['note', 'caution', 'stop'].indexOf(severity)]));
