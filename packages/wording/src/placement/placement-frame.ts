import type { Job } from '@pourproof/job';
import {
  applyTransform,
  type Bounds,
  compose,
  joinBounds,
  type Point,
  radians,
  ringsBounds,
  rotation,
  type Transform,
  transformRings,
  translation,
} from '@pourproof/plane';
import type { Vetted } from '../vetted.ts';

/** A mark on the wood by which zero is found again. */
export interface ReferenceMark {
  readonly name: string;
  /** In the frame of the sheet, mm, y down. */
  readonly atMm: Point;
}

/** Where everything lies on paper: mm, x right, y down; `zero` is where the machine's axes begin, whose y points up. */
export interface PlacementFrame {
  /** From the artwork's own frame. */
  readonly fromArtwork: Transform;
  /** All that is drawn. */
  readonly boundsMm: Bounds;
  /** Box of the artwork as it lies. */
  readonly artworkMm: Bounds;
  /** Middle of its box before any turn, about which it is turned. */
  readonly middleMm: Point;
  readonly zero: { readonly atMm: Point; readonly of: 'board' | 'artwork' };
  /** Two of them, or none where the board has no room. */
  readonly marks: readonly ReferenceMark[];
}

/** Free room that a mark keeps from the artwork and from the board's edges, mm: half of a usual bit and what bleeds (our choice). */
const MARK_ROOM_MM = 8;

/** The frame of a job: that of its board, or without one that of the artwork. */
export function placementFrame({ picture, job }: Vetted): PlacementFrame {
  const { board } = job;
  const own = picture.boundsMm;
  if (board === null) {
    const [left, , right, bottom] = own;
    const marks = named([
      [left - MARK_ROOM_MM, bottom + MARK_ROOM_MM],
      [right + MARK_ROOM_MM, bottom + MARK_ROOM_MM],
    ]);
    return {
      fromArtwork: translation(0, 0),
      boundsMm: around(own, 2 * MARK_ROOM_MM),
      artworkMm: own,
      middleMm: [(left + right) / 2, (own[1] + bottom) / 2],
      zero: { atMm: [left, bottom], of: 'artwork' },
      marks,
    };
  }
  const fromArtwork = toBoard(job, own);
  const artworkMm = ringsBounds(transformRings(fromArtwork, picture.artwork));
  const face: Bounds = [0, 0, board.widthMm, board.heightMm];
  const obstacles = picture.obstacles.map(({ outline }) => ringsBounds(transformRings(fromArtwork, outline)));
  return {
    fromArtwork,
    boundsMm: around(joinBounds(face, artworkMm), 4),
    artworkMm,
    middleMm: applyTransform(fromArtwork, [(own[0] + own[2]) / 2, (own[1] + own[3]) / 2]),
    zero: { atMm: [0, board.heightMm], of: 'board' },
    marks: named(freeMarks(face, [artworkMm, ...obstacles])),
  };
}

/** The middle of the artwork's box goes to the job's place, turned counter-clockwise as seen. */
function toBoard({ board, placeMm, turnDeg }: Job, [left, top, right, bottom]: Bounds): Transform {
  const place = placeMm ?? [(board?.widthMm ?? 0) / 2, (board?.heightMm ?? 0) / 2];
  // with y down, counter-clockwise as seen is from +y towards +x
  return compose(
    translation(...place),
    compose(rotation(-radians(turnDeg)), translation(-(left + right) / 2, -(top + bottom) / 2)),
  );
}

/** The two places near the board's corners that are farthest apart and free; none where fewer are. */
function freeMarks([left, top, right, bottom]: Bounds, taken: readonly Bounds[]): readonly Point[] {
  const xs = [left + MARK_ROOM_MM, right - MARK_ROOM_MM];
  const ys = [bottom - MARK_ROOM_MM, top + MARK_ROOM_MM];
  const isFree = ([x, y]: Point): boolean =>
    taken.every(
      ([l, t, r, b]) =>
        x < l - MARK_ROOM_MM || x > r + MARK_ROOM_MM || y < t - MARK_ROOM_MM || y > b + MARK_ROOM_MM,
    );
  const free = ys.flatMap((y) => xs.map((x): Point => [x, y])).filter(isFree);
  let best: readonly Point[] = [];
  let farthest = 0;
  free.forEach((a, i) => {
    for (const b of free.slice(i + 1)) {
      const apart = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (apart > farthest) {
        farthest = apart;
        best = [a, b];
      }
    }
  });
  return best;
}

function named(points: readonly Point[]): readonly ReferenceMark[] {
  return points.map((atMm, k) => ({ name: `R${k + 1}`, atMm }));
}

function around([left, top, right, bottom]: Bounds, by: number): Bounds {
  return [left - by, top - by, right + by, bottom + by];
}
