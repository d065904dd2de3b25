import { fibreVector } from '@pourproof/geometry';
import type { Board, Hollow } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import {
  applyTransform,
  byGrain,
  type CleanRegion,
  type Point,
  radians,
  ringArea,
  ringCoords,
} from '@pourproof/plane';
import { blockIndex } from './block-index.ts';
import { clipSegment } from './clip-segment.ts';
import type { PlacedBoard } from './place-board.ts';

/** Wood between a pocket and the edge of the board, or a hole or groove in it, that is thinner than what shops leave. Lengths in mm, places in the artwork's frame. */
export interface Rim {
  readonly beside: 'edge' | 'obstacle';
  readonly widthMm: number;
  /** What shops leave there. */
  readonly leastMm: number;
  /** What they leave by habit, however shallow the pocket is; 0 beside a hole. */
  readonly habitMm: number;
  /** Below this it breaks like a wall between pockets. */
  readonly breaksBelowMm: number;
  /** Whether the fibres run through it rather than along it. */
  readonly isEndGrain: boolean;
  /** Its ends: on the pocket, and on the edge. */
  readonly from: Point;
  readonly to: Point;
}

/** Rims at least this near to a limit are at it, mm: rounding. */
const ROUNDING_MM = 1e-6;
/** Fibres that meet an edge at no less than this make it end grain: half of a right angle, as for thin walls. */
const END_GRAIN_COS = Math.SQRT1_2;

/** Depth of the cut along its outline. */
export interface DepthAt {
  /** The greatest anywhere, mm. */
  readonly mostMm: number;
  /** The greatest beside an edge of the outline, mm. */
  readonly along: (from: Point, to: Point) => number;
}

/** What a board's rims are judged by. */
export interface RimBoard {
  readonly board: Board;
  readonly obstacles: readonly Hollow[];
  readonly placed: PlacedBoard;
}

/**
 * The thin rims of a cut: for every pocket the thinnest, relative to what shops leave or to their habit, at each edge of the board and each hole or groove. A rim is
 * judged by the depth of the cut beside it.
 *
 * Exact for the flattened outline: an edge is straight, so that the thinnest place is a corner of the outline or a point where it enters another block.
 */
export function thinRims(cut: CleanRegion, depthAt: DepthAt, on: RimBoard): readonly Rim[] {
  const fibresOf = fibresAlong(on.placed);
  const rims: Rim[] = [];
  for (let k = 0; k < cut.ringEnds.length; k++) {
    const ring = ringCoords(cut, k);
    const gapsOf = gapsOfRing(ringArea(ring) > 0, on);
    const worst = new Map<string, Rim>();
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const from: Point = [ring[i] as number, ring[i + 1] as number];
      const to: Point = [ring[j] as number, ring[j + 1] as number];
      for (const [key, rim] of rimsOfStretch([from, to], depthAt, gapsOf, fibresOf)) {
        const known = worst.get(key);
        if (known === undefined || rim.widthMm / rim.leastMm < known.widthMm / known.leastMm) {
          worst.set(key, rim);
        }
      }
    }
    rims.push(...worst.values());
  }
  return rims.toSorted(byGrain(({ widthMm, leastMm }) => widthMm / leastMm));
}

/** The shortest way from a cut to an edge of its board, or to a hole or groove beside it, negative beyond the edge; `null` where nothing is cut. */
export function leastGap(cut: CleanRegion, on: RimBoard): Gap | null {
  let least: Gap | null = null;
  for (let k = 0; k < cut.ringEnds.length; k++) {
    const ring = ringCoords(cut, k);
    const gapsOf = gapsOfRing(ringArea(ring) > 0, on);
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const ends: readonly [Point, Point] = [
        [ring[i] as number, ring[i + 1] as number],
        [ring[j] as number, ring[j + 1] as number],
      ];
      for (const gap of gapsOf(ends)) {
        least = least === null || gap.widthMm < least.widthMm ? gap : least;
      }
    }
  }
  return least;
}

/** A part of an edge of the outline with the fibres of the block that it lies in. */
interface Stretch {
  readonly ends: readonly [Point, Point];
  readonly fibre: Point;
  readonly isUpright: boolean;
}

