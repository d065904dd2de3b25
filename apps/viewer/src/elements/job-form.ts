import { cutterSizes, sealers, woods } from '@pourproof/materials';
import type { JobFile } from '@pourproof/proof';
import { html, type TemplateResult } from 'lit';
import { LightElement } from './light-element.ts';

const MOST_BITS = 4;

/** The settings of the job; tells `change-job` with the keys that changed and `resize` with a width in words. */
export class JobForm extends LightElement {
  static override properties = {
    job: { attribute: false },
    trouble: { type: String },
    sizeTrouble: { type: String },
    width: { type: String },
    isFile: { type: Boolean },
  };

  declare job: JobFile;
  declare trouble: string;
  declare sizeTrouble: string;
  declare width: string;
  declare isFile: boolean;

  #change(part: Partial<JobFile>): void {
    this.tell('change-job', part);
  }

  #setBit(index: number, diameter: string): void {
    this.#change({ bit: this.#bits().map((bit, k) => (k === index ? typedBit(diameter) : bit)) });
  }

  #bits(): readonly string[] {
    return this.job.bit ?? ['flat:1/8in'];
  }

  protected override render(): TemplateResult {
    return html`
      <form class="slip" aria-label="Job" @submit=${(event: Event) => event.preventDefault()}>
        <h2>Job</h2>
        ${this.#bitRows()} ${this.#lengthRows()} ${this.#grainRow()} ${this.#materialRows()}
        <p class="trouble" id="job-trouble" role="alert">${this.trouble}</p>
      </form>
    `;
  }

  #bitRows(): TemplateResult {
    const bits = this.#bits();
    return html`
      <datalist id="bit-sizes">
        ${cutterSizes.value
          .filter((size) => size.shape === 'flat')
          .map((size) => html`<option value=${size.label}></option>`)}
      </datalist>
      ${bits.map(
        (bit, k) => html`
          <p class="row">
            <label class="grow">
              ${k === 0 ? 'Flat bit, diameter' : `then, bit ${k + 1}`}
              <input
                name="bit-${k + 1}"
                list="bit-sizes"
                autocomplete="off"
                .value=${diameterOf(bit)}
                @change=${(event: Event) => this.#setBit(k, valueOf(event))}
              />
            </label>
            ${
              bits.length > 1
                ? html`<button
                    type="button"
                    aria-label="Leave out bit ${k + 1}"
                    @click=${() => this.#change({ bit: bits.filter((_, other) => other !== k) })}
                  >
                    Leave out
                  </button>`
                : ''
            }
          </p>
        `,
      )}
      ${
        bits.length < MOST_BITS
          ? html`<button type="button" @click=${() => this.#change({ bit: [...bits, 'flat:1mm'] })}>
              Add a finer bit
            </button>`
          : ''
      }
    `;
  }

  #lengthRows(): TemplateResult {
    return html`
      <label>
        Depth of the pocket
        <input
          name="depth"
          autocomplete="off"
          .value=${this.job.depth ?? '1/8in'}
          @change=${(event: Event) => this.#change({ depth: valueOf(event) })}
        />
      </label>
      ${
        this.isFile
          ? html`<label>
                Width of the artwork
                <input
                  name="width"
                  autocomplete="off"
                  placeholder="as the file says"
                  .value=${this.width}
                  @change=${(event: Event) => this.tell('resize', valueOf(event))}
                />
              </label>
              <p class="trouble" role="alert">${this.sizeTrouble}</p>`
          : ''
      }
    `;
  }

  #grainRow(): TemplateResult {
    const grain = Number.parseFloat(this.job.grain ?? '0');
    const set = (event: Event): void => this.#change({ grain: `${valueOf(event) || 0}deg` });
    return html`
      <fieldset>
        <legend>Fibres on the face, degrees counter-clockwise from the artwork’s x axis</legend>
        <p class="row">
          <input
            class="grow"
            name="grain-slider"
            type="range"
            min="0"
            max="180"
            step="5"
            aria-label="Fibre direction, slider"
            .value=${String(((grain % 180) + 180) % 180)}
            @input=${set}
          />
          <input
            name="grain"
            type="number"
            step="1"
            aria-label="Fibre direction in degrees"
            .value=${String(grain)}
            @change=${set}
          />
        </p>
      </fieldset>
    `;
  }

  #materialRows(): TemplateResult {
    const { wood = 'maple', seal = 'none', coats = 1, sealHours = '24h' } = this.job;
    return html`
      <label>
        Wood
        <select name="wood" @change=${(event: Event) => this.#change({ wood: valueOf(event) } as Partial<JobFile>)}>
          ${options(woods, wood)}
        </select>
      </label>
      <label>
        Seal before the colour
        <select name="seal" @change=${(event: Event) => this.#change({ seal: valueOf(event) } as Partial<JobFile>)}>
          ${options(sealers, seal)}
        </select>
      </label>
      <p class="row">
        <label class="grow">
          Coats
          <input
            name="coats"
            type="number"
            min="0"
            max="10"
            .value=${String(coats)}
            @change=${(event: Event) => this.#change({ coats: Number(valueOf(event)) })}
          />
        </label>
        <label class="grow">
          Left to cure
          <input
            name="seal-hours"
            autocomplete="off"
            .value=${sealHours}
            @change=${(event: Event) => this.#change({ sealHours: valueOf(event) })}
          />
        </label>
      </p>
      <label>
        Lengths in
        <select name="units" @change=${(event: Event) => this.#change({ units: valueOf(event) === 'in' ? 'in' : 'mm' })}>
          <option value="mm" ?selected=${this.job.units !== 'in'}>millimetres</option>
          <option value="in" ?selected=${this.job.units === 'in'}>inches</option>
        </select>
      </label>
    `;
  }
}

function options(
  rows: Readonly<Record<string, { readonly name: string }>>,
  chosen: string,
): TemplateResult[] {
  return Object.entries(rows).map(
    ([id, row]) => html`<option value=${id} ?selected=${id === chosen}>${row.name}</option>`,
  );
}

function valueOf(event: Event): string {
  return (event.target as HTMLInputElement | HTMLSelectElement).value.trim();
}

function diameterOf(bit: string): string {
  return bit.startsWith('flat:') ? bit.slice('flat:'.length) : bit;
}

function typedBit(text: string): string {
  return text.includes(':') ? text : `flat:${text}`;
}
