import { settleJob } from '@pourproof/job';
import { type Finding, type FindingPlace, judgeDrawing, PLACE_KINDS } from '@pourproof/proof';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../../arbitraries.ts';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { cases } from '../../support/lane.ts';

const OF_WOOD: readonly string[] = ['wood', 'island', 'rim'];

/** Thin bars of many sizes beside one another: lost, tight and narrow ones, and thin wood between them. */
const bars: fc.Arbitrary<number[][]> = fc
  .array(fc.tuple(between(4, 50), between(0.2, 4), between(0.4, 6)), { minLength: 2, maxLength: 8 })
  .map((sizes) => {
    let y = 0;
    return sizes.map(([length, width, gap]) => {
      const bar = rectangle(0, y, length, width);
      y += width + gap;
      return bar;
    });
  });

const findingsOf = (rings: readonly (readonly number[])[], bit: string): readonly Finding[] =>
  judgeDrawing(
    drawingOf(rings),
    'places',
    settleJob({ bit: [bit], depth: '2mm', wood: 'poplar', grain: '30deg', seal: 'none', level: '1mm' }),
  ).report.findings;

test('the places of every finding say what they are, the largest first', () => {
  fc.assert(
    fc.property(bars, fc.constantFrom('flat:1mm', 'flat:2mm', 'vee:60deg:1/2in'), (rings, bit) => {
      for (const { code, where } of findingsOf(rings, bit)) {
        for (const [k, place] of where.entries()) {
          expect(PLACE_KINDS, code).toContain(place.what);
          const before = where[k - 1];
          if (before !== undefined) {
            expect(isInOrder(before, place), `${code}, place ${k}`).toBe(true);
          }
        }
      }
    }),
    cases(40),
  );
});

/** A tenth of a micrometre: what rounding moves. */
const TOL = 1e-4;

function isInOrder(a: FindingPlace, b: FindingPlace): boolean {
  const sizes = (place: FindingPlace): number[] => [
    place.areaMm2 ?? 0,
    place.lengthMm ?? 0,
    (OF_WOOD.includes(place.what) ? -1 : 1) * (place.widthMm ?? 0),
    -place.atMm[1],
    -place.atMm[0],
  ];
  const [sa, sb] = [sizes(a), sizes(b)];
  const k = sa.findIndex((size, i) => Math.abs(size - sb[i]!) > TOL);
  return k < 0 || sa[k]! > sb[k]!;
}

test('of two bars lost whole, the longer is told first, whichever was drawn first', () => {
  const [long, short] = [rectangle(0, 0, 44, 1.5), rectangle(0, 20, 20, 1.5)];
  const lost = (rings: number[][]) =>
    findingsOf(rings, 'flat:2mm').find(({ code }) => code === 'bit-cannot-enter')?.where ?? [];
  expect(lost([short, long]).map(({ atMm: [, y] }) => Math.round(y))).toEqual([1, 21]);
  expect(lost([short, long])).toEqual(lost([long, short]));
});