type FibresAlong = (from: Point, to: Point) => readonly Stretch[];

/** Fibres that stand steeper than this show their ends on the face. */
const UPRIGHT_DEG = 45;

function fibresAlong({ blocks }: PlacedBoard): FibresAlong {
  const index = blockIndex(blocks);
  return ([ax, ay], [bx, by]) =>
    index
      .near([Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by)])
      .flatMap((b): readonly Stretch[] => {
        const block = blocks[b];
        if (block === undefined || block.region === null) {
          return [];
        }
        const at = (share: number): Point => [ax + share * (bx - ax), ay + share * (by - ay)];
        // the wood is on the outer side of a clean ring, (ey, −ex)
        return clipSegment(block.region, [ax, ay, bx, by], [by - ay, ax - bx]).map(([from, to]) => ({
          ends: [at(from), at(to)],
          fibre: fibreVector(radians(block.grainDeg)),
          isUpright: Math.abs(block.diveDeg) > UPRIGHT_DEG,
        }));
      });
}

/** Gaps of a stretch of outline, by what they lead to. */
interface GapsOf {
  (ends: readonly [Point, Point]): readonly Gap[];
  /** Whether all of them are known to be as wide, or the stretch lies off the board: of most stretches nothing else is asked. */
  readonly areAtLeast: (ends: readonly [Point, Point], widthMm: number) => boolean;
}

/** An island has no edge of the board beside it; of a hole or groove only what lies on the side of the wood counts. */
function gapsOfRing(isOuter: boolean, { board, obstacles, placed }: RimBoard): GapsOf {
  const gaps = (ends: readonly [Point, Point]): readonly Gap[] => [
    ...(isOuter ? edgeGaps(ends, board, placed) : []),
    ...obstacles
      .map((obstacle, k) => obstacleGap(ends, obstacle, `obstacle ${k}`, placed))
      .filter(({ from, to }) => isOnWoodSide(ends, from, to)),
  ];
  return Object.assign(gaps, {
    areAtLeast: ([a, b]: readonly [Point, Point], widthMm: number): boolean => {
      const [ax, ay] = applyTransform(placed.toBoard, a);
      const [bx, by] = applyTransform(placed.toBoard, b);
      const [left, right] = [Math.min(ax, bx), Math.max(ax, bx)];
      const [top, bottom] = [Math.min(ay, by), Math.max(ay, by)];
      const isOff = right < 0 || left > board.widthMm || bottom < 0 || top > board.heightMm;
      const least = Math.min(left, board.widthMm - right, top, board.heightMm - bottom);
      return isOff || (obstacles.length === 0 && (!isOuter || least >= widthMm));
    },
  });
}

function isOnWoodSide([[ax, ay], [bx, by]]: readonly [Point, Point], from: Point, to: Point): boolean {
  return (by - ay) * (to[0] - from[0]) - (bx - ax) * (to[1] - from[1]) >= -ROUNDING_MM;
}

function rimsOfStretch(
  ends: readonly [Point, Point],
  depthAt: DepthAt,
  gapsOf: GapsOf,
  fibresOf: FibresAlong,
): readonly (readonly [key: string, rim: Rim])[] {
  const most = Math.max(limits.rimEndGrainHabit.value, limits.rimEndGrainToDepth.value * depthAt.mostMm);
  if (gapsOf.areAtLeast(ends, most) || gapsOf(ends).every(({ widthMm }) => widthMm >= most)) {
    return [];
  }
  const depthMm = depthAt.along(...ends);
  return fibresOf(...ends).flatMap((stretch) =>
    gapsOf(stretch.ends).flatMap(({ key, ...gap }) => {
      const rim = rimOf(gap, stretch.fibre, stretch.isUpright, depthMm);
      // none at all is off the board, which has a finding of its own
      const isThin =
        rim.widthMm > ROUNDING_MM && rim.widthMm < Math.max(rim.leastMm, rim.habitMm) - ROUNDING_MM;
      return isThin ? [[key, rim] as const] : [];
    }),
  );
}

/** The way from a pocket to what lies beside it; its ends are places in the artwork's frame. */
export interface Gap {
  readonly key: string;
  readonly beside: Rim['beside'];
  readonly widthMm: number;
  readonly from: Point;
  readonly to: Point;
}

