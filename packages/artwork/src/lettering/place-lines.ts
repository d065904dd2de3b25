import { applyTransform, compose, rotation, scaling, type Transform, translation } from '@pourproof/plane';
import type { Cluster } from './cluster.ts';
import type { InkBox } from './ink-box.ts';
import { letteringRefusal } from './lettering-refusals.ts';
import { refuseHugeLetters } from './refuse-huge-letters.ts';

/**
 * The width is met once it is off by this fraction, some thousand roundings; a smaller one may never be met.
 */
const WIDTH_TOLERANCE_REL = 1e-12;

/**
 * Newton's steps come down a convex function of as many straight pieces as there are letters; two or three
 * are usual.
 */
const MAX_STEPS = 64;

/** A circle for the baseline of the first line. */
export interface LetteringArc {
  /** Radius of the first line's baseline. */
  readonly radiusMm: number;
  /**
   * `over`: letters stand on the outside of the circle and read clockwise, as over the top of a sign
   * (default); `under`: letters stand on the inside with their feet outwards and read counter-clockwise, as
   * along the bottom of a sign.
   */
  readonly side?: 'over' | 'under';
  /**
   * Where on the circle the alignment point lies, counter-clockwise from the x axis; 90 for `over`, 270 for
   * `under` by default.
   */
  readonly atDeg?: number;
}

/** How lines are sized and placed; give `capHeightMm` or `widthMm`, not both. */
export interface PlacingOptions {
  /** Height of capitals. */
  readonly capHeightMm?: number;
  /**
   * Width of the visible lettering, from its leftmost to its rightmost point (on an arc: along the baseline,
   * before bending).
   */
  readonly widthMm?: number;
  /** Distance of baselines as a multiple of what the font states; 1 by default. */
  readonly lineSpacing?: number;
  /** Which visible edge of the lines is brought into one line; `left` by default, `centre` on an arc. */
  readonly align?: 'left' | 'centre' | 'right';
  /** Room added between neighbouring letters; negative brings them closer. */
  readonly trackingMm?: number;
  readonly arc?: LetteringArc;
}

/** A cluster at its place on the artwork. */
export interface Letter {
  readonly cluster: Cluster;
  /** Line from 1. */
  readonly line: number;
  readonly text: string;
  /** From ems (y up, origin of the cluster) to mm (y down). */
  readonly emToMm: Transform;
}

/** Set text: letters in reading order of lines, left to right as seen in each. */
export interface Layout {
  readonly letters: readonly Letter[];
  readonly lines: readonly string[];
  readonly mmPerEm: number;
}

/** A measured line, in ems. */
export interface InkedLine {
  readonly text: string;
  /** Clusters with their start and the number of trackings before them. */
  readonly clusters: readonly { readonly cluster: Cluster; readonly x: number; readonly steps: number }[];
  readonly inks: readonly Ink[];
}

/** Ink of a glyph in ems from the line's start, and after how many trackings it comes. */
export interface Ink extends InkBox {
  readonly steps: number;
}

/** The two measures of a font that a layout takes. */
export interface LineMetrics {
  readonly capHeightEm?: number;
  readonly lineEm: number;
}

/**
 * Sizes measured lines and places their letters in mm. Straight text has the top left corner of its visible
 * box at the origin; text on an arc has the circle's centre there.
 *
 * @throws {RangeError} when not exactly one of capHeightMm and widthMm is given, or a number is out of its
 *   range
 * @throws {ArtworkError} `lettering-blank`, `lettering-size`, `font-without-cap-height`,
 *   `lettering-arc-radius` or `lettering-arc-length`
 */
