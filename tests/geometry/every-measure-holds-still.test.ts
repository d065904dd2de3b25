import { medialAxis } from '@pourproof/geometry';
import { type CleanRegion, scaling, transformRings } from '@pourproof/plane';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyPolygon, between, letters, share } from '../arbitraries.ts';
import { EXPORTS, NO_REGION } from '../support/every-export.ts';
import { FIGURES, type Figures, type Measured, NO_FIGURE, OWN_LENGTHS } from '../support/figures.ts';
import { cases } from '../support/lane.ts';
import { cleanFrom, regular } from '../support/shapes/clean-from.ts';
import { lettered } from '../support/shapes/lettered.ts';
import {
  expectSame,
  type Move,
  movedAzimuth,
  movedRegion,
  moves,
  symmetric,
  touches,
} from '../support/shapes/moved.ts';

test('of every export that takes a region a figure is asked, or it is said why none is', () => {
  for (const [name, exports] of Object.entries(EXPORTS)) {
    const known = [...Object.keys(FIGURES[name]), ...Object.keys(NO_FIGURE[name]), ...NO_REGION[name]];
    expect(known.toSorted(), `exports of ${name}`).toEqual(Object.keys(exports).toSorted());
  }
});

/** Sizes of cutters and cuts as shares of the widest clearance, the fibre, and the unit that it is drawn in, in mm. */
const settings = fc.record({
  radius: between(0.05, 1.1),
  depth: between(0.1, 3),
  grainRad: between(-1.5, 1.5),
  at: fc.tuple(share, share),
  scale: fc.constantFrom(1, 25.4, 1 / 25.4, 1000, 0.01),
});

type Settings = typeof settings extends fc.Arbitrary<infer T> ? T : never;

function measured(region: CleanRegion, { radius, depth, grainRad, at }: Settings): Measured {
  const axis = medialAxis(region);
  const widest = axis.nodeR.reduce((a, b) => Math.max(a, b), 0);
  const [x, y] = [region.coords[0] + widest * (at[0] - 0.5), region.coords[1] + widest * (at[1] - 0.5)];
  return {
    region,
    axis,
    other: cleanFrom([regular(7, 1.3 * widest, x, y)]),
    radiusMm: radius * widest,
    depthMm: depth * widest,
    toleranceMm: widest / 500,
    grainRad,
    scale: 1,
  };
}

/** The same drawn elsewhere and larger. */
function drawnAnew(of: Measured, move: Move, scale: number): Measured {
  const anew = (region: CleanRegion): CleanRegion =>
    transformRings(scaling(scale), movedRegion(region, move));
  const region = anew(of.region);
  return {
    region,
    axis: medialAxis(region),
    other: anew(of.other),
    radiusMm: of.radiusMm * scale,
    depthMm: of.depthMm * scale,
    toleranceMm: of.toleranceMm * scale,
    grainRad: movedAzimuth(of.grainRad, move),
    scale,
  };
}

function expectSameFigures(got: Figures, want: Figures, scale: number, what: string): void {
  for (const power of [0, 1, 2, 3] as const) {
    expectSame(
      divided(got[`power${power}`] ?? [], scale ** power),
      want[`power${power}`] ?? [],
      `${what}.${power}`,
    );
    for (const [k, [value, bound]] of (want.near?.[power] ?? []).entries()) {
      const [there, boundThere] = (got.near?.[power]?.[k] ?? []).map((v) => v / scale ** power);
      const slack = bound + boundThere + 1e-6 * (1 + Math.abs(value));
      expect(Math.abs(there - value), `${what}: ${there} for ${value}`).toBeLessThanOrEqual(slack);
    }
  }
}

type Values = number | readonly Values[];

function divided(values: Values, by: number): Values {
  return typeof values === 'number' ? values / by : values.map((each) => divided(each, by));
}

function expectStill(region: CleanRegion, move: Move, some: Settings): void {
  const here = measured(region, some);
  const there = drawnAnew(here, move, some.scale);
  for (const [name, figures] of Object.entries(FIGURES)) {
    for (const [key, figure] of Object.entries(figures)) {
      if (some.scale !== 1 && key in OWN_LENGTHS) {
        continue;
      }
      expectSameFigures(figure(there), figure(here), some.scale, `${name}.${key}`);
    }
  }
}

test('no figure of symmetric shapes hangs on how they are turned, mirrored, subdivided, begun or in what unit they are drawn', () => {
  fc.assert(
    fc.property(symmetric, moves, settings, (ring, move, some) => expectStill(cleanFrom([ring]), move, some)),
    cases(8),
  );
});

test('nor of any polygon', () => {
  fc.assert(
    fc.property(
      anyPolygon.filter((region) => !touches(region)),
      moves,
      settings,
      expectStill,
    ),
    cases(8),
  );
});

test('nor of letters', async () => {
  await fc.assert(
    fc.asyncProperty(letters, moves, settings, async ({ text, face, capHeightMm }, move, some) => {
      expectStill(await lettered(text, face, capHeightMm, 0.01), move, some);
    }),
    cases(2),
  );
});
