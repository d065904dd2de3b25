import type { Report } from '@pourproof/proof';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../arbitraries.ts';
import { cases } from '../support/lane.ts';
import {
  circle,
  DEPTH_MM,
  expectWithin,
  ROUNDING,
  reportOn,
  sized,
  type Truth,
  tolerance,
} from '../support/within-bounds.ts';

/** What a flat bit makes of a shape that it cuts whole. */
const cutWhole = (areaMm2: number, wallLengthMm: number): Truth => ({
  areaMm2,
  leftStandingMm2: 0,
  volumeMm3: areaMm2 * DEPTH_MM,
  floorAreaMm2: areaMm2,
  wallAreaMm2: wallLengthMm * DEPTH_MM,
  wallLengthMm,
  maxDepthMm: DEPTH_MM,
  lengthNarrowerThanBitMm: 0,
});

/** A stroke along an arc with round ends: its middle has radius `middle` and runs over `rad`. */
function arcStroke(middle: number, width: number, rad: number): string {
  const [outer, inner, end] = [middle + width / 2, middle - width / 2, width / 2];
  const at = (r: number, turn: number): string => `${r * Math.cos(turn)} ${r * Math.sin(turn)}`;
  const isLarge = Number(rad > Math.PI);
  return `M${at(outer, 0)}A${outer} ${outer} 0 ${isLarge} 1 ${at(outer, rad)}A${end} ${end} 0 0 1 ${at(inner, rad)}A${inner} ${inner} 0 ${isLarge} 0 ${at(inner, 0)}A${end} ${end} 0 0 1 ${at(outer, 0)}z`;
}

const strokes = fc.record({
  middle: sized(5, 60),
  width: sized(0.6, 4),
  rad: between(0.4, 5),
  toleranceMm: tolerance,
  turnDeg: between(0, 360),
});

test('rings, strokes and dots as wide as the bit are cut whole, within the bounds and without a stop', () => {
  fc.assert(
    fc.property(strokes, ({ middle, width, rad, ...rest }) => {
      const bit = `flat:${width}mm`;
      const shapes: readonly (readonly [string, Truth])[] = [
        [
          circle(middle + width / 2) + circle(middle - width / 2),
          cutWhole(2 * Math.PI * middle * width, 4 * Math.PI * middle),
        ],
        [
          arcStroke(middle, width, rad),
          cutWhole(middle * rad * width + (Math.PI * width ** 2) / 4, 2 * middle * rad + Math.PI * width),
        ],
        [circle(width / 2), cutWhole((Math.PI * width ** 2) / 4, Math.PI * width)],
      ];
      for (const [path, truth] of shapes) {
        const report = reportOn({ path, bit, ...rest });
        expectWithin(report, truth, { path, bit, ...rest });
        expect(report.findings.map(({ code }) => code)).not.toContain('bit-cannot-enter');
        // a dot, or a stroke, of another width tells no more than its own area
        expect(report.cut.onlyAsDrawnMm2 ?? 0).toBeLessThanOrEqual(report.cut.areaMm2);
      }
    }),
    cases(6),
  );
});

test('strokes and dots that are clearly wider or narrower than the bit are cut whole or not at all', () => {
  fc.assert(
    fc.property(strokes, fc.boolean(), between(2.1, 20), ({ middle, width, ...rest }, isWider, times) => {
      const off = times * rest.toleranceMm * (isWider ? 1 : -1);
      const report = reportOn({
        path: circle(middle + width / 2 + off / 2) + circle(middle - width / 2 - off / 2),
        bit: `flat:${width}mm`,
        ...rest,
      });
      const truth = isWider
        ? cutWhole(2 * Math.PI * middle * (width + off), 4 * Math.PI * middle)
        : { ...cutWhole(0, 0), maxDepthMm: 0, lengthNarrowerThanBitMm: 2 * Math.PI * middle };
      const { onlyAsDrawnMm2 = 0 } = report.cut;
      // what may have been drawn narrower is told beside the bounds
      expectWithin(
        report,
        { ...truth, leftStandingMm2: 2 * Math.PI * middle * (width + off) - truth.areaMm2 },
        { middle, width, off, ...rest },
      );
      expect(onlyAsDrawnMm2).toBeLessThanOrEqual(report.cut.areaMm2);
    }),
    cases(8),
  );
});

