import { type FillRule, packRings, ringArea, ringCoords } from '@pourproof/plane';
import { SNAP_MM } from '../chains/chain-graph.ts';
import { uniteRegions } from '../clip/clip-region.ts';
import { MAX_COORD_MM } from '../max-coord.ts';
import type { DxfNoticeCode, DxfNotices } from './dxf-notices.ts';
import { dxfRefusal } from './dxf-refusals.ts';

/** A drawn line or curve with two ends, as a polyline in mm. */
export interface OpenPiece {
  readonly coords: readonly number[];
  /** Line of the file it came from. */
  readonly line: number;
  readonly type: string;
}

/** A closed outline in mm, not repeating its first point. */
export interface ClosedPiece {
  readonly coords: readonly number[];
  readonly line: number;
  readonly type: string;
}

/** An area that is filled by itself, whatever outlines are around it. */
export interface FilledArea {
  readonly rings: readonly (readonly number[])[];
  readonly fillRule: FillRule;
  readonly line: number;
  readonly type: string;
}

/** Everything drawn on one layer in one colour. */
export interface Sheet {
  readonly layer: string;
  readonly colour: string;
  readonly open: OpenPiece[];
  readonly closed: ClosedPiece[];
  /** Simple rings, all turning the same way, whose union is filled: solids and pieces of wide lines. */
  readonly patches: (readonly number[])[];
  readonly areas: FilledArea[];
  /** Boundaries of hatches that do not close, each by itself. */
  readonly brokenLoops: (readonly OpenPiece[])[];
}

/** How many numbers all pens of a drawing have drawn. */
export interface DrawnCount {
  numbers: number;
}

/**
 * Most numbers that all pens may draw: 50 million points, more than any board can show, and about what memory
 * holds.
 */
const MAX_NUMBERS = 100_000_000;

/**
 * Draws the pieces of one entity on its sheet. Coordinates are mm; what is not finite or beyond 1000 km is
 * refused with a notice.
 */
export class DxfPen {
  readonly toleranceMm: number;
  private readonly sheet: Sheet;
  private readonly log: DxfNotices;
  private readonly line: number;
  private readonly type: string;
  private readonly count: DrawnCount;

  constructor(
    sheet: Sheet,
    log: DxfNotices,
    toleranceMm: number,
    { line, type }: { line: number; type: string },
    count: DrawnCount,
  ) {
    this.count = count;
    this.sheet = sheet;
    this.log = log;
    this.toleranceMm = toleranceMm;
    this.line = line;
    this.type = type;
  }

  /** A line with two ends, which may join others. */
  chain(coords: readonly number[]): void {
    if (!this.isSound(coords)) {
      return;
    }
    if (isPoint(coords)) {
      this.notice('zero-size');
    } else {
      this.sheet.open.push({ coords, line: this.line, type: this.type });
    }
  }

  /** A closed outline; a repeated first point is taken off. */
  ring(coords: readonly number[]): void {
    const ring = withoutRepeats(coords);
    if (!this.isSound(ring)) {
      return;
    }
    if (ring.length < 6) {
      this.notice('zero-size');
      return;
    }
    this.sheet.closed.push({ coords: ring, line: this.line, type: this.type });
  }

  /** Part of an area that is filled by itself; parts of one sheet are united. */
  patch(coords: readonly number[]): void {
    const area = this.isSound(coords) ? ringArea(coords) : 0;
    if (area !== 0) {
      this.sheet.patches.push(area > 0 ? coords : reversedRing(coords));
    }
  }

  /** The union of overlapping parts, as one area. */
  union(parts: readonly (readonly number[])[]): void {
    const sound = parts.filter((part) => this.isSound(part) && ringArea(part) !== 0);
    if (sound.length < 2) {
      sound.forEach((part) => {
        this.patch(part);
      });
      return;
    }
    const whole = uniteRegions(sound.map((part) => ({ ...packRings([part]), fillRule: 'nonzero' })));
    const rings = Array.from(whole.ringEnds, (_, k) => Array.from(ringCoords(whole, k)));
    // its rings no longer overlap, so that both rules fill the same
    this.area(rings, 'evenodd');
  }

  /** An area with holes by a fill rule. */
  area(rings: readonly (readonly number[])[], fillRule: FillRule): void {
    const sound = rings.map(withoutRepeats).filter((ring) => this.isSound(ring) && ring.length >= 6);
    if (sound.length > 0) {
      this.sheet.areas.push({ rings: sound, fillRule, line: this.line, type: this.type });
    }
  }

  /** The edges of a hatch boundary that does not close. */
  brokenLoop(edges: readonly { readonly coords: readonly number[] }[]): void {
    this.countNumbers(edges.reduce((sum, { coords }) => sum + coords.length, 0));
    this.sheet.brokenLoops.push(edges.map(({ coords }) => ({ coords, line: this.line, type: this.type })));
  }

  /** Adds a notice about the entity being drawn. */
  notice(code: DxfNoticeCode, detail = ''): void {
    const layer = this.sheet.layer === '' ? '' : ` on layer ${this.sheet.layer}`;
    this.log.add(code, { line: this.line, element: `${this.type}${layer}` }, detail);
  }

  private countNumbers(more: number): void {
    this.count.numbers += more;
    if (this.count.numbers > MAX_NUMBERS) {
      throw dxfRefusal(
        'too-much-detail',
        { mostPoints: MAX_NUMBERS / 2, toleranceMm: this.toleranceMm },
        { line: this.line },
      );
    }
  }

  private isSound(coords: readonly number[]): boolean {
    this.countNumbers(coords.length);
    for (const c of coords) {
      if (!(Math.abs(c) <= MAX_COORD_MM)) {
        this.notice('bad-number');
        return false;
      }
    }
    return true;
  }
}

/** Whether all points coincide within the snapping distance. */
function isPoint(coords: readonly number[]): boolean {
  const [x, y] = coords as [number, number];
  return coords.every((c, i) => Math.abs(c - (i % 2 === 0 ? x : y)) <= SNAP_MM);
}

/** The ring reversed. */
export function reversedRing(coords: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = coords.length - 2; i >= 0; i -= 2) {
    out.push(coords[i] as number, coords[i + 1] as number);
  }
  return out;
}

/** The points of a ring without those that repeat the one before, the last against the first included. */
function withoutRepeats(coords: readonly number[]): readonly number[] {
  const n = coords.length;
  let px = coords[n - 2];
  let py = coords[n - 1];
  let repeats = false;
  for (let i = 0; i < n; i += 2) {
    repeats ||= coords[i] === px && coords[i + 1] === py;
    px = coords[i];
    py = coords[i + 1];
  }
  if (!repeats) {
    return coords;
  }
  const out: number[] = [];
  for (let i = 0; i < n; i += 2) {
    if (coords[i] !== px || coords[i + 1] !== py) {
      out.push(coords[i] as number, coords[i + 1] as number);
    }
    px = coords[i];
    py = coords[i + 1];
  }
  return out;
}
