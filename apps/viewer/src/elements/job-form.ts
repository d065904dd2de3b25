import { cutterSizes, defaultMaterials } from '@pourproof/materials';
import { MeasureError, parseMeasure, type Quantity } from '@pourproof/plane';
import { type JobFile, parseBit } from '@pourproof/proof';
import { type CSSResultGroup, html, LitElement, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { shared } from '../look/shared.ts';
import { emit, type PageEvents } from './emit.ts';
import { jobFormLook } from './job-form-look.ts';

/** The job ticket: bits, depth, wood, fibres, seal and resin. */
export class JobForm extends LitElement {
  static override properties = { job: { attribute: false }, problems: { state: true } };
  static override styles: CSSResultGroup = [shared, jobFormLook];

  declare job: Partial<JobFile>;
  /** What is wrong with a field, by its name, and what was typed there, which stays until it is put right. */
  declare problems: ReadonlyMap<string, { readonly text: string; readonly message: string }>;

  constructor() {
    super();
    this.job = {};
    this.problems = new Map();
  }

  protected override render(): TemplateResult {
    const { job } = this;
    const units = job.units ?? 'mm';
    const isSealed = (job.seal ?? 'none') !== 'none';
    return html`
      <form @submit=${(event: Event) => event.preventDefault()} novalidate>
        ${this.#bits(job.bit ?? [])}
        ${this.#measure('depth', 'Depth of the pocket', job.depth ?? '', 'length')}
        ${this.#choice('wood', 'Wood', job.wood ?? 'maple', names(defaultMaterials.woods))}
        <label class="tick">
          <input
            type="checkbox"
            name="oiled"
            .checked=${live(job.oiled ?? false)}
            @change=${(event: Event) => this.#tell({ oiled: (event.target as HTMLInputElement).checked })}
          />
          This board was oiled or waxed
        </label>
        ${this.#grain()}
        ${this.#choice('seal', 'Seal before the colour', job.seal ?? 'none', names(defaultMaterials.sealers))}
        <div class="pair" ?hidden=${!isSealed}>
          <label>
            Coats
            <input
              type="number"
              name="coats"
              min="1"
              max="10"
              .value=${live(String(job.coats ?? 1))}
              @change=${this.#coats}
            />
          </label>
          ${this.#measure('sealHours', 'Left before the pour', job.sealHours ?? '24h', 'time')}
        </div>
        ${this.#choice('resin', 'Resin', job.resin ?? 'coating', names(defaultMaterials.resins))}
        ${this.#measure('width', 'Width of the artwork, if not as drawn', job.width ?? '', 'length')}
        ${this.#scale()}
        <fieldset class="units">
          <legend>Show sizes in</legend>
          ${(['mm', 'in'] as const).map(
            (unit) => html`<label>
              <input
                type="radio"
                name="units"
                value=${unit}
                .checked=${live(units === unit)}
                @change=${() => this.#tell({ units: unit })}
              />
              ${unit === 'mm' ? 'millimetres' : 'inches'}
            </label>`,
          )}
        </fieldset>
      </form>
    `;
  }

  #bits(bits: readonly string[]): TemplateResult {
    return html`
      <fieldset>
        <legend>Flat bits, in the order of use</legend>
        ${bits.map(
          (bit, k) => html`<div class="bit">
            <input
              id="bit-${k}"
              name="bit-${k}"
              aria-label="Diameter of bit ${k + 1}"
              list="sizes"
              autocomplete="off"
              .value=${live(this.#typed(`bit-${k}`) ?? shownBit(bit))}
              aria-invalid=${this.problems.has(`bit-${k}`)}
              aria-describedby="bit-${k}-problem"
              @change=${(event: Event) => this.#changeBit(k, event)}
            />
            <button
              type="button"
              aria-label="Take bit ${k + 1} off"
              ?disabled=${bits.length < 2}
              @click=${() => this.#takeOff(k)}
            >
              ×
            </button>
            ${this.#problem(`bit-${k}`)}
          </div>`,
        )}
        <button type="button" @click=${() => this.#tell({ bit: [...bits, smallerBit(bits)] })}>Add a bit</button>
        <datalist id="sizes">
          ${cutterSizes.value
            .filter(({ shape }) => shape === 'flat')
            .map(({ label }) => html`<option value=${label}></option>`)}
        </datalist>
      </fieldset>
    `;
  }

  #measure(
    name: 'depth' | 'sealHours' | 'width',
    label: string,
    value: string,
    quantity: Quantity,
  ): TemplateResult {
    return html`
      <div class="field">
        <label for=${name}>${label}</label>
        <input
          id=${name}
          name=${name}
          autocomplete="off"
          .value=${live(this.#typed(name) ?? value)}
          aria-invalid=${this.problems.has(name)}
          aria-describedby="${name}-problem"
          @change=${(event: Event) => {
            const text = typed(event);
            // only the width may be left empty, for the size that the file has
            const isEmpty = name === 'width' && text === '';
            if (this.#check(name, text, () => isEmpty || positive(text, quantity))) {
              this.#tell({ [name]: isEmpty ? undefined : text });
            }
          }}
        />
        ${this.#problem(name)}
      </div>
    `;
  }

  #choice(
    name: 'wood' | 'seal' | 'resin',
    label: string,
    value: string,
    options: readonly (readonly [id: string, name: string])[],
  ): TemplateResult {
    return html`
      <label>
        ${label}
        <select name=${name} @change=${(event: Event) => this.#tell({ [name]: typed(event) })}>
          ${options.map(
            ([id, title]) => html`<option value=${id} .selected=${live(id === value)}>${title}</option>`,
          )}
        </select>
      </label>
    `;
  }

  #grain(): TemplateResult {
    const degrees = this.#grainDeg();
    const change = (event: Event): void => {
      const value = Number((event.target as HTMLInputElement).value);
      if (this.#check('grain', typed(event), () => finite(value, typed(event)))) {
        this.#tell({ grain: `${value}deg` });
      }
    };
    return html`
      <fieldset>
        <legend>Fibres, turned from the artwork’s x axis</legend>
        <div class="grain">
          <input
            type="range"
            name="grain-slider"
            min="0"
            max="175"
            step="5"
            aria-label="Fibres, slider, degrees counter-clockwise"
            .value=${live(String(((degrees % 180) + 180) % 180))}
            @change=${change}
          />
          <input
            type="number"
            name="grain"
            step="1"
            aria-label="Fibres, degrees counter-clockwise"
            .value=${live(String(degrees))}
            aria-invalid=${this.problems.has('grain')}
            aria-describedby="grain-problem"
            @change=${change}
          />
          <span aria-hidden="true">°</span>
        </div>
        ${this.#problem('grain')}
      </fieldset>
    `;
  }

  #scale(): TemplateResult | typeof nothing {
    const { scale } = this.job;
    return scale === undefined
      ? nothing
      : html`<p class="scaled">
          Artwork scaled by ${scale}
          <button type="button" @click=${() => this.#tell({ scale: undefined })}>As drawn</button>
        </p>`;
  }

  #problem(name: string): TemplateResult {
    return html`<span class="problem" id="${name}-problem" role="alert">${this.problems.get(name)?.message ?? ''}</span>`;
  }

  #typed(name: string): string | undefined {
    return this.problems.get(name)?.text;
  }

  #grainDeg(): number {
    return Number(parseMeasure(this.job.grain ?? '0deg', 'angle').value.toFixed(3));
  }

  #changeBit(k: number, event: Event): void {
    const text = typed(event);
    const bit = text.includes(':') ? text : `flat:${text}`;
    if (this.#check(`bit-${k}`, text, () => parseBit(bit))) {
      this.#tell({ bit: (this.job.bit ?? []).with(k, bit) });
    }
  }

  #takeOff(k: number): void {
    // the bits after it move up, and what was typed for one must not show at another
    this.problems = new Map([...this.problems].filter(([name]) => !name.startsWith('bit-')));
    this.#tell({ bit: (this.job.bit ?? []).filter((_, other) => other !== k) });
  }

  #coats(event: Event): void {
    const coats = Math.round(Number(typed(event)));
    this.#tell({ coats: Math.min(Math.max(Number.isFinite(coats) ? coats : 1, 1), 10) });
    this.requestUpdate();
  }

  /** Whether a typed value can be read; if not, the field says why and the job stays. */
  #check(name: string, text: string, read: () => unknown): boolean {
    const problems = new Map(this.problems);
    problems.delete(name);
    try {
      read();
    } catch (error) {
      if (!(error instanceof MeasureError)) {
        throw error;
      }
      problems.set(name, { text, message: error.message });
    }
    this.problems = problems;
    return !problems.has(name);
  }

  #tell(part: PageEvents['job-changed']): void {
    emit(this, 'job-changed', part);
  }
}