test('a ring that may be drawn narrower than the bit is within the bounds and what they leave out', () => {
  fc.assert(
    fc.property(strokes, between(-2, 2), ({ middle, width, ...rest }, times) => {
      const off = times * rest.toleranceMm;
      const { cut } = reportOn({
        path: circle(middle + width / 2 + off / 2) + circle(middle - width / 2 - off / 2),
        bit: `flat:${width}mm`,
        ...rest,
      });
      const areaMm2 = off < 0 ? 0 : 2 * Math.PI * middle * (width + off);
      const { onlyAsDrawnMm2 = 0, errorBound } = cut;
      const short = cut.areaMm2 - areaMm2;
      expect(short, JSON.stringify({ middle, width, off, ...rest })).toBeLessThanOrEqual(
        errorBound.areaMm2 + onlyAsDrawnMm2 + ROUNDING,
      );
      expect(-short).toBeLessThanOrEqual(errorBound.areaMm2 + ROUNDING);
    }),
    cases(8),
  );
});

/** Area and outline of the lens that two discs of radius r share whose centres are d apart. */
function lens(r: number, d: number): readonly [number, number] {
  const half = Math.acos(d / (2 * r));
  return [2 * r * r * half - (d / 2) * Math.sqrt(4 * r * r - d * d), 4 * r * half];
}

test('what a bit leaves in the tips of a lens, and beside the straight side of half a disc, is within the bounds', () => {
  fc.assert(
    fc.property(
      fc.record({
        r: sized(4, 60),
        share: between(0.2, 1.6),
        bitShare: between(0.1, 0.8),
        toleranceMm: tolerance,
        turnDeg: between(0, 360),
      }),
      ({ r, share, bitShare, ...rest }) => {
        const d = share * r;
        const tip = Math.sqrt(r * r - (d * d) / 4);
        const b = (bitShare * (2 * r - d)) / 2;
        // a convex shape less a disc all round, plus the same disc (Steiner)
        const [innerMm2, innerMm] = lens(r - b, d);
        const lensCut = cutWhole(innerMm2 + b * innerMm + Math.PI * b * b, innerMm + 2 * Math.PI * b);
        const lensReport = reportOn({
          path: `M0 ${-tip}A${r} ${r} 0 0 1 0 ${tip}A${r} ${r} 0 0 1 0 ${-tip}z`,
          bit: `flat:${2 * b}mm`,
          ...rest,
        });
        const { lengthNarrowerThanBitMm: _, ...figures } = lensCut;
        expectWithin(
          lensReport,
          { ...figures, leftStandingMm2: lens(r, d)[0] - figures.areaMm2 },
          { r, d, b, ...rest },
        );

        const c = (bitShare * r) / 2;
        const half = Math.acos(c / (r - c));
        const segmentMm2 = (r - c) ** 2 * half - c * (r - c) * Math.sin(half);
        const segmentMm = 2 * (r - c) * (half + Math.sin(half));
        const discCut = cutWhole(segmentMm2 + c * segmentMm + Math.PI * c * c, segmentMm + 2 * Math.PI * c);
        const discReport = reportOn({
          path: `M${-r} 0A${r} ${r} 0 0 1 ${r} 0z`,
          bit: `flat:${2 * c}mm`,
          ...rest,
        });
        expectWithin(
          discReport,
          { ...discCut, leftStandingMm2: (Math.PI * r * r) / 2 - discCut.areaMm2 },
          { half: r, c, ...rest },
        );
      },
    ),
    cases(8),
  );
});

/** A closed curve of cubics through points around a centre, tangents along the chord of the neighbours. */
const closedCurve = fc
  .tuple(fc.array(between(3, 14), { minLength: 3, maxLength: 7 }), between(0.1, 0.4))
  .map(([radii, ease]) => {
    const n = radii.length;
    const points = radii.map((r, k) => {
      const turn = (2 * Math.PI * k) / n;
      return [r * Math.cos(turn), r * Math.sin(turn)] as const;
    });
    const at = (k: number): readonly [number, number] => points[(k + n) % n] ?? [0, 0];
    const parts = points.map((_, k) => {
      const [a, b] = [at(k), at(k + 1)];
      const [before, after] = [at(k - 1), at(k + 2)];
      const handle = (
        p: readonly [number, number],
        from: readonly [number, number],
        to: readonly [number, number],
        way: number,
      ): string => `${p[0] + way * ease * (to[0] - from[0])} ${p[1] + way * ease * (to[1] - from[1])}`;
      return `C${handle(a, before, b, 1)} ${handle(b, a, after, -1)} ${b[0]} ${b[1]}`;
    });
    return `M${at(0).join(' ')}${parts.join('')}z`;
  });

