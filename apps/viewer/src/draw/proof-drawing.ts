import { type Bounds, isEmptyBounds, type LengthUnit } from '@pourproof/plane';
import type { Proof } from '@pourproof/proof';
import { type G, SVG, type Svg } from '@svgdotjs/svg.js';
import { drawFibres } from './fibres.ts';
import { drawLayers } from './layers.ts';
import { drawMarks } from './marks.ts';
import { definePatterns } from './patterns.ts';
import { drawScaleBar } from './scale-bar.ts';

/** What is drawn beside the proof itself. */
export interface DrawingOptions {
  readonly unit: LengthUnit;
  readonly grainDeg: number;
  /** Chosen finding and place; -1 for none. */
  readonly chosen: number;
  readonly place: number;
}

/** Paper left free around the artwork, as a share of its larger side. */
const MARGIN = 0.06;
/** A chosen place is shown with at least this much around it, mm. */
const PLACE_SIZE_MM = 14;
/** Zoom goes no further than this, mm across. */
const CLOSEST_MM = 1;

/** The drawing of a proof in mm, with its own view; marks and bars keep their size on screen. */
export class ProofDrawing {
  readonly #svg: Svg;
  readonly #layers: G;
  readonly #marks: G;
  readonly #bar: G;
  readonly #onChoose: (finding: number, place: number) => void;
  #proof: Proof | null = null;
  #options: DrawingOptions = { unit: 'mm', grainDeg: 0, chosen: -1, place: 0 };
  /** Shown part of the artwork: left, top, width, height in mm. */
  #view: [number, number, number, number] = [0, 0, 100, 100];

  constructor(host: HTMLElement, onChoose: (finding: number, place: number) => void) {
    this.#onChoose = onChoose;
    this.#svg = SVG().addTo(host).size('100%', '100%');
    this.#svg.attr({ preserveAspectRatio: 'xMidYMid meet', 'aria-hidden': 'true' });
    definePatterns(this.#svg);
    this.#layers = this.#svg.group();
    this.#marks = this.#svg.group();
    this.#bar = this.#svg.group();
    this.#followPointer(host);
    new ResizeObserver(() => this.#showView()).observe(host);
  }

  /** Empties the sheet. */
  clear(): void {
    this.#proof = null;
    for (const group of [this.#layers, this.#marks, this.#bar]) {
      group.clear();
    }
  }

  /** Draws a proof; the view stays where it is. */
  draw(proof: Proof, options: DrawingOptions): void {
    const isNew = proof !== this.#proof || options.grainDeg !== this.#options.grainDeg;
    this.#proof = proof;
    this.#options = options;
    if (isNew) {
      this.#layers.clear();
      drawLayers(this.#layers, proof, options.grainDeg);
    }
    this.#showView();
  }

  /** Shows all of the artwork. */
  fit(): void {
    const bounds = this.#proof?.picture.boundsMm;
    if (bounds === undefined || isEmptyBounds(bounds)) {
      return;
    }
    const margin = MARGIN * Math.max(bounds[2] - bounds[0], bounds[3] - bounds[1], 1);
    this.#show(bounds, margin);
  }

  /** Brings a place of a finding into view. */
  showPlace(finding: number, place: number): void {
    const where = this.#proof?.report.findings[finding]?.where[place];
    if (where === undefined) {
      return;
    }
    const points = [where.atMm, ...where.outline.flat()];
    const xs = points.map((point) => point[0]);
    const ys = points.map((point) => point[1]);
    const bounds: Bounds = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
    const size = Math.max(bounds[2] - bounds[0], bounds[3] - bounds[1]);
    this.#show(bounds, Math.max(size / 2, (PLACE_SIZE_MM - size) / 2));
  }

  /** Zooms about the middle of the view, or about a point of it given as shares of width and height. */
  zoom(factor: number, atX = 0.5, atY = 0.5): void {
    const [x, y, width, height] = this.#view;
    const newWidth = Math.max(CLOSEST_MM, width / factor);
    const newHeight = (height * newWidth) / width;
    this.#view = [x + (width - newWidth) * atX, y + (height - newHeight) * atY, newWidth, newHeight];
    this.#showView();
  }

  /** Moves the view by shares of its size. */
  pan(dx: number, dy: number): void {
    const [x, y, width, height] = this.#view;
    this.#view = [x + dx * width, y + dy * height, width, height];
    this.#showView();
  }

  #show(bounds: Bounds, margin: number): void {
    this.#view = [
      bounds[0] - margin,
      bounds[1] - margin,
      bounds[2] - bounds[0] + 2 * margin,
      bounds[3] - bounds[1] + 2 * margin,
    ];
    this.#showView();
  }

  #showView(): void {
    const [x, y, width, height] = this.#view;
    this.#svg.viewbox(x, y, width, height);
    this.#marks.clear();
    this.#bar.clear();
    if (this.#proof === null) {
      return;
    }
    const mmPerPx = this.#mmPerPx();
    const { chosen, place, unit, grainDeg } = this.#options;
    drawMarks(this.#marks, this.#proof.report.findings, { mmPerPx, chosen, place, onChoose: this.#onChoose });
    const box = this.#visibleBox(mmPerPx);
    drawScaleBar(this.#bar, box, mmPerPx, unit);
    drawFibres(this.#bar, box, mmPerPx, grainDeg);
  }

  /** Millimetres under one pixel of the screen; the view keeps its shape, so the tighter side counts. */
  #mmPerPx(): number {
    const { clientWidth, clientHeight } = this.#svg.node;
    const [, , width, height] = this.#view;
    return Math.max(width / Math.max(1, clientWidth), height / Math.max(1, clientHeight));
  }

  /** What is really on screen, which is more than the view where their shapes differ. */
  #visibleBox(mmPerPx: number): Bounds {
    const { clientWidth, clientHeight } = this.#svg.node;
    const [x, y, width, height] = this.#view;
    const halfWidth = (clientWidth * mmPerPx) / 2;
    const halfHeight = (clientHeight * mmPerPx) / 2;
    const midX = x + width / 2;
    const midY = y + height / 2;
    return [midX - halfWidth, midY - halfHeight, midX + halfWidth, midY + halfHeight];
  }

  #followPointer(host: HTMLElement): void {
    let last: { x: number; y: number } | null = null;
    host.addEventListener('pointerdown', (event) => {
      if (event.target instanceof Element && event.target.closest('.mark') !== null) {
        return;
      }
      last = { x: event.clientX, y: event.clientY };
      host.setPointerCapture(event.pointerId);
    });
    host.addEventListener('pointermove', (event) => {
      if (last === null) {
        return;
      }
      const mmPerPx = this.#mmPerPx();
      const [, , width, height] = this.#view;
      this.pan(((last.x - event.clientX) * mmPerPx) / width, ((last.y - event.clientY) * mmPerPx) / height);
      last = { x: event.clientX, y: event.clientY };
    });
    for (const end of ['pointerup', 'pointercancel'] as const) {
      host.addEventListener(end, () => {
        last = null;
      });
    }
    host.addEventListener(
      'wheel',
      (event) => {
        // a plain wheel scrolls the page; with Ctrl (or a pinch on a touch pad) it zooms
        if (event.ctrlKey) {
          event.preventDefault();
          const box = host.getBoundingClientRect();
          this.zoom(
            Math.exp(-event.deltaY / 200),
            (event.clientX - box.left) / box.width,
            (event.clientY - box.top) / box.height,
          );
        }
      },
      { passive: false },
    );
  }
}
