import { CSS_PX_PER_INCH, MM_PER_INCH } from '@pourproof/plane';
import type { ComputedStyle } from './computed-style.ts';
import { parseLength, userUnits } from './css-length.ts';
import type { SvgElement } from './svg-element.ts';
import { parseViewBox, type ViewBox } from './view-box.ts';

/** The page of a file in CSS pixels and how sure its size is. */
export interface PageSize {
  readonly width: number;
  readonly height: number;
  readonly viewBox?: ViewBox;
  /** How big a pixel is. */
  readonly mmPerPx: number;
  /** Where the scale comes from, in words. */
  readonly source: string;
  /** Whether the file states a size in a physical unit; if not, the size was assumed. */
  readonly stated: boolean;
  /** Whether the file has a page at all: some width and height, or a viewBox. */
  readonly hasPage: boolean;
  /** Attributes that are 0, which paints nothing in a viewer. */
  readonly zero: readonly string[];
}

/**
 * The page: `width` and `height` of the root (CSS `auto` and percentages count as not given), or the viewBox,
 * taken at `pxPerInch` where no physical unit is stated. A size given on one side only takes the viewBox's
 * proportions for the other.
 */
export function pageSize(
  root: SvgElement,
  style: ComputedStyle,
  pxPerInch: number = CSS_PX_PER_INCH,
): PageSize {
  const box = parseViewBox(root.attributes.get('viewBox'));
  const viewBox = box !== undefined && box.width > 0 && box.height > 0 ? box : undefined;
  const w = sideOf(style, 'width');
  const h = sideOf(style, 'height');
  const stated = w.physical || h.physical;
  const mmPerPx = MM_PER_INCH / (stated ? CSS_PX_PER_INCH : pxPerInch);
  const ratio = viewBox === undefined ? undefined : viewBox.width / viewBox.height;
  const width = w.px ?? (h.px !== undefined && ratio !== undefined ? h.px * ratio : viewBox?.width);
  const height = h.px ?? (w.px !== undefined && ratio !== undefined ? w.px / ratio : viewBox?.height);
  return {
    // the default size of replaced content where nothing is known (CSS 2 §10.3.2)
    width: width ?? 300,
    height: height ?? 150,
    ...(viewBox === undefined ? {} : { viewBox }),
    mmPerPx,
    source: describe(w, h, root.attributes.get('viewBox'), stated, pxPerInch),
    stated,
    hasPage: width !== undefined && height !== undefined,
    zero: [w.zero ? 'width' : '', h.zero ? 'height' : ''].filter(Boolean),
  };
}

interface Side {
  readonly text: string;
  readonly px?: number;
  readonly physical: boolean;
  readonly zero: boolean;
}

function sideOf(style: ComputedStyle, name: string): Side {
  const text = style.get(name);
  const length = parseLength(text);
  if (length === undefined || /^(?:%|v|math)/.test(length.unit)) {
    return { text: length === undefined ? '' : `${name}="${text}"`, physical: false, zero: false };
  }
  const context = {
    viewportWidth: 0,
    viewportHeight: 0,
    fontSize: style.fontSize,
    rootFontSize: style.fontSize,
  };
  const px = userUnits(text, 'x', context);
  const said = `${name}="${text}"`;
  if (!(px > 0)) {
    return { text: said, physical: false, zero: true };
  }
  return { text: said, px, physical: /^(?:mm|cm|q|in|pt|pc)$/.test(length.unit), zero: false };
}

function describe(w: Side, h: Side, viewBox: string | undefined, stated: boolean, pxPerInch: number): string {
  const size = [w.text, h.text].filter(Boolean).join(' ') || 'no width and height';
  const over = viewBox === undefined ? '' : ` over viewBox ${viewBox.trim()}`;
  return stated ? `${size}${over}` : `${size}${over}, taken at ${pxPerInch} px per inch`;
}
