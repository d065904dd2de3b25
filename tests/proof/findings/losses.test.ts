import { settleJob } from '@pourproof/job';
import { type Finding, type FindingPlace, judgeDrawing } from '@pourproof/proof';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { between } from '../../arbitraries.ts';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { cases } from '../../support/lane.ts';

const LOSSES: readonly string[] = ['bit-cannot-enter', 'cut-ends-short'];
const GRAVITY = ['note', 'caution', 'stop'] as const;

/** What the findings of losses say of outlines under a flat bit. */
function lossesOf(rings: readonly (readonly number[])[], bitMm: number): readonly Finding[] {
  const job = settleJob({ bit: [`flat:${bitMm}mm`], depth: '2mm', wood: 'maple', seal: 'epoxy' });
  return judgeDrawing(drawingOf(rings), 'losses', job).report.findings.filter(({ code }) =>
    LOSSES.includes(code),
  );
}

const find = (rings: readonly (readonly number[])[], bitMm: number, code: string): Finding | undefined =>
  lossesOf(rings, bitMm).find((finding) => finding.code === code);

const worstOf = (findings: readonly Finding[]): number =>
  Math.max(-1, ...findings.map(({ severity }) => GRAVITY.indexOf(severity)));

const regular = (radius: number, inner: number, tips: number): number[] =>
  Array.from({ length: 2 * tips }, (_, k) => [
    k % 2 === 0 ? radius : radius * inner,
    (Math.PI * k) / tips,
  ]).flatMap(([r, angle]) => [r! * Math.cos(angle!), r! * Math.sin(angle!)]);

/** Two pockets with a waist between them. */
const dumbbell = (size: number, neck: number, length: number): number[] => {
  const [h, n, l] = [size / 2, neck / 2, length / 2];
  return [
    -l - size,
    -h,
    -l,
    -h,
    -l,
    -n,
    l,
    -n,
    l,
    -h,
    l + size,
    -h,
    l + size,
    h,
    l,
    h,
    l,
    n,
    -l,
    n,
    -l,
    h,
    -l - size,
    h,
  ];
};

/** Outlines with tips, corners, waists and strokes of every size. */
const outline: fc.Arbitrary<number[]> = fc.oneof(
  fc
    .tuple(between(3, 20), between(0.15, 0.8), fc.integer({ min: 3, max: 7 }))
    .map((args) => regular(...args)),
  fc
    .tuple(between(5, 50), between(0.3, 12), between(0, 1))
    .map(([length, wide, narrow]) => [
      0,
      -wide / 2,
      length,
      (-wide / 2) * narrow,
      length,
      (wide / 2) * narrow,
      0,
      wide / 2,
    ]),
  fc.tuple(between(4, 12), between(0.4, 3.9), between(0.2, 12)).map((args) => dumbbell(...args)),
);

const mapped = (ring: readonly number[], map: (x: number, y: number) => [number, number]): number[] =>
  ring.flatMap((_, i) => (i % 2 === 0 ? map(ring[i]!, ring[i + 1]!) : []));

const sizes = ({ lengthMm, widthMm }: FindingPlace): (number | undefined)[] => [lengthMm, widthMm];

describe('what is lost', () => {
  test('a stroke is told by its own length and width', () => {
    const bar = find([rectangle(0, 0, 44, 1.5)], 2, 'bit-cannot-enter');
    expect(bar).toMatchObject({ severity: 'stop', where: [{ what: 'stroke' }] });
    expect(bar?.where[0]?.lengthMm).toBeCloseTo(44, 6);
    expect(bar?.where[0]?.widthMm).toBeCloseTo(1.5, 6);
    expect(bar?.measured.value).toBeCloseTo(1.5, 6);
  });

  test('a stroke that is lost and one that is tight are as long as they are drawn', () => {
    const job = settleJob({ bit: ['flat:2mm'], depth: '2mm', wood: 'maple', seal: 'epoxy' });
    for (const [width, code] of [
      [1.5, 'bit-cannot-enter'],
      [2, 'stroke-near-bit-width'],
      [2.05, 'stroke-near-bit-width'],
    ] as const) {
      const { findings } = judgeDrawing(drawingOf([rectangle(3, 4, 44, width)]), 'a bar', job).report;
      const [place] = findings.find((finding) => finding.code === code)?.where ?? [];
      expect(place?.lengthMm).toBeCloseTo(44, 6);
      expect(place?.widthMm).toBeCloseTo(width, 6);
    }
  });

  test('a dot and a ring drawn as wide as the bit are cut, though they are flattened', () => {
    const circle = (radius: number, sides: number): number[] =>
      Array.from({ length: sides }, (_, k) => (2 * Math.PI * k) / sides).flatMap((angle) => [
        radius * Math.cos(angle),
        radius * Math.sin(angle),
      ]);
    // 3 µm between chord and arc
    expect(lossesOf([circle(1, 40)], 2)).toEqual([]);
    expect(lossesOf([circle(0.98, 40)], 2)[0]?.code).toBe('bit-cannot-enter');
    // most of a ring, 2 mm wide
    const arc = (radius: number): [number, number][] =>
      Array.from({ length: 116 }, (_, k) => (Math.PI * k) / 62).map((angle) => [
        radius * Math.cos(angle),
        radius * Math.sin(angle),
      ]);
    expect(lossesOf([[...arc(10), ...arc(8).toReversed()].flat()], 2)).toEqual([]);
    expect(find([[...arc(10), ...arc(8.03).toReversed()].flat()], 2, 'bit-cannot-enter')).toBeDefined();
  });

  test.each([36, 30, 20])('a tip of %s° ends r(1/sin φ/2 − 1) short, a soft tip', (deg) => {
    const half = (deg * Math.PI) / 360;
    const wedge = [0, -40 * Math.tan(half), 40, 0, 0, 40 * Math.tan(half)];
    const finding = find([wedge], 2, 'cut-ends-short');
    expect(finding).toMatchObject({ severity: 'caution', where: [{ what: 'tip' }] });
    expect(finding?.measured.value).toBeCloseTo(1 / Math.sin(half) - 1, 6);
    // a finer bit leaves less of it: hardly seen
    expect(find([wedge], 0.4, 'cut-ends-short')?.severity ?? 'note').toBe('note');
  });

  test('a corner as every round bit leaves is silent, one that shows as round a caution', () => {
    expect(lossesOf([rectangle(0, 0, 40, 40)], 6)).toEqual([]);
    const round = find([rectangle(0, 0, 40, 40)], 12, 'cut-ends-short');
    expect(round?.severity).toBe('caution');
    expect(round?.where).toHaveLength(4);
    expect(round?.measured.value).toBeCloseTo(6 * (Math.SQRT2 - 1), 6);
  });

  test('a taper more than half of which stays wood is a stop', () => {
    // 2 mm fit over the first ninth of it only
    expect(find([[0, -1.125, 40, 0, 0, 1.125]], 2, 'cut-ends-short')?.severity).toBe('stop');
  });

  test('a waist that the bit does not pass is lost, however short', () => {
    const finding = find([dumbbell(10, 1.9, 3)], 2, 'bit-cannot-enter');
    expect(finding?.severity).toBe('stop');
    expect(finding?.measured.value).toBeCloseTo(1.9, 6);
    // so short that the bit all but meets itself from both sides
    expect(lossesOf([dumbbell(10, 1.9, 0.2)], 2)).toEqual([]);
    // closed over 0.5 − 2 (1 − √(1 − 0.5²)) mm, 0.23 mm: not seen as a gap, but as a waist that closes
    expect(find([dumbbell(10, 1, 0.5)], 2, 'cut-ends-short')).toMatchObject({
      severity: 'caution',
      where: [{ what: 'waist', lengthMm: 0.5, widthMm: 1 }],
    });
    expect(find([dumbbell(10, 1, 1)], 2, 'bit-cannot-enter')?.severity).toBe('stop');
  });

  test('a speck that is all there is stops, and is told', () => {
    expect(find([rectangle(0, 0, 0.05, 0.05)], 2, 'bit-cannot-enter')?.where).toHaveLength(1);
  });
});

