import { type Bounds, CSS_PX_PER_INCH, isEmptyBounds, PT_PER_INCH } from '@pourproof/plane';
import type { PageSize } from './page-size.ts';
import type { Scene } from './scene.ts';

/** Says which size was used and, where it had to be assumed, what the other usual readings would give; returns the scale in words. */
export function noticeSize(scene: Scene, page: PageSize, factor: number, painted: Bounds): string {
  const { notices, options } = scene;
  if (page.zero.length > 0) {
    notices.add('page-size-zero', { line: scene.root.line }, page.zero.join(' and '));
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
      notices.add(
        'size-differs',
        {},
        `The artwork does not have the proportions of ${widthMm} × ${heightMm} mm; it was made to fit in: ${sizeOf(painted, 1)}.`,
      );
    }
    return `${said} (factor ${Number(factor.toPrecision(6))} on ${page.source})`;
  }
  if (page.stated) {
    return options.scale === 1 ? page.source : `${page.source}, times ${options.scale}`;
  }
  if (!isEmptyBounds(painted)) {
    const sizes = [PT_PER_INCH, 90, CSS_PX_PER_INCH]
      .map((rate) => `${sizeOf(painted, options.pxPerInch / rate)} at ${rate}`)
      .join(', ');
    notices.add(
      'size-assumed',
      { line: scene.root.line },
      `The file does not state its size in a physical unit (${page.source}). The artwork would be ${sizes} px per inch; ${options.pxPerInch} was used${options.scale === 1 ? '' : `, times ${options.scale}`}. Set the true size with --width, --height or --scale.`,
    );
  }
  return options.scale === 1 ? page.source : `${page.source}, times ${options.scale}`;
}

function sizeOf(b: Bounds, factor: number): string {
  return `${((b[2] - b[0]) * factor).toFixed(2)} × ${((b[3] - b[1]) * factor).toFixed(2)} mm`;
}

function fits(b: Bounds, widthMm: number, heightMm: number): boolean {
  const off = Math.max(
    Math.abs(b[2] - b[0] - widthMm) / widthMm,
    Math.abs(b[3] - b[1] - heightMm) / heightMm,
  );
  return off < 0.001;
}