/** So fine that its own bounds are small beside those of the coarse ones. */
const FINE_MM = 0.0008;

test('curves of cubics are within the bounds of one another at a coarse and a fine tolerance, with any cutter', () => {
  const bits = fc.oneof(
    sized(0.8, 6).map((mm) => `flat:${mm}mm`),
    sized(2, 6).map((mm) => `ball:${mm}mm`),
    between(30, 100).map((deg) => `vee:${Math.round(deg)}deg:30mm`),
    fc
      .tuple(between(30, 100), between(0.1, 0.8))
      .map(([deg, tip]) => `vee:${Math.round(deg)}deg:30mm:tip ${tip.toFixed(2)}mm`),
  );
  fc.assert(
    fc.property(closedCurve, bits, tolerance, between(0, 360), (path, bit, toleranceMm, turnDeg) => {
      const fine = reportOn({ path, bit, toleranceMm: FINE_MM, turnDeg });
      const coarse = reportOn({ path, bit, toleranceMm, turnDeg });
      const figures = ({ cut, strokes: { lengthNarrowerThanBitMm } }: Report): Record<string, number> => ({
        ...(cut as unknown as Record<string, number>),
        lengthNarrowerThanBitMm,
      });
      const [a, b] = [figures(fine), figures(coarse)];
      for (const [key, bound] of Object.entries(coarse.cut.errorBound)) {
        const within = bound + (fine.cut.errorBound as Record<string, number>)[key]!;
        const off = Math.abs((a[key] ?? 0) - (b[key] ?? 0));
        const message = `${key} ${b[key]}, fine ${a[key]}, bounds ${within}: ${path} ${bit} ${toleranceMm}`;
        const hangs = (coarse.cut.onlyAsDrawnMm2 ?? 0) + (fine.cut.onlyAsDrawnMm2 ?? 0);
        expect(hangs > 0 ? 0 : off - within, message).toBeLessThan(ROUNDING * Math.max(1, b[key] ?? 0));
      }
    }),
    cases(8),
  );
});

test('straight walls state no error, and a slot a micrometre too narrow stays a stop beside rings as wide as the bit', () => {
  const slot = (width: number): string => `M-30 20h40v${width}h-40z`;
  const alone = reportOn({ path: slot(0.999), bit: 'flat:1mm', toleranceMm: 0.005, turnDeg: 0 });
  expect(alone.cut.areaMm2).toBe(0);
  expect(Math.max(...Object.values(alone.cut.errorBound))).toBeLessThan(1e-4);
  const ring = circle(40) + circle(39);
  for (const toleranceMm of [0.001, 0.005, 0.02, 0.05]) {
    const both = reportOn({ path: ring + slot(0.999), bit: 'flat:1mm', toleranceMm, turnDeg: 0 });
    const stops = both.findings.filter(({ code }) => code === 'bit-cannot-enter');
    expect(stops.map(({ where }) => where.length)).toEqual([1]);
    expectWithin(
      both,
      { areaMm2: 79 * Math.PI, leftStandingMm2: 40 * 0.999, lengthNarrowerThanBitMm: 39.001 },
      toleranceMm,
    );
    const fitting = reportOn({ path: ring + slot(1), bit: 'flat:1mm', toleranceMm, turnDeg: 0 });
    expect(fitting.findings.map(({ code }) => code)).not.toContain('bit-cannot-enter');
  }
});

test('what no bit enters adds nothing to the bounds of corners beside rings as wide as the bit', () => {
  const bounds = (path: string): Report['cut']['errorBound'] =>
    reportOn({ path, bit: 'flat:1mm', toleranceMm: 0.05, turnDeg: 0 }).cut.errorBound;
  const ring = circle(10) + circle(9);
  const withCorners = `${ring}M-4 -4h8v8h-8z`;
  const alone = bounds(withCorners);
  expect(alone.wallLengthMm).toBeGreaterThan(1.1 * bounds(ring).wallLengthMm);
  expect(bounds(`${withCorners}M-30 40h40v0.4h-40z`).wallLengthMm).toBeCloseTo(alone.wallLengthMm, 6);
});
