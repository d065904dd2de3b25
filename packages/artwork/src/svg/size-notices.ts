import { type Bounds, CSS_PX_PER_INCH, isEmptyBounds, PT_PER_INCH } from '@pourproof/plane';
import type { PageSize } from './page-size.ts';
import type { Scene } from './scene.ts';
import { svgNotice } from './svg-notices.ts';

/** Sizes that differ by less than this fraction are one (our choice: what a tape measure shows). */
const SAME_SIZE_REL = 1e-3;

/**
 * Notices which size was used and, where it had to be assumed, what the other usual readings would give;
 * returns the scale in words.
 */
export function noticeSize(scene: Scene, page: PageSize, factor: number, painted: Bounds): string {
  const { notices, options } = scene;
  if (page.zero.length > 0) {
    for (const side of page.zero) {
      notices.add('page-size-zero', { line: scene.root.line }, side);
    }
  }
  const { widthMm, heightMm } = options;
  if (widthMm !== undefined || heightMm !== undefined) {
    const asked = [
      widthMm === undefined ? '' : `${widthMm} mm wide`,
      heightMm === undefined ? '' : `${heightMm} mm high`,
    ].filter(Boolean);
    const said = `the painted artwork is scaled to be ${asked.join(' and ')}`;
    if (
      asked.length === 2 &&
      !isEmptyBounds(painted) &&
      !fits(painted, widthMm as number, heightMm as number)
    ) {
      notices.put(
        svgNotice('size-differs', {
          askedWidthMm: widthMm as number,
          askedHeightMm: heightMm as number,
          ...measured(painted),
        }),
      );
    }
    return `${said} (factor ${Number(factor.toPrecision(6))} on ${page.source})`;
  }
  if (page.stated) {
    return options.scale === 1 ? page.source : `${page.source}, times ${options.scale}`;
  }
  if (!isEmptyBounds(painted)) {
    const readings = [PT_PER_INCH, 90, CSS_PX_PER_INCH].map(
      (rate) => `${sizeOf(painted, options.pxPerInch / rate)} at ${rate}`,
    );
    const { source } = page;
    const { pxPerInch, scale } = options;
    notices.put(
      svgNotice('size-assumed', { source, ...measured(painted), pxPerInch, scale, readings }, [
        { line: scene.root.line },
      ]),
    );
  }
  return options.scale === 1 ? page.source : `${page.source}, times ${options.scale}`;
}

function measured(b: Bounds): { widthMm: number; heightMm: number } {
  return { widthMm: b[2] - b[0], heightMm: b[3] - b[1] };
}

function sizeOf(b: Bounds, factor: number): string {
  return `${((b[2] - b[0]) * factor).toFixed(2)} × ${((b[3] - b[1]) * factor).toFixed(2)} mm`;
}

function fits(b: Bounds, widthMm: number, heightMm: number): boolean {
  const off = Math.max(
    Math.abs(b[2] - b[0] - widthMm) / widthMm,
    Math.abs(b[3] - b[1] - heightMm) / heightMm,
  );
  return off < SAME_SIZE_REL;
}
