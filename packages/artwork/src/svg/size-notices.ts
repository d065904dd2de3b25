import {
  type Bounds,
  CSS_PX_PER_INCH,
  isEmptyBounds,
  type LengthUnit,
  PT_PER_INCH,
  type TextInUnits,
  textInUnits,
} from '@pourproof/plane';
import { lengthText } from '../length-text.ts';
import type { PageSize } from './page-size.ts';
import type { Scene } from './scene.ts';
import { svgNotice } from './svg-notices.ts';

/** Sizes that differ by less than this fraction are one (our choice: what a tape measure shows). */
const SAME_SIZE_REL = 1e-3;
/** Rates at which programs write pixels: points, old drawing programs, CSS. */
const USUAL_RATES: readonly number[] = [PT_PER_INCH, 90, CSS_PX_PER_INCH];
/** Digits of a size that was asked for: all that was typed. */
const EXACT = 6;

/**
 * Notices which size was used and, where it had to be assumed, what the other usual readings would give;
 * returns the scale in words.
 */
export function noticeSize(scene: Scene, page: PageSize, factor: number, painted: Bounds): TextInUnits {
  const { notices, options } = scene;
  if (page.zero.length > 0) {
    for (const side of page.zero) {
      notices.add('page-size-zero', { line: scene.root.line }, side);
    }
  }
  const { widthMm, heightMm } = options;
  if (widthMm !== undefined || heightMm !== undefined) {
    if (
      widthMm !== undefined &&
      heightMm !== undefined &&
      !isEmptyBounds(painted) &&
      !fits(painted, widthMm, heightMm)
    ) {
      notices.put(
        svgNotice('size-differs', {
          askedWidthMm: widthMm,
          askedHeightMm: heightMm,
          ...measured(painted),
        }),
      );
    }
    return textInUnits(
      (unit) =>
        `the painted artwork is scaled to be ${askedText(options, unit)} (factor ${Number(factor.toPrecision(6))} on ${page.source})`,
    );
  }
  if (!page.stated && !isEmptyBounds(painted)) {
    const { pxPerInch, scale } = options;
    const { widthMm: width, heightMm: height } = measured(painted);
    const readings = {
      ratesPxPerInch: USUAL_RATES,
      widthsMm: USUAL_RATES.map((rate) => (width * pxPerInch) / rate),
      heightsMm: USUAL_RATES.map((rate) => (height * pxPerInch) / rate),
    };
    const size = { widthMm: width, heightMm: height, pxPerInch, scale, ...readings };
    notices.put(svgNotice('size-assumed', { source: page.source, ...size }, [{ line: scene.root.line }]));
  }
  return textInUnits(options.scale === 1 ? page.source : `${page.source}, times ${options.scale}`);
}

function measured(b: Bounds): { widthMm: number; heightMm: number } {
  return { widthMm: b[2] - b[0], heightMm: b[3] - b[1] };
}

function askedText({ widthMm, heightMm }: Scene['options'], unit: LengthUnit): string {
  return [
    widthMm === undefined ? '' : `${lengthText(widthMm, unit, EXACT)} wide`,
    heightMm === undefined ? '' : `${lengthText(heightMm, unit, EXACT)} high`,
  ]
    .filter(Boolean)
    .join(' and ');
}

function fits(b: Bounds, widthMm: number, heightMm: number): boolean {
  const off = Math.max(
    Math.abs(b[2] - b[0] - widthMm) / widthMm,
    Math.abs(b[3] - b[1] - heightMm) / heightMm,
  );
  return off < SAME_SIZE_REL;
}
