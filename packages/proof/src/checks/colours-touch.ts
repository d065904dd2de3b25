import { booleans, resolveRegions } from '@pourproof/arrangement';
import { limits } from '@pourproof/materials';
import {
  type CleanRegion,
  type Point,
  packRings,
  type Region,
  ringArea,
  ringCoords,
  ringsBounds,
  signedArea,
} from '@pourproof/plane';
import { clipSegment } from '../board/clip-segment.ts';
import { nearRings } from '../board/near-rings.ts';
import { typedColour } from '../colours/drawn-colours.ts';
import type { Measured } from '../measured.ts';
import type { FindingPlace } from '../report/finding-schema.ts';
import { roundsApart } from '../rounds/rounds-apart.ts';
import type { Check } from './check.ts';
import { lengthOf, placeOfPath, placeOfRings } from './places.ts';

/** Overlaps smaller than this are rounding, mm². */
const MIN_MM2 = 0.01;
/** A stretch of contact shorter than this is rounding, mm. */
const MIN_CONTACT_MM = 0.01;

/** Pockets of different colours without wood between them: liquid colours run together. */
export const coloursTouch: Check = {
  code: 'colours-touch',
  run: (measured) => {
    const { drawing, colours: drawn, cutRegion, maxDepth } = measured;
    const colours = cutByColour(drawing.shapes, drawn, cutRegion);
    const meeting = colours.flatMap((one, k) =>
      colours.slice(k + 1).map((other) => ({ places: contactsOf(one.cut, other.cut), pair: [one, other] })),
    );
    const touching = meeting.filter(({ places }) => places.length > 0);
    if (touching.length === 0) {
      return null;
    }
    const widthMm = Math.max(
      limits.wallShortGrain.value,
      Math.ceil(limits.wallShortGrainToDepth.value * maxDepth * 100) / 100,
    );
    return {
      code: 'colours-touch',
      severity: 'stop',
      where: touching.flatMap(({ places }) => places),
      measured: { value: 0, quantity: 'width', unit: 'mm' },
      limit: { value: widthMm, quantity: 'width', unit: 'mm' },
      because: [...new Set([...limits.wallGone.because, ...limits.wallShortGrain.because])],
      fix: {
        options: [
          { do: 'part-by-wall', widthMm, clears: true },
          {
            do: 'pour-in-rounds',
            rounds: roundsOf(
              measured,
              touching.map(({ pair }) => pair),
            ),
            clears: true,
          },
        ],
      },
    };
  },
};

/** All colours in rounds in which none touch, by names that a job may give them. */
function roundsOf({ colours, site }: Measured, touching: readonly (readonly ColourCut[])[]): string[][] {
  const isTouching = (one: string, other: string): boolean =>
    touching.some((pair) => [one, other].every((name) => pair.some(({ colour }) => colour === name)));
  const names = colours.all.map(({ name }) => name);
  const all = (site.colours ?? colours).all.map(({ name }) => name);
  return roundsApart(names, isTouching).map((round) => round.map((name) => typedColour(name, all)));
}

interface ColourCut {
  readonly colour: string;
  readonly cut: CleanRegion;
}

/** The cut under each drawn colour, whichever covers the other; in an order that does not depend on the drawing's. */
function cutByColour(
  shapes: Measured['drawing']['shapes'],
  drawn: Measured['colours'],
  cut: CleanRegion,
): readonly ColourCut[] {
  const byColour = new Map<string, Region[]>();
  for (const shape of shapes) {
    const { name } = drawn.of(shape);
    byColour.set(name, [...(byColour.get(name) ?? []), shape.region]);
  }
  if (byColour.size < 2 || cut.ringEnds.length === 0) {
    return [];
  }
  return [...byColour]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([colour, regions]) => ({
      colour,
      cut: booleans(cut, resolveRegions(regions).region, 'intersect'),
    }))
    .filter((each) => signedArea(each.cut) >= MIN_MM2);
}

/** Where two cuts overlap, or lie within the thickness of no wall of each other. */
function contactsOf(one: CleanRegion, other: CleanRegion): readonly FindingPlace[] {
  const overlap = booleans(one, other, 'intersect');
  const shared = outerRings(overlap)
    .filter((ring) => ringArea(ring) >= MIN_MM2)
    .map((ring) =>
      placeOfRings([ring[0] ?? 0, ring[1] ?? 0], packRings([ring]), {
        what: 'area',
        areaMm2: ringArea(ring),
      }),
    );
  return [...shared, ...contactLines(one, other)];
}

function outerRings(region: CleanRegion): readonly Float64Array[] {
  return Array.from(region.ringEnds, (_, k) => ringCoords(region, k)).filter((ring) => ringArea(ring) > 0);
}

/** Stretches of the outline of one region beside which, within the thickness of no wall, the other lies. */
function contactLines(one: CleanRegion, other: CleanRegion): readonly FindingPlace[] {
  const reach = limits.wallGone.value;
  const places: FindingPlace[] = [];
  for (let k = 0; k < one.ringEnds.length; k++) {
    const ring = ringCoords(one, k);
    const [left, top, right, bottom] = ringsBounds(packRings([ring]));
    const near = nearRings(other, [left - reach, top - reach, right + reach, bottom + reach]);
    if (near.ringEnds.length > 0) {
      places.push(
        ...contactRuns(ring, near, reach).map((run) =>
          placeOfPath([run[0] ?? 0, run[1] ?? 0], run, { what: 'contact', lengthMm: lengthOf(run) }),
        ),
      );
    }
  }
  return places;
}

/** Runs of a ring whose edges, moved outwards by the reach, lie in a region. */
function contactRuns(ring: Float64Array, near: CleanRegion, reach: number): readonly number[][] {
  const runs: number[][] = [];
  const corner = (i: number): Point => [
    ring[i % ring.length] as number,
    ring[(i + 1) % ring.length] as number,
  ];
  for (let i = 0; i < ring.length; i += 2) {
    const [[ax, ay], [bx, by]] = [corner(i), corner(i + 2)];
    const length = Math.hypot(bx - ax, by - ay);
    // the inside of a clean ring is on the side of (−ey, ex)
    const [nx, ny] = [((by - ay) / length) * reach, (-(bx - ax) / length) * reach];
    for (const [from, to] of clipSegment(near, [ax + nx, ay + ny, bx + nx, by + ny], [nx, ny])) {
      const start: Point = [ax + from * (bx - ax), ay + from * (by - ay)];
      const end: Point = [ax + to * (bx - ax), ay + to * (by - ay)];
      const last = runs.at(-1);
      if (from === 0 && last !== undefined && last.at(-2) === start[0] && last.at(-1) === start[1]) {
        last.push(...end);
      } else {
        runs.push([...start, ...end]);
      }
    }
  }
  return closedUp(runs).filter((run) => lengthOf(run) >= MIN_CONTACT_MM);
}

/** A run over the start of the ring is one run, wherever the ring starts. */
function closedUp(runs: readonly number[][]): readonly number[][] {
  const [first, last] = [runs[0], runs.at(-1)];
  if (first === undefined || last === undefined || first === last) {
    return runs;
  }
  const isOne = last.at(-2) === first[0] && last.at(-1) === first[1];
  return isOne ? [[...last, ...first.slice(2)], ...runs.slice(1, -1)] : runs;
}
