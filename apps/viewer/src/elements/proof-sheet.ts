import type { LengthUnit } from '@pourproof/plane';
import type { FindingEntry } from '@pourproof/wording';
import { type CSSResultGroup, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import type { Mark } from '../draw/draw-marks.ts';
import type { Layer } from '../draw/layer.ts';
import { SheetDrawing } from '../draw/sheet-drawing.ts';
import { SheetView } from '../draw/sheet-view.ts';
import { SheetGestures } from '../gestures/sheet-gestures.ts';
import { shared } from '../look/shared.ts';
import type { Selection } from '../model/selection.ts';
import type { SheetPicture } from '../model/sheet-picture.ts';
import { emit } from './emit.ts';
import { proofSheetLook } from './proof-sheet-look.ts';
import { sheetLook } from './sheet-look.ts';

const ZOOM_STEP = 1.5;
/** Size of letters for a reader who asks for nothing else, see the style of the page. */
const USUAL_LETTER_PX = 15;
const LAYERS: readonly (readonly [Layer, string])[] = [
  ['cut', 'Cut'],
  ['levelling', 'Levelling'],
];

/** The artwork on its sheet of paper: pans, zooms, and goes to the place that is chosen. */
export class ProofSheet extends LitElement {
  static override properties = {
    picture: { attribute: false },
    layer: {},
    entries: { attribute: false },
    selection: { attribute: false },
    unit: {},
  };
  static override styles: CSSResultGroup = [shared, sheetLook, proofSheetLook];

  declare picture: SheetPicture | null;
  declare layer: Layer;
  declare entries: readonly FindingEntry[];
  declare selection: Selection | null;
  declare unit: LengthUnit;

  #drawing: SheetDrawing | null = null;
  #marks: readonly Mark[] = [];
  readonly #view: SheetView = new SheetView(() => this.#show());
  readonly #gestures: SheetGestures = new SheetGestures(
    this.#view,
    () => this.#sheet(),
    (target) => this.#click(target),
  );
  /** Print shows the whole artwork, whatever the view on screen. */
  readonly #paper = matchMedia('print');
  readonly #print = (): void => {
    this.#marks = this.#marksNow();
    this.#show();
  };
  readonly #watch = new ResizeObserver(() => this.#resize());

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
    this.#view.stop();
    this.#drawing?.end();
  }

  protected override render(): TemplateResult {
    return html`<div class="frame">
      <div
        class="sheet"
        id="sheet"
        tabindex="0"
        role="application"
        aria-roledescription="proof sheet"
        aria-label=${this.#description()}
        @keydown=${(event: KeyboardEvent) => this.#gestures.key(event)}
        @wheel=${(event: WheelEvent) => this.#gestures.wheel(event)}
        @pointerdown=${(event: PointerEvent) => this.#gestures.press(event)}
        @pointermove=${(event: PointerEvent) => this.#gestures.drag(event)}
        @pointerup=${(event: PointerEvent) => this.#gestures.release(event)}
        @pointercancel=${(event: PointerEvent) => this.#gestures.release(event)}
      ></div>
      <div class="controls no-print">
      <div class="layers" role="group" aria-label="What the picture shows">
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
      <div class="zoom" role="group" aria-label="Zoom">
        <button type="button" aria-label="Zoom out" title="Zoom out (−)" @click=${() => this.zoom(1 / ZOOM_STEP)}>−</button>
        <button type="button" aria-label="Show all" title="Show all (0)" @click=${() => this.showAll()}>All</button>
        <button type="button" aria-label="Zoom in" title="Zoom in (+)" @click=${() => this.zoom(ZOOM_STEP)}>+</button>
      </div>
      </div>
    </div>`;
  }

  protected override firstUpdated(): void {
    const sheet = this.#sheet();
    this.#drawing = new SheetDrawing(sheet);
    this.#watch.observe(sheet);
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('picture') || changed.has('layer')) {
      this.#drawing?.showShapes(this.picture, this.layer);
      this.#view.setBounds(this.picture?.boundsMm ?? [0, 0, 0, 0]);
    }
    this.#marks = this.#marksNow();
    if (changed.has('selection') && this.selection !== null) {
      this.#goToPlace(this.selection);
    }
    this.#show();
  }

  /** Zooms about the middle of the sheet. */
  zoom(factor: number): void {
    this.#view.zoom(factor);
  }

  /** Shows the whole artwork. */
  showAll(): void {
    this.#view.showAll();
  }

  #sheet(): HTMLElement {
    return this.renderRoot.querySelector('#sheet') as HTMLElement;
  }

  #description(): string {
    const places = this.entries.reduce((sum, entry) => sum + entry.places.length, 0);
    const marks = places === 0 ? 'no marks' : `${places} marked ${places === 1 ? 'place' : 'places'}`;
    return `Picture of the artwork with ${marks}. Arrow keys move it, plus and minus zoom, 0 shows all.`;
  }

  #marksNow(): readonly Mark[] {
    const selection = this.#paper.matches ? null : this.selection;
    // while a finding is open only its marks show; the levelling layer shows none but those
    const isShown = selection === null ? this.layer === 'cut' : null;
    return this.entries
      .filter(({ id }) => isShown ?? id === selection?.code)
      .flatMap((entry) =>
        entry.places.map((place, k): Mark => {
          const isOpen = entry.id === selection?.code;
          return { place, rank: isOpen ? (k === selection?.place ? 'chosen' : 'open') : 'other' };
        }),
      );
  }

  #show(): void {
    const view = this.#paper.matches ? this.#view.whole : this.#view.view;
    this.#drawing?.showView(view, this.#view.size, this.#marks, this.unit, this.#paper.matches);
    this.#sheet().classList.toggle('close', this.#view.isClose);
  }

  #resize(): void {
    const { clientWidth, clientHeight } = this.#sheet();
    if (clientWidth > 0 && clientHeight > 0) {
      const letterPx = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
      this.#view.setSize({
        widthPx: clientWidth,
        heightPx: clientHeight,
        lettersBy: letterPx / USUAL_LETTER_PX,
      });
    }
  }

  #goToPlace({ code, place }: Selection): void {
    const chosen = this.entries.find((entry) => entry.id === code)?.places[place];
    if (chosen !== undefined) {
      this.#view.goTo(chosen.atMm, chosen.outline);
    }
  }

  /** Opens the finding of a flag at the place that it marks. */
  #click(target: Element): void {
    const label = target.closest('[data-label]')?.getAttribute('data-label');
    for (const { id: code, places } of this.entries) {
      const place = places.findIndex((each) => each.label === label);
      if (place >= 0) {
        emit(this, 'place-chosen', { code, place });
      }
    }
  }
}

customElements.define('proof-sheet', ProofSheet);
