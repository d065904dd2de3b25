import type { LengthUnit } from '@pourproof/plane';
import type { Proof } from '@pourproof/proof';
import { html, type PropertyValues, type TemplateResult } from 'lit';
import { ProofDrawing } from '../draw/proof-drawing.ts';
import { LightElement } from './light-element.ts';

const ZOOM_STEP = 1.25;
const PAN_STEP = 0.1;

/** The drawn proof on its sheet of paper; keys + − 0 and the arrows zoom and move it. */
export class ProofSheet extends LightElement {
  static override properties = {
    proof: { attribute: false },
    unit: { type: String },
    grainDeg: { type: Number },
    finding: { type: Number },
    place: { type: Number },
  };

  declare proof: Proof | null;
  declare unit: LengthUnit;
  declare grainDeg: number;
  declare finding: number;
  declare place: number;
  #drawing: ProofDrawing | null = null;

  protected override firstUpdated(): void {
    const host = this.querySelector<HTMLElement>('.sheet-picture');
    if (host !== null) {
      this.#drawing = new ProofDrawing(host, (finding, place) => this.tell('choose', [finding, place]));
      this.#draw(true);
    }
  }

  protected override updated(changed: PropertyValues): void {
    const isNew = changed.has('proof') && !sameBounds(changed.get('proof') as Proof | null, this.proof);
    this.#draw(isNew);
    if (changed.has('finding') || changed.has('place')) {
      this.#drawing?.showPlace(this.finding, this.place);
    }
  }

  #draw(fit: boolean): void {
    if (this.proof === null) {
      this.#drawing?.clear();
      return;
    }
    this.#drawing?.draw(this.proof, {
      unit: this.unit,
      grainDeg: this.grainDeg,
      chosen: this.finding,
      place: this.place,
    });
    if (fit) {
      this.#drawing?.fit();
    }
  }

  #key(event: KeyboardEvent): void {
    const acts: Readonly<Record<string, () => void>> = {
      '+': () => this.#drawing?.zoom(ZOOM_STEP),
      '=': () => this.#drawing?.zoom(ZOOM_STEP),
      '-': () => this.#drawing?.zoom(1 / ZOOM_STEP),
      '0': () => this.#drawing?.fit(),
      ArrowLeft: () => this.#drawing?.pan(-PAN_STEP, 0),
      ArrowRight: () => this.#drawing?.pan(PAN_STEP, 0),
      ArrowUp: () => this.#drawing?.pan(0, -PAN_STEP),
      ArrowDown: () => this.#drawing?.pan(0, PAN_STEP),
    };
    const act = acts[event.key];
    if (act !== undefined && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      act();
    }
  }

  protected override render(): TemplateResult {
    return html`
      <figure class="sheet">
        <!-- a picture that is moved and zoomed by keys: role application hands the keys to it -->
        <div
          class="sheet-picture"
          tabindex="0"
          role="application"
          aria-label="The proof, drawn. Plus and minus zoom, 0 shows all, arrow keys move."
          @keydown=${(event: KeyboardEvent) => this.#key(event)}
        ></div>
        <p class="row sheet-tools">
          <button type="button" aria-label="Zoom in" @click=${() => this.#drawing?.zoom(ZOOM_STEP)}>+</button>
          <button type="button" aria-label="Zoom out" @click=${() => this.#drawing?.zoom(1 / ZOOM_STEP)}>−</button>
          <button type="button" @click=${() => this.#drawing?.fit()}>Show all</button>
        </p>
        <figcaption class="legend">
          <span><i class="swatch swatch-cut"></i>will be cut</span>
          <span><i class="swatch swatch-standing"></i>stays wood</span>
          <span><i class="swatch swatch-narrow"></i>stroke narrower than the bit</span>
          <span><i class="swatch swatch-bleed"></i>wall at high bleed risk</span>
          <span><i class="swatch swatch-fibre"></i>fibres</span>
        </figcaption>
      </figure>
    `;
  }
}

function sameBounds(a: Proof | null | undefined, b: Proof | null): boolean {
  return a?.picture.boundsMm.join() === b?.picture.boundsMm.join();
}
