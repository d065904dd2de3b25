import {
  type Bounds,
  boundsOf,
  DEFAULT_FLATTEN_TOLERANCE_MM,
  DEFAULT_JOIN_TOLERANCE_MM,
  type Drawing,
  EMPTY_BOUNDS,
  formatLength,
  isEmptyBounds,
  joinBounds,
  type LengthUnit,
  type Notice,
  textInUnits,
} from '@pourproof/plane';
import type { LetteringFont } from '../lettering/lettering-font.ts';
import { LONGEST_MM, type SizeGuard } from '../refuse-size.ts';
import { decodeDxf } from './decode-dxf.ts';
import { drawEntities } from './draw-entities.ts';
import { type DxfDocument, readDxfDocument } from './dxf-document.ts';
import type { DxfGroups } from './dxf-groups.ts';
import { type DxfMap, pageMap } from './dxf-map.ts';
import { type DxfNotices, dxfNotice, dxfNotices } from './dxf-notices.ts';
import type { Sheet } from './dxf-pen.ts';
import type { DxfRecord } from './dxf-record.ts';
import { dxfRefusal } from './dxf-refusals.ts';
import { type DxfScale, type DxfUnit, dxfScale, unitNotice } from './dxf-unit.ts';
import { sheetShapes } from './sheet-shapes.ts';

/** How to read a DXF file. */
export interface ReadDxfOptions {
  /** Largest deviation from true curves, in mm; default 0.005. */
  readonly toleranceMm?: number;
  /** Largest gap between two loose ends that is closed, in mm; default 0.05. */
  readonly joinToleranceMm?: number;
  /** What one drawing unit is, whatever the file says. */
  readonly unit?: DxfUnit;
  /** Width that the whole artwork is to have. With `heightMm` too, the artwork fits into both. */
  readonly widthMm?: number;
  /** Height that the whole artwork is to have. */
  readonly heightMm?: number;
  /** Factor on the size that the file gives. */
  readonly scale?: number;
  /**
   * Fonts for texts, made ready by `openFont`; the first regular one is used. Without any, texts are left out
   * with a notice.
   */
  readonly fonts?: readonly LetteringFont[];
  /** Asked before curves are flattened, so that a mistaken unit costs nothing; none by default. */
  readonly refuseBounds?: SizeGuard | undefined;
}

/** Artwork further from the origin than this, in mm, is moved there, to keep its digits. */
const FAR_MM = 100_000;

/**
 * Reads a DXF file, text or binary, of any version into shapes in mm with y down: closed outlines by even-odd
 * within each layer and colour, hatches, solids and wide lines as areas of their own. The drawing keeps its
 * place, with y turned, unless it lies further than 100 m from the origin.
 *
 * Lines are joined into outlines at their ends. Whatever is left out, closed, merged or assumed is in the
 * notices.
 *
 * @throws {ArtworkError} `empty-file`, `not-dxf`, `too-many-copies`, `too-deep-blocks`, `too-much-detail`,
 *   `missing-glyph`
 * @throws {RangeError} for a tolerance, size or scale that is not above 0
 *
 * @example
 * ```ts
 * const drawing = readDxf(bytes, { unit: 'in', joinToleranceMm: 0.1 });
 * drawing.scaleSource.in; // 'drawing units taken as in, as asked'
 * drawing.notices.filter((notice) => notice.code === 'open-outline'); // chains that do not close
 * ```
 */
export function readDxf(source: Uint8Array | string, options: ReadDxfOptions = {}): Drawing {
  checkOptions(options);
  const { groups, notices } = decodeDxf(source);
  const document = readDxfDocument(groups);
  notices.push(...damageNotices(document, groups));
  const toleranceMm = options.toleranceMm ?? DEFAULT_FLATTEN_TOLERANCE_MM;
  const joinToleranceMm = options.joinToleranceMm ?? DEFAULT_JOIN_TOLERANCE_MM;
  const asFile = dxfScale(document, options.unit);
  const factor = options.scale ?? 1;
  const draw = (map: DxfMap, log: DxfNotices, tolerance = toleranceMm): Sheet[] =>
    drawEntities(document, map, log, {
      toleranceMm: tolerance,
      joinToleranceMm,
      fonts: options.fonts ?? [],
    });
  const scaleSource = textInUnits((unit) => scaleWords(asFile, options, unit));
  const isFitted = options.widthMm !== undefined || options.heightMm !== undefined;
  if (options.refuseBounds !== undefined && !isFitted && mayBeHuge(document, asFile.mmPerUnit * factor)) {
    const rough = draw(pageMap(asFile.mmPerUnit * factor, 0, 0), dxfNotices(), ROUGH_MM);
    options.refuseBounds(sheetBounds(rough), scaleSource);
  }

  let log = dxfNotices();
  let sheets = draw(pageMap(asFile.mmPerUnit * factor, 0, 0), log);
  const bounds = sheetBounds(sheets);
  const fit = fitFactor(bounds, options);
  const move = moveToOrigin(bounds, fit);
  if (fit !== 1 || move[0] !== 0 || move[1] !== 0) {
    log = dxfNotices();
    sheets = draw(pageMap(asFile.mmPerUnit * factor * fit, ...move), log);
  }
  if (asFile.doubt && !isFitted) {
    notices.push(unitNotice(asFile.doubt, asFile.mmPerUnit * factor, bounds));
  }
  if (move[0] !== 0 || move[1] !== 0) {
    notices.push(dxfNotice('far-from-origin', { rightMm: move[0], downMm: move[1] }));
  }
  const joined = sheetShapes(sheets, log, joinToleranceMm);
  notices.push(...log.notices(), ...joined.notices);
  return {
    format: 'dxf',
    scaleSource,
    shapes: joined.shapes,
    notices,
    toleranceMm,
    ...(joined.open === null ? {} : { open: joined.open }),
  };
}