function rimOf(gap: Omit<Gap, 'key'>, fibre: Point, isUpright: boolean, depthMm: number): Rim {
  const across: Point = [gap.to[0] - gap.from[0], gap.to[1] - gap.from[1]];
  const length = Math.hypot(...across);
  const cos = length > 0 ? Math.abs(across[0] * fibre[0] + across[1] * fibre[1]) / length : 1;
  const isEndGrain = isUpright || cos >= END_GRAIN_COS;
  const [wide, toDepth, rimToDepth] = isEndGrain
    ? [limits.wallShortGrain, limits.wallShortGrainToDepth, limits.rimEndGrainToDepth]
    : [limits.wallAlongGrain, limits.wallAlongGrainToDepth, limits.rimLongGrainToDepth];
  const breaksBelowMm = Math.max(wide.value, toDepth.value * depthMm);
  return {
    ...gap,
    isEndGrain,
    breaksBelowMm,
    habitMm:
      gap.beside === 'edge' ? (isEndGrain ? limits.rimEndGrainHabit : limits.rimLongGrainHabit).value : 0,
    // beside a hole the wood is a wall between two hollows
    leastMm: gap.beside === 'edge' ? Math.max(wide.value, rimToDepth.value * depthMm) : breaksBelowMm,
  };
}

/** Distances of a stretch of outline to the four edges of the board. */
function edgeGaps(
  [a, b]: readonly [Point, Point],
  { widthMm, heightMm }: Board,
  { toBoard, toArtwork }: PlacedBoard,
): readonly Gap[] {
  const onBoard = [applyTransform(toBoard, a), applyTransform(toBoard, b)] as const;
  const gap = (key: string, inward: (at: Point) => number, foot: (at: Point) => Point): Gap => {
    const nearest = inward(onBoard[0]) <= inward(onBoard[1]) ? 0 : 1;
    return {
      key,
      beside: 'edge',
      widthMm: inward(onBoard[nearest]),
      from: nearest === 0 ? a : b,
      to: applyTransform(toArtwork, foot(onBoard[nearest])),
    };
  };
  return [
    gap(
      'left',
      ([x]) => x,
      ([, y]) => [0, y],
    ),
    gap(
      'right',
      ([x]) => widthMm - x,
      ([, y]) => [widthMm, y],
    ),
    gap(
      'top',
      ([, y]) => y,
      ([x]) => [x, 0],
    ),
    gap(
      'bottom',
      ([, y]) => heightMm - y,
      ([x]) => [x, heightMm],
    ),
  ];
}

/** Distance of a stretch of outline to a hole or a groove, which are the points near to a middle line. */
export function obstacleGap(
  [a, b]: readonly [Point, Point],
  obstacle: Hollow,
  key: string,
  { toArtwork }: PlacedBoard,
): Gap {
  const [start, end, radius] =
    obstacle.kind === 'hole'
      ? [obstacle.atMm, obstacle.atMm, obstacle.diameterMm / 2]
      : [obstacle.fromMm, obstacle.toMm, obstacle.widthMm / 2];
  const [c, d] = [applyTransform(toArtwork, start), applyTransform(toArtwork, end)];
  // two segments that do not cross are nearest at an end of one
  const pairs = [
    [a, nearestOn(c, d, a)],
    [b, nearestOn(c, d, b)],
    [nearestOn(a, b, c), c],
    [nearestOn(a, b, d), d],
  ] as const;
  const length = ([p, q]: readonly [Point, Point]): number => Math.hypot(q[0] - p[0], q[1] - p[1]);
  const [from, middle] = pairs.reduce((best, pair) => (length(pair) < length(best) ? pair : best));
  const far = length([from, middle]);
  const share = far > 0 ? 1 - radius / far : 0;
  return {
    key,
    beside: 'obstacle',
    widthMm: far - radius,
    from,
    to: [from[0] + share * (middle[0] - from[0]), from[1] + share * (middle[1] - from[1])],
  };
}

function nearestOn([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): Point {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const share = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return [ax + share * dx, ay + share * dy];
}
