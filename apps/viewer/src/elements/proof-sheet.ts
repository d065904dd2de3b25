import type { Bounds, LengthUnit, Point } from '@pourproof/plane';
import type { Picture } from '@pourproof/proof';
import type { FindingEntry } from '@pourproof/wording';
import { type CSSResultGroup, css, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import type { Mark } from '../draw/draw-marks.ts';
import type { Layer } from '../draw/layer.ts';
import { SheetDrawing } from '../draw/sheet-drawing.ts';
import {
  fittingView,
  type SheetSize,
  USUAL_PX_PER_MM,
  type View,
  viewBetween,
  zoomedView,
} from '../draw/view.ts';
import { shared } from '../look/shared.ts';
import type { Selection } from '../proof-controller.ts';
import { emit } from './emit.ts';
import { sheetLook } from './sheet-look.ts';

const ZOOM_STEP = 1.5;
const PAN_STEP_PX = 60;
const GLIDE_MS = 350;
const LAYERS: readonly (readonly [Layer, string])[] = [
  ['cut', 'Cut'],
  ['levelling', 'Levelling'],
];
/** Minimum margin around a chosen place, mm. */
const PLACE_MARGIN_MM = 5;
/** A view at most this much closer than the one that fits still counts as showing all. */
const FIT_SLACK = 1.05;
/** The farthest view is a quarter of the scale that fits; at the closest, a micrometre is 2 px. */
const MIN_OF_FIT = 0.25;
const MAX_PX_PER_MM = 2000;
/** Zoom for each px of the wheel, and of a pinch on a touchpad, as powers of e. */
const WHEEL_RATE = 0.0015;
const PINCH_RATE = 0.01;
/** A pointer that moves no farther than this, px, has clicked. */
const CLICK_SLACK_PX = 4;

/** The artwork on its sheet of paper: pans, zooms, and goes to the place that is chosen. */
export class ProofSheet extends LitElement {
  static override properties = {
    picture: { attribute: false },
    layer: {},
    entries: { attribute: false },
    selection: { attribute: false },
    unit: {},
  };
  static override styles: CSSResultGroup = [
    shared,
    sheetLook,
    css`
      :host {
        position: relative;
        min-height: 0;
      }
      .sheet {
        position: absolute;
        inset: 0;
        overflow: hidden;
        background: var(--paper);
        cursor: grab;
        touch-action: pan-y;
      }
      .sheet.close {
        touch-action: none;
      }
      .sheet:active {
        cursor: grabbing;
      }
      .sheet:focus-visible {
        outline-offset: -3px;
      }
      svg {
        display: block;
        width: 100%;
        height: 100%;
        user-select: none;
        -webkit-user-select: none;
      }
      .zoom,
      .layers {
        position: absolute;
        top: 0.6rem;
        display: flex;
      }
      .zoom {
        right: 0.6rem;
      }
      .layers {
        left: 0.6rem;
      }
      .layers button {
        padding: 0.2rem 0.6rem;
        margin-right: -1px;
      }
      .layers button[aria-pressed='true'] {
        background: var(--ink);
        color: #fff;
      }
      .zoom button {
        min-width: 2.3rem;
        padding: 0.2rem 0.5rem;
        margin-left: -1px;
      }
      @media (max-width: 759px) {
        /* the controls would cover too much of a small sheet */
        .sheet {
          top: 2.9rem;
          border-top: 1px solid var(--rule);
        }
        .zoom,
        .layers {
          top: 0.4rem;
        }
      }
      @media print {
        .sheet {
          position: static;
        }
        svg {
          height: auto;
          max-height: 120mm;
        }
        .everywhere {
          display: none;
        }
      }
    `,
  ];

  declare picture: Picture | null;
  declare layer: Layer;
  declare entries: readonly FindingEntry[];
  declare selection: Selection | null;
  declare unit: LengthUnit;

  #drawing: SheetDrawing | null = null;
  #view: View = { atMm: [0, 0], pxPerMm: USUAL_PX_PER_MM };
  #size: SheetSize = { widthPx: 600, heightPx: 400 };
  #fitted = '';
  #glide = 0;
  /** Print shows the whole artwork, whatever the view on screen. */
  readonly #paper = matchMedia('print');
  readonly #print = (): void => this.#show();
  readonly #watch = new ResizeObserver(() => this.#resize());
  readonly #pointers = new Map<number, Point>();
  #moved = 0;

  constructor() {
    super();
    this.picture = null;
    this.layer = 'cut';
    this.entries = [];
    this.selection = null;
    this.unit = 'mm';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#paper.addEventListener('change', this.#print);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#paper.removeEventListener('change', this.#print);
    this.#watch.disconnect();
    cancelAnimationFrame(this.#glide);
  }

  protected override render(): TemplateResult {
    return html`
      <div
        class="sheet"
        id="sheet"
        tabindex="0"
        role="application"
        aria-roledescription="proof sheet"
        aria-label=${this.#description()}
        @keydown=${this.#key}
        @wheel=${this.#wheel}
        @pointerdown=${this.#press}
        @pointermove=${this.#drag}
        @pointerup=${this.#release}
        @pointercancel=${this.#release}
      ></div>
      <div class="layers no-print" role="group" aria-label="What the picture shows">
        ${LAYERS.map(
          ([layer, name]) => html`<button
            type="button"
            aria-pressed=${layer === this.layer}
            @click=${() => emit(this, 'layer-chosen', layer)}
          >
            ${name}
          </button>`,
        )}
      </div>
      <div class="zoom no-print" role="group" aria-label="Zoom">
        <button type="button" aria-label="Zoom out" title="Zoom out (−)" @click=${() => this.zoom(1 / ZOOM_STEP)}>−</button>
        <button type="button" aria-label="Show all" title="Show all (0)" @click=${() => this.showAll()}>All</button>
        <button type="button" aria-label="Zoom in" title="Zoom in (+)" @click=${() => this.zoom(ZOOM_STEP)}>+</button>
      </div>
    `;
  }

  protected override firstUpdated(): void {
    const sheet = this.#sheet();
    this.#drawing = new SheetDrawing(sheet);
    this.#watch.observe(sheet);
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('picture') || changed.has('layer')) {
      this.#drawing?.showShapes(this.picture, this.layer);
      const bounds = this.#bounds();
      if (this.#fitted !== bounds.join(' ')) {
        this.#fitted = bounds.join(' ');
        this.#view = fittingView(bounds, this.#size);
      }
    }
    if (changed.has('selection') && this.selection !== null) {
      this.#goToPlace();
    }
    this.#show();
  }

  /** Zooms about the middle of the sheet. */
  zoom(factor: number): void {
    this.#zoomAt(factor, [this.#size.widthPx / 2, this.#size.heightPx / 2]);
  }

  /** Shows the whole artwork. */
  showAll(): void {
    this.#glideTo(fittingView(this.#bounds(), this.#size));
  }

  #sheet(): HTMLElement {
    return this.renderRoot.querySelector('#sheet') as HTMLElement;
  }

  #bounds(): Bounds {
    return this.picture?.boundsMm ?? [0, 0, 0, 0];
  }

  #description(): string {
    const places = this.entries.reduce((sum, entry) => sum + entry.places.length, 0);
    const marks = places === 0 ? 'no marks' : `${places} marked ${places === 1 ? 'place' : 'places'}`;
    return `Picture of the artwork with ${marks}. Arrow keys move it, plus and minus zoom, 0 shows all.`;
  }

  #marks(): readonly Mark[] {
    const selection = this.#paper.matches ? null : this.selection;
    // while a finding is open only its marks show; the levelling layer shows none but those
    const isShown = selection === null ? this.layer === 'cut' : null;
    return this.entries
      .filter(({ code }) => isShown ?? code === selection?.code)
      .flatMap((entry) =>
        entry.places.map((place, k): Mark => {
          const isOpen = entry.code === selection?.code;
          return { place, rank: isOpen ? (k === selection?.place ? 'chosen' : 'open') : 'other' };
        }),
      );
  }

  #show(): void {
    const whole = fittingView(this.#bounds(), this.#size);
    this.#drawing?.showView(this.#paper.matches ? whole : this.#view, this.#size, this.#marks(), this.unit);
    const isClose = this.#view.pxPerMm > FIT_SLACK * whole.pxPerMm;
    this.#sheet().classList.toggle('close', isClose);
  }

  #resize(): void {
    const { clientWidth, clientHeight } = this.#sheet();
    if (clientWidth > 0 && clientHeight > 0) {
      const fit = fittingView(this.#bounds(), this.#size).pxPerMm;
      this.#size = { widthPx: clientWidth, heightPx: clientHeight };
      const now = fittingView(this.#bounds(), this.#size);
      // a whole view stays whole; a close one keeps its place
      this.#view = this.#view.pxPerMm <= FIT_SLACK * fit ? now : this.#view;
      this.#show();
    }
  }

  #goToPlace(): void {
    const entry = this.entries.find(({ code }) => code === this.selection?.code);
    const place = entry?.places[this.selection?.place ?? 0];
    if (place === undefined) {
      return;
    }
    const points = [place.atMm, ...place.outline.flat()];
    const xs = points.map(([x]) => x);
    const ys = points.map(([, y]) => y);
    const [x, y] = place.atMm;
    const half = (values: readonly number[], at: number): number =>
      PLACE_MARGIN_MM + values.reduce((max, value) => Math.max(max, Math.abs(value - at)), 0);
    const [w, h] = [half(xs, x), half(ys, y)];
    const close = fittingView([x - w, y - h, x + w, y + h], this.#size);
    const all = fittingView(this.#bounds(), this.#size);
    this.#glideTo({ atMm: [x, y], pxPerMm: Math.max(close.pxPerMm, all.pxPerMm) });
  }

  #glideTo(to: View): void {
    cancelAnimationFrame(this.#glide);
    const from = this.#view;
    const start = performance.now();
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
      this.#view = to;
      this.#show();
      return;
    }
    const step = (now: number): void => {
      const share = Math.min((now - start) / GLIDE_MS, 1);
      this.#view = share === 1 ? to : viewBetween(from, to, share * share * (3 - 2 * share));
      this.#show();
      if (share < 1) {
        this.#glide = requestAnimationFrame(step);
      }
    };
    this.#glide = requestAnimationFrame(step);
  }

  #zoomAt(factor: number, at: Point): void {
    cancelAnimationFrame(this.#glide);
    const all = fittingView(this.#bounds(), this.#size).pxPerMm;
    const scale = Math.min(Math.max(this.#view.pxPerMm * factor, MIN_OF_FIT * all), MAX_PX_PER_MM);
    this.#view = zoomedView(this.#view, scale / this.#view.pxPerMm, at, this.#size);
    this.#show();
  }

  #pan(dx: number, dy: number): void {
    cancelAnimationFrame(this.#glide);
    const { atMm, pxPerMm } = this.#view;
    this.#view = { atMm: [atMm[0] - dx / pxPerMm, atMm[1] - dy / pxPerMm], pxPerMm };
    this.#show();
  }

  #key(event: KeyboardEvent): void {
    const pans: Readonly<Record<string, Point>> = {
      ArrowLeft: [PAN_STEP_PX, 0],
      ArrowRight: [-PAN_STEP_PX, 0],
      ArrowUp: [0, PAN_STEP_PX],
      ArrowDown: [0, -PAN_STEP_PX],
    };
    const pan = pans[event.key];
    if (pan !== undefined && !event.altKey && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      this.#pan(...(pan as [number, number]));
    }
  }

  #wheel(event: WheelEvent): void {
    event.preventDefault();
    const box = this.#sheet().getBoundingClientRect();
    const at: Point = [event.clientX - box.left, event.clientY - box.top];
    // browsers report a pinch on a touchpad as a wheel with Ctrl held
    this.#zoomAt(Math.exp(-event.deltaY * (event.ctrlKey ? PINCH_RATE : WHEEL_RATE)), at);
  }

  #press(event: PointerEvent): void {
    this.#pointers.set(event.pointerId, [event.clientX, event.clientY]);
    this.#moved = 0;
  }

  #drag(event: PointerEvent): void {
    const before = this.#pointers.get(event.pointerId);
    if (before === undefined || (event.pointerType === 'mouse' && event.buttons === 0)) {
      this.#pointers.delete(event.pointerId);
      return;
    }
    const now: Point = [event.clientX, event.clientY];
    this.#moved += Math.hypot(now[0] - before[0], now[1] - before[1]);
    const other = [...this.#pointers].find(([id]) => id !== event.pointerId)?.[1];
    if (other !== undefined) {
      const span = (p: Point): number => Math.hypot(p[0] - other[0], p[1] - other[1]);
      const box = this.#sheet().getBoundingClientRect();
      const middle: Point = [(now[0] + other[0]) / 2 - box.left, (now[1] + other[1]) / 2 - box.top];
      this.#zoomAt(span(now) / Math.max(span(before), 1), middle);
    }
    const share = other === undefined ? 1 : 0.5;
    if (this.#moved > CLICK_SLACK_PX) {
      this.#sheet().setPointerCapture(event.pointerId);
      this.#pan((now[0] - before[0]) * share, (now[1] - before[1]) * share);
    }
    this.#pointers.set(event.pointerId, now);
  }

  #release(event: PointerEvent): void {
    this.#pointers.delete(event.pointerId);
    const flag = event.target instanceof Element ? event.target.closest('[data-label]') : null;
    const label = flag?.getAttribute('data-label');
    if (
      event.type === 'pointerup' &&
      this.#moved <= CLICK_SLACK_PX &&
      label !== null &&
      label !== undefined
    ) {
      for (const { code, places } of this.entries) {
        const place = places.findIndex((each) => each.label === label);
        if (place >= 0) {
          emit(this, 'place-chosen', { code, place });
        }
      }
    }
  }
}

customElements.define('proof-sheet', ProofSheet);