function checkOptions(options: ReadDxfOptions): void {
  for (const key of ['toleranceMm', 'widthMm', 'heightMm', 'scale'] as const) {
    const value = options[key];
    if (value !== undefined && !(value > 0 && value < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`${key} must be above 0 and finite; it is ${value}.`);
    }
  }
  if (options.joinToleranceMm !== undefined && !(options.joinToleranceMm >= 0)) {
    throw new RangeError(`joinToleranceMm must be 0 or more; it is ${options.joinToleranceMm}.`);
  }
}

/** What is wrong with the file as a whole. Nothing readable at all is an error. */
function damageNotices(document: DxfDocument, groups: DxfGroups): Notice[] {
  const nothing = document.entities.length === 0 && document.blocks.size === 0 && !document.hasHeader;
  if (nothing && (groups.brokenAt > 0 || !document.complete)) {
    throw dxfRefusal('not-dxf', { found: 'no-pairs' }, groups.brokenAt > 0 ? { line: groups.brokenAt } : {});
  }
  if (groups.brokenAt > 0) {
    return [dxfNotice('file-damaged', { line: groups.brokenAt }, [{ line: groups.brokenAt }])];
  }
  if (!document.complete) {
    return [dxfNotice('missing-end', {})];
  }
  return [];
}

/** What a first look at sizes is flattened to, mm. */
const ROUGH_MM = LONGEST_MM / 100;

/** Whether a number of an entity is half as long as any board, or a block is enlarged. */
function mayBeHuge({ entities, blocks }: DxfDocument, mmPerUnit: number): boolean {
  const far = LONGEST_MM / 2 / mmPerUnit;
  const isFar = ({ type, codes, values, parts }: DxfRecord): boolean =>
    codes.some((code, i) => {
      const isScale = type === 'INSERT' && code >= 41 && code <= 43;
      return code >= 10 && code < 60 && Math.abs(Number(values[i])) > (isScale ? 1 : far);
    }) || parts.some(isFar);
  return [entities, ...Array.from(blocks.values(), (block) => block.entities)].some((all) => all.some(isFar));
}

function sheetBounds(sheets: readonly Sheet[]): Bounds {
  let bounds = EMPTY_BOUNDS;
  for (const { open, closed, patches, areas } of sheets) {
    for (const { coords } of [...open, ...closed]) {
      bounds = joinBounds(bounds, boundsOf(coords));
    }
    for (const coords of [...patches, ...areas.flatMap((area) => area.rings)]) {
      bounds = joinBounds(bounds, boundsOf(coords));
    }
  }
  return bounds;
}

/**
 * Factor that brings the artwork to the size asked for; 1 when none is, or when there is nothing to measure.
 */
function fitFactor(bounds: Bounds, { widthMm, heightMm }: ReadDxfOptions): number {
  const byWidth = widthMm === undefined ? Number.POSITIVE_INFINITY : widthMm / (bounds[2] - bounds[0]);
  const byHeight = heightMm === undefined ? Number.POSITIVE_INFINITY : heightMm / (bounds[3] - bounds[1]);
  const factor = Math.min(byWidth, byHeight);
  return Number.isFinite(factor) && factor > 0 ? factor : 1;
}

/** Whole millimetres that bring far-away artwork to the origin. */
function moveToOrigin(bounds: Bounds, factor: number): [number, number] {
  const far = !isEmptyBounds(bounds) && bounds.some((b) => Math.abs(b * factor) > FAR_MM);
  return far ? [-Math.floor(bounds[0] * factor), -Math.floor(bounds[1] * factor)] : [0, 0];
}

function scaleWords(
  scale: DxfScale,
  { widthMm, heightMm, scale: factor }: ReadDxfOptions,
  unit: LengthUnit,
): string {
  const words = [scale.source];
  if (factor !== undefined) {
    words.push(`scaled by ${factor}`);
  }
  if (widthMm !== undefined) {
    words.push(`fitted to ${formatLength(widthMm, unit)} width`);
  }
  if (heightMm !== undefined) {
    words.push(`fitted to ${formatLength(heightMm, unit)} height`);
  }
  return words.join(', ');
}