test('scaling artwork and bit scales every length by as much', () => {
  fc.assert(
    fc.property(outline, between(0.8, 3), between(1, 4), (ring, bitMm, k) => {
      const larger = lossesOf([ring.map((value) => k * value)], k * bitMm);
      for (const { code, where, measured } of lossesOf([ring], bitMm)) {
        // what is told as a tip that is short may be seen to be lost once it is larger, so codes are not compared
        const places = larger.flatMap((finding) => finding.where);
        for (const place of where) {
          const same = places.filter(
            ({ atMm: [x, y] }) => Math.hypot(x - k * place.atMm[0], y - k * place.atMm[1]) < 0.001 * k,
          );
          expect(same.length, `${code} at ${place.atMm}`).toBeGreaterThan(0);
          expect(
            same.some((each) =>
              sizes(each).every((size, i) => {
                const was = sizes(place)[i];
                return was === undefined ? size === undefined : Math.abs(size! - k * was) < 1e-6 * k;
              }),
            ),
          ).toBe(true);
        }
        const there = larger.find((finding) => finding.code === code);
        if (there?.where.length === where.length && code === 'bit-cannot-enter') {
          expect(there.measured.value).toBeCloseTo(k * measured.value, 6);
        }
      }
    }),
    cases(80),
  );
});

test('turning and mirroring change neither grades nor sizes', () => {
  fc.assert(
    fc.property(
      outline,
      between(0.8, 3),
      between(0, 2 * Math.PI),
      fc.boolean(),
      (ring, bitMm, turn, isMirrored) => {
        const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
        const moved = mapped(ring, (x, y) => {
          const v = isMirrored ? -y : y;
          return [x * cos - v * sin, x * sin + v * cos];
        });
        const told = (findings: readonly Finding[]) =>
          findings.map(({ code, severity, measured, where }) => ({
            code,
            severity,
            measured: measured.value.toFixed(5),
            where: where.map((place) => sizes(place).map((size) => size?.toFixed(5))),
          }));
        expect(told(lossesOf([moved], bitMm))).toEqual(told(lossesOf([ring], bitMm)));
      },
    ),
    cases(80),
  );
});

test('a wider bit never gets a milder grade', () => {
  fc.assert(
    fc.property(outline, between(0.6, 3), between(1, 2), (ring, bitMm, factor) => {
      expect(worstOf(lossesOf([ring], bitMm * factor))).toBeGreaterThanOrEqual(
        worstOf(lossesOf([ring], bitMm)),
      );
    }),
    cases(120),
  );
});

test('company takes no loss away: each is told at its own place', () => {
  fc.assert(
    fc.property(outline, outline, between(0.8, 3), (ring, other, bitMm) => {
      const beside = mapped(other, (x, y) => [x + 150, y + 3]);
      const together = lossesOf([ring, beside], bitMm);
      for (const { code, where } of lossesOf([ring], bitMm)) {
        const there = together.find((finding) => finding.code === code);
        for (const { atMm, what } of where) {
          expect(there?.where.map((place) => [place.what, ...place.atMm])).toContainEqual([what, ...atMm]);
        }
      }
      expect(worstOf(together)).toBeGreaterThanOrEqual(worstOf(lossesOf([ring], bitMm)));
    }),
    cases(60),
  );
});
