import type { EllipseArc } from '../flatten/flatten-ellipse-arc.ts';
import { PackedSegments } from './packed-segments.ts';

/** A straight piece from (x0,y0) to (x,y). */
export interface LineSegment {
  readonly kind: 'line';
  readonly x0: number;
  readonly y0: number;
  readonly x: number;
  readonly y: number;
}

/** A cubic Bézier; quadratic ones are raised to cubics, which leaves their shape unchanged. */
export interface CubicSegment {
  readonly kind: 'cubic';
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly x: number;
  readonly y: number;
}

/** An ellipse arc, kept as such so that its shape stays exact. */
export interface ArcSegment {
  readonly kind: 'arc';
  readonly x0: number;
  readonly y0: number;
  readonly arc: EllipseArc;
  readonly x: number;
  readonly y: number;
}

/** One segment of a path, with its own start point. */
export type Segment = LineSegment | CubicSegment | ArcSegment;

/** Segments in order: an array, or {@link PackedSegments}. */
export interface Segments extends Iterable<Segment> {
  readonly length: number;
  forEach(visit: (segment: Segment, index: number) => void): void;
}

/**
 * A run of segments, each starting where the one before ends; `closed` when the file closes it (the closing
 * line is a segment too).
 */
export interface Subpath {
  readonly x0: number;
  readonly y0: number;
  readonly segments: Segments;
  readonly closed: boolean;
}

/** Subpaths in the order of drawing, in any unit. */
export type Path = readonly Subpath[];

/** Collects segments into subpaths, keeping the current point. */
export class PathBuilder {
  x = 0;
  y = 0;
  private readonly done: Subpath[] = [];
  private segments = new PackedSegments(0, 0);
  private startX = 0;
  private startY = 0;
  private started = false;

  /** Starts a new subpath; the one before stays open. */
  moveTo(x: number, y: number): void {
    this.finish(false);
    this.startX = x;
    this.startY = y;
    this.x = x;
    this.y = y;
    this.segments = new PackedSegments(x, y);
    this.started = true;
  }

  lineTo(x: number, y: number): void {
    this.open();
    this.segments.addLine(x, y);
    this.x = x;
    this.y = y;
  }

  cubicTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.open();
    this.segments.addCubic(x1, y1, x2, y2, x, y);
    this.x = x;
    this.y = y;
  }

  quadraticTo(qx: number, qy: number, x: number, y: number): void {
    const { x: x0, y: y0 } = this;
    const third = 2 / 3;
    this.cubicTo(
      x0 + third * (qx - x0),
      y0 + third * (qy - y0),
      x + third * (qx - x),
      y + third * (qy - y),
      x,
      y,
    );
  }

  arcTo(arc: EllipseArc, x: number, y: number): void {
    this.open();
    this.segments.addArc(arc, x, y);
    this.x = x;
    this.y = y;
  }

  /** Closes the subpath with a straight line; the current point is its start again. */
  close(): void {
    if (!this.started) {
      return;
    }
    this.lineTo(this.startX, this.startY);
    const { startX, startY } = this;
    this.finish(true);
    this.x = startX;
    this.y = startY;
  }

  /** The subpaths so far. */
  path(): Path {
    this.finish(false);
    return this.done;
  }

  private open(): void {
    if (!this.started) {
      // drawing continues after a close: a new subpath starts at the current point
      this.moveTo(this.x, this.y);
    }
  }

  private finish(closed: boolean): void {
    if (this.started && this.segments.length > 0) {
      this.done.push({ x0: this.startX, y0: this.startY, segments: this.segments, closed });
    }
    this.started = false;
  }
}
