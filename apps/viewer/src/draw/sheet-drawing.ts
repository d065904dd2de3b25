import { fibreVector } from '@pourproof/geometry';
import { type LengthUnit, radians } from '@pourproof/plane';
import type { Picture, Report } from '@pourproof/proof';
import { type G, type Pattern, SVG, type Svg } from '@svgdotjs/svg.js';
import { combPath } from './comb-path.ts';
import { drawMargin } from './draw-margin.ts';
import { drawMarks, type Mark } from './draw-marks.ts';
import { linePath, ringsPath } from './path-data.ts';
import type { SheetSize, View } from './view.ts';

/** Lines of the grain on the paper are this far apart, px. */
const GRAIN_STEP_PX = 9;
const HATCH_STEP_PX = 6;

/** The picture of a proof in an SVG element that it keeps up to date. */
export class SheetDrawing {
  readonly #svg: Svg;
  readonly #grain: Pattern;
  readonly #hatch: Pattern;
  readonly #art: G;
  readonly #outline: G;
  readonly #margin: G;
  readonly #marks: G;
  #grainDeg = 0;

  constructor(host: HTMLElement) {
    this.#svg = SVG().addTo(host).attr({ 'aria-hidden': 'true' });
    this.#grain = this.#svg.pattern(240, 2 * GRAIN_STEP_PX, (add) => {
      // two lines that waver a little and fit on to themselves, as fibres do
      add.path(`M0 ${GRAIN_STEP_PX / 2}q60 -2 120 0t120 0`).addClass('grain-line');
      add.path(`M0 ${GRAIN_STEP_PX * 1.5}q60 1.6 120 0t120 0`).addClass('grain-line');
    });
    this.#hatch = this.#svg.pattern(HATCH_STEP_PX, HATCH_STEP_PX, (add) => {
      add.rect(HATCH_STEP_PX, HATCH_STEP_PX).addClass('hatch-ground');
      add.path(`M0 ${HATCH_STEP_PX / 2}h${HATCH_STEP_PX}`).addClass('hatch-line');
    });
    this.#svg.rect('100%', '100%').fill(this.#grain).addClass('paper-grain');
    this.#art = this.#svg.group().addClass('art');
    this.#outline = this.#svg.group().addClass('art');
    this.#margin = this.#svg.group().addClass('margin');
    this.#marks = this.#svg.group().addClass('marks');
  }

  /** Draws the shapes of a proof; `null` leaves the sheet empty. */
  showShapes(picture: Picture | null, report: Report | null): void {
    this.#art.clear();
    this.#outline.clear();
    this.#grainDeg = report?.endGrain.grainDeg ?? 0;
    if (picture === null || report === null) {
      return;
    }
    const fibre = fibreVector(radians(this.#grainDeg));
    const reachMm = report.bleed.blocks[0]?.travelMm.median ?? 0;
    const path = (data: string, name: string): void => {
      if (data !== '') {
        this.#art.path(data).addClass(name);
      }
    };
    path(picture.bleedWalls.map((wall) => combPath(wall, [fibre[0], fibre[1]], reachMm)).join(''), 'comb');
    path(ringsPath(picture.artwork), 'drawn');
    path(ringsPath(picture.cut), 'cut');
    this.#art.path(picture.standing.map(ringsPath).join('')).addClass('standing').fill(this.#hatch);
    path(picture.narrow.map((stroke) => linePath(stroke.path)).join(''), 'narrow');
    path(picture.bleedWalls.map(linePath).join(''), 'bleed-wall');
  }

  /** Draws the shown part, the margin and the flags. */
  showView(view: View, size: SheetSize, marks: readonly Mark[], unit: LengthUnit): void {
    const { widthPx, heightPx } = size;
    this.#svg.attr({ viewBox: `0 0 ${widthPx} ${heightPx}` });
    const [x, y] = view.atMm;
    const shift = `${widthPx / 2 - x * view.pxPerMm} ${heightPx / 2 - y * view.pxPerMm}`;
    for (const group of [this.#art, this.#outline]) {
      group.attr('transform', `translate(${shift}) scale(${view.pxPerMm})`);
    }
    // hatches keep their size on screen whatever the scale
    this.#hatch.attr('patternTransform', `scale(${1 / view.pxPerMm}) rotate(-45)`);
    this.#grain.attr('patternTransform', `translate(${shift}) rotate(${-this.#grainDeg})`);
    this.#showOutline(marks);
    drawMargin(this.#margin, view, size, this.#grainDeg, unit);
    drawMarks(this.#marks, marks, view, size);
  }

  #showOutline(marks: readonly Mark[]): void {
    this.#outline.clear();
    const chosen = marks.find((mark) => mark.rank === 'chosen');
    for (const line of chosen?.place.outline ?? []) {
      const data = linePath(line.flat());
      this.#outline.path(data).addClass('halo');
      this.#outline.path(data).addClass('chosen-outline');
    }
  }
}
