import { CSS_PX_PER_INCH, DEFAULT_FLATTEN_TOLERANCE_MM } from '@pourproof/plane';
import type { LetteringFont } from '../lettering/lettering-font.ts';
import type { SizeGuard } from '../refuse-size.ts';

/** How an SVG file is read. */
export interface SvgOptions {
  /** Largest deviation of the polylines from the drawing's curves; 5 µm by default. */
  readonly toleranceMm?: number;
  /** Width of all that is painted; scales the whole artwork. */
  readonly widthMm?: number;
  /** Height of all that is painted; scales the whole artwork. With both, the artwork is made to fit in. */
  readonly heightMm?: number;
  /** Factor on the size that the file states or that was assumed; 1 by default. */
  readonly scale?: number;
  /** Pixels per inch where the file states no physical unit; 96 by default. */
  readonly pxPerInch?: number;
  /**
   * `all` (default): everything painted counts. `visible`: what covers other paint hides it, by painter's
   * order, and white paint is paper.
   */
  readonly carve?: 'all' | 'visible';
  /** Fonts for text, made ready by {@link openFont}; the first is used where no family name fits. */
  readonly fonts?: readonly LetteringFont[];
  /** Asked before each shape is flattened, so that a mistaken unit costs nothing; none by default. */
  readonly refuseBounds?: SizeGuard | undefined;
}

/** The options with all defaults in place. */
export interface SettledSvgOptions extends SvgOptions {
  readonly toleranceMm: number;
  readonly scale: number;
  readonly pxPerInch: number;
  readonly carve: 'all' | 'visible';
  readonly fonts: readonly LetteringFont[];
}

/**
 * Fills in the defaults.
 *
 * @throws {RangeError} when a number is not above 0 and finite
 */
export function settleSvgOptions(options: SvgOptions): SettledSvgOptions {
  for (const name of ['toleranceMm', 'widthMm', 'heightMm', 'scale', 'pxPerInch'] as const) {
    const value = options[name];
    if (value !== undefined && !(value > 0 && Number.isFinite(value))) {
      throw new RangeError(`${name} must be above 0 and finite, not ${value}`);
    }
  }
  return {
    ...options,
    toleranceMm: options.toleranceMm ?? DEFAULT_FLATTEN_TOLERANCE_MM,
    scale: options.scale ?? 1,
    pxPerInch: options.pxPerInch ?? CSS_PX_PER_INCH,
    carve: options.carve ?? 'all',
    fonts: options.fonts ?? [],
  };
}