export function placeLines(
  lines: readonly InkedLine[],
  metrics: LineMetrics,
  options: PlacingOptions,
): Layout {
  checkOptions(options);
  const tracking = options.trackingMm ?? 0;
  if (lines.every((line) => line.inks.length === 0)) {
    throw letteringRefusal('lettering-blank', {});
  }
  const mmPerEm = scaleFor(metrics, lines, tracking, options);
  refuseHuge(lines, mmPerEm);
  const step = metrics.lineEm * mmPerEm * (options.lineSpacing ?? 1);
  const place = options.arc
    ? onArc(lines, mmPerEm, step, options.arc, options)
    : straight(lines, mmPerEm, step, options);
  return {
    letters: lines.flatMap((line, n) =>
      line.clusters.map(({ cluster, x, steps }) => ({
        cluster,
        line: n + 1,
        text: line.text.slice(cluster.start, cluster.end),
        emToMm: place(n, x * mmPerEm + steps * tracking, cluster.advance * mmPerEm),
      })),
    ),
    lines: lines.map((line) => line.text),
    mmPerEm,
  };
}

function checkOptions({ capHeightMm, widthMm, lineSpacing, trackingMm }: PlacingOptions): void {
  if ((capHeightMm === undefined) === (widthMm === undefined)) {
    throw new RangeError('give the size of lettering as capHeightMm or as widthMm, one of them');
  }
  const size = capHeightMm ?? widthMm ?? 0;
  if (!(size > 0 && Number.isFinite(size))) {
    throw new RangeError(`the size of lettering must be a length above 0 mm, not ${size}`);
  }
  if (lineSpacing !== undefined && !(lineSpacing > 0 && Number.isFinite(lineSpacing))) {
    throw new RangeError(`lineSpacing must be above 0, not ${lineSpacing}`);
  }
  if (trackingMm !== undefined && !Number.isFinite(trackingMm)) {
    throw new RangeError(`trackingMm must be a length, not ${trackingMm}`);
  }
}

function refuseHuge(lines: readonly InkedLine[], mmPerEm: number): void {
  let tallestEm = 0;
  for (const ink of lines.flatMap((line) => line.inks)) {
    tallestEm = Math.max(tallestEm, ink.maxY - ink.minY, ink.maxX - ink.minX);
  }
  refuseHugeLetters(tallestEm * mmPerEm);
}

interface Extent {
  readonly min: number;
  readonly max: number;
  /** How fast the width grows with the scale. */
  readonly slope: number;
}

/** Visible extent of a line along its baseline in mm at a scale. */
function inkExtent(line: InkedLine, mmPerEm: number, tracking: number): Extent | undefined {
  let low: Ink | undefined;
  let high: Ink | undefined;
  const left = (ink: Ink): number => ink.minX * mmPerEm + ink.steps * tracking;
  const right = (ink: Ink): number => ink.maxX * mmPerEm + ink.steps * tracking;
  for (const ink of line.inks) {
    low = low && left(low) <= left(ink) ? low : ink;
    high = high && right(high) >= right(ink) ? high : ink;
  }
  return low && high && { min: left(low), max: right(high), slope: high.maxX - low.minX };
}

function scaleFor(
  metrics: LineMetrics,
  lines: readonly InkedLine[],
  tracking: number,
  options: PlacingOptions,
): number {
  if (options.widthMm !== undefined) {
    return scaleForWidth(lines, tracking, options.widthMm);
  }
  if (metrics.capHeightEm === undefined) {
    throw letteringRefusal('font-without-cap-height', {});
  }
  return (options.capHeightMm ?? 0) / metrics.capHeightEm;
}

/**
 * The scale at which the widest line is `widthMm` wide. The width is a convex function of the scale, made of
 * straight pieces, so Newton's steps from above come down to the answer in a few steps.
 */