function names(
  rows: Readonly<Record<string, { readonly name: string }>>,
): readonly (readonly [string, string])[] {
  return Object.entries(rows).map(([id, { name }]) => [id, name]);
}

function typed(event: Event): string {
  return (event.target as HTMLInputElement | HTMLSelectElement).value.trim();
}

function shownBit(bit: string): string {
  return bit.startsWith('flat:') ? bit.slice('flat:'.length) : bit;
}

/** The next smaller common flat bit in the unit of the last one, as typed; the last one again where there is none. */
function smallerBit(bits: readonly string[]): string {
  const last = parseBit(bits.at(-1) ?? 'flat:1/8in');
  const isInch = (bits.at(-1) ?? '').endsWith('in');
  const next = cutterSizes.value
    .filter(({ shape, label }) => shape === 'flat' && label.endsWith('in') === isInch)
    .filter(({ diameterMm }) => diameterMm < last.diameterMm)
    .toSorted((a, b) => b.diameterMm - a.diameterMm)[0];
  return next === undefined ? (bits.at(-1) ?? 'flat:1/8in') : `flat:${next.label}`;
}

function positive(text: string, quantity: Quantity): void {
  if (!(parseMeasure(text, quantity).value > 0)) {
    throw new MeasureError(`"${text}" is not above 0.`);
  }
}

function finite(value: number, text: string): void {
  if (text === '' || !Number.isFinite(value)) {
    throw new MeasureError('Type the angle as a number of degrees.');
  }
}

customElements.define('job-form', JobForm);
