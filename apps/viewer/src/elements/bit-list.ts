import type { TypedJob } from '@pourproof/job';
import { type CSSResultGroup, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { shared } from '../look/shared.ts';
import { bitsOf } from '../model/job-fields.ts';
import { jobProblem } from '../model/job-problem.ts';
import { type Tables, USUAL_TABLES } from '../model/shelf.ts';
import { shownBit, smallerBit, typedBitText } from '../model/shown-bit.ts';
import { emit } from './emit.ts';
import { jobFormLook } from './job-form-look.ts';

/** The bits at hand, in the order of use. */
export class BitList extends LitElement {
  static override properties = {
    job: { attribute: false },
    tables: { attribute: false },
    problem: { state: true },
  };
  static override styles: CSSResultGroup = [shared, jobFormLook];

  declare job: TypedJob;
  declare tables: Tables;
  /** What was typed for a bit and is refused, which stays until it is put right. */
  declare problem: { readonly k: number; readonly text: string; readonly message: string } | null;

  constructor() {
    super();
    this.job = {};
    this.tables = USUAL_TABLES;
    this.problem = null;
  }

  // another bit has come to the place of the one that was refused
  protected override willUpdate(changed: PropertyValues<this>): void {
    const k = this.problem?.k ?? -1;
    if (changed.has('job') && k >= 0 && changed.get('job')?.bit?.[k] !== this.job.bit?.[k]) {
      this.problem = null;
    }
  }

  protected override render(): TemplateResult {
    const bits = this.#bits();
    return html`
      <fieldset>
        <legend>Bits, in the order of use</legend>
        ${bits.map((bit, k) => this.#row(bit, k, bits.length))}
        <span class="soft" id="hint">A size alone, such as 1/8in or 3mm, is a flat bit; a V is written as in vee:60deg:1/2in.</span>
        <button type="button" @click=${() => this.#tell([...bits, smallerBit(bits, this.tables.materials)])}>Add a bit</button>
        <datalist id="sizes">
          ${this.tables.materials.cutters.value
            .filter(({ shape }) => shape === 'flat')
            .map(({ label }) => html`<option value=${label}></option>`)}
        </datalist>
      </fieldset>
    `;
  }

  #row(bit: string, k: number, count: number): TemplateResult {
    const problem = this.problem?.k === k ? this.problem : null;
    return html`<div class="bit">
      <input
        id="bit-${k}"
        name="bit-${k}"
        aria-label="Bit ${k + 1}"
        list="sizes"
        autocomplete="off"
        .value=${live(problem?.text ?? shownBit(bit))}
        aria-invalid=${problem !== null}
        aria-describedby="bit-${k}-problem hint"
        @change=${(event: Event) => this.#change(k, event)}
      />
      <button type="button" aria-label="Take bit ${k + 1} off" ?disabled=${count < 2} @click=${() => this.#takeOff(k)}>
        ×
      </button>
      <span class="problem" id="bit-${k}-problem" role="alert">${problem?.message ?? ''}</span>
    </div>`;
  }

  #bits(): readonly string[] {
    return bitsOf(this.job, this.tables);
  }

  #change(k: number, event: Event): void {
    const text = (event.target as HTMLInputElement).value.trim();
    const bit = this.#bits().with(k, typedBitText(text));
    const message = jobProblem({ ...this.job, bit: [...bit] }, this.tables);
    this.problem = message === '' ? null : { k, text, message };
    if (message === '') {
      this.#tell(bit);
    }
  }

  #takeOff(k: number): void {
    // the bits after it move up, and what was typed for one must not show at another
    this.problem = null;
    // the button goes away with its row
    this.renderRoot.querySelector<HTMLElement>(`#bit-${Math.max(0, k - 1)}`)?.focus();
    this.#tell(this.#bits().filter((_, other) => other !== k));
  }

  #tell(bits: readonly string[]): void {
    emit(this, 'job-changed', { bit: [...bits] });
  }
}

customElements.define('bit-list', BitList);