function scaleForWidth(lines: readonly InkedLine[], tracking: number, widthMm: number): number {
  const widest = (scale: number, room: number): Extent | undefined =>
    lines
      .map((line) => inkExtent(line, scale, room))
      .filter((e) => e !== undefined)
      .reduce<Extent | undefined>((a, b) => (a && a.max - a.min >= b.max - b.min ? a : b), undefined);
  const widthOf = (extent: Extent | undefined): number => (extent ? extent.max - extent.min : 0);
  const widthEm = widthOf(widest(1, 0));
  if (!(widthEm > 0)) {
    throw letteringRefusal('lettering-size', { cause: 'no-width' });
  }
  if (widthOf(widest(0, tracking)) >= widthMm) {
    throw letteringRefusal('lettering-size', { cause: 'tracking', widthMm });
  }
  // however the room is spent, at this scale the line is not too narrow
  const letters = lines.reduce((most, line) => Math.max(most, line.clusters.length), 0);
  let scale = (widthMm + Math.abs(tracking) * letters) / widthEm;
  for (let i = 0; i < MAX_STEPS; i++) {
    const extent = widest(scale, tracking);
    const excess = widthOf(extent) - widthMm;
    if (!extent || Math.abs(excess) <= WIDTH_TOLERANCE_REL * widthMm) {
      break;
    }
    scale -= excess / extent.slope;
  }
  return scale;
}

/** Where a cluster of line n goes that starts `x` mm along the line and is `advance` mm long. */
type Place = (n: number, x: number, advance: number) => Transform;

function straight(
  lines: readonly InkedLine[],
  mmPerEm: number,
  step: number,
  options: PlacingOptions,
): Place {
  const shift = lines.map((line) => -alignPoint(line, mmPerEm, options));
  let minX = Infinity;
  let minY = Infinity;
  lines.forEach((line, n) => {
    const extent = inkExtent(line, mmPerEm, options.trackingMm ?? 0);
    minX = Math.min(minX, (extent?.min ?? Infinity) + (shift[n] as number));
    for (const ink of line.inks) {
      minY = Math.min(minY, n * step - ink.maxY * mmPerEm);
    }
  });
  return (n, x) => [mmPerEm, 0, 0, -mmPerEm, x + (shift[n] as number) - minX, n * step - minY];
}

function onArc(
  lines: readonly InkedLine[],
  mmPerEm: number,
  step: number,
  arc: LetteringArc,
  options: PlacingOptions,
): Place {
  const under = arc.side === 'under';
  const top = Math.PI / 2;
  const at = ((arc.atDeg ?? (under ? 270 : 90)) * Math.PI) / 180;
  const radii = lines.map((_, n) => arc.radiusMm + (under ? n : -n) * step);
  radii.forEach((radius, n) => {
    checkArc(radius, lines[n] as InkedLine, mmPerEm, options, n + 1);
  });
  const reference = lines.map((line) => alignPoint(line, mmPerEm, { align: 'centre', ...options }));
  return (n, x, advance) => {
    const radius = radii[n] as number;
    const middle = x + advance / 2;
    const along = (middle - (reference[n] as number)) / radius;
    const angle = under ? at + along : at - along;
    // turned so that the baseline is the tangent; with y down a turn is clockwise as seen
    const turn = under ? -(angle + top) : top - angle;
    const foot = applyTransform(scaling(radius, -radius), [Math.cos(angle), Math.sin(angle)]);
    const local: Transform = [mmPerEm, 0, 0, -mmPerEm, -advance / 2, 0];
    return compose(compose(translation(...foot), rotation(turn)), local);
  };
}

function checkArc(
  radius: number,
  line: InkedLine,
  mmPerEm: number,
  options: PlacingOptions,
  number: number,
): void {
  if (!(radius > 0 && Number.isFinite(radius))) {
    throw letteringRefusal('lettering-arc-radius', { line: number, radiusMm: radius });
  }
  const extent = inkExtent(line, mmPerEm, options.trackingMm ?? 0);
  const length = extent ? extent.max - extent.min : 0;
  if (length > 2 * Math.PI * radius) {
    throw letteringRefusal('lettering-arc-length', {
      line: number,
      lengthMm: length,
      radiusMm: radius,
      enoughMm: (length / (2 * Math.PI)) * 1.02,
    });
  }
}

function alignPoint(
  line: InkedLine,
  mmPerEm: number,
  { align = 'left', trackingMm = 0 }: PlacingOptions,
): number {
  const extent = inkExtent(line, mmPerEm, trackingMm);
  if (!extent) {
    return 0;
  }
  const part = { left: 0, centre: 0.5, right: 1 }[align];
  return extent.min + part * (extent.max - extent.min);
}
