import type { TypedJob } from '@pourproof/job';
import { parseMeasure } from '@pourproof/plane';
import { type CSSResultGroup, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { shared } from '../look/shared.ts';
import { emit } from './emit.ts';
import { jobFormLook } from './job-form-look.ts';

/** The direction of the fibres on the face, by slider and by number. */
export class GrainField extends LitElement {
  static override properties = { job: { attribute: false }, problem: { state: true } };
  static override styles: CSSResultGroup = [shared, jobFormLook];

  declare job: TypedJob;
  declare problem: string;

  constructor() {
    super();
    this.job = {};
    this.problem = '';
  }

  // whatever was refused, the field shows the job's angle again
  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('job')) {
      this.problem = '';
    }
  }

  protected override render(): TemplateResult {
    const degrees = Number(parseMeasure(this.job.grain ?? '0deg', 'angle').value.toFixed(3));
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
            @change=${this.#change}
          />
          <input
            type="number"
            name="grain"
            step="1"
            aria-label="Fibres, degrees counter-clockwise"
            .value=${live(String(degrees))}
            aria-invalid=${this.problem !== ''}
            aria-describedby="grain-problem"
            @change=${this.#change}
          />
          <span aria-hidden="true">°</span>
        </div>
        <span class="problem" id="grain-problem" role="alert">${this.problem}</span>
      </fieldset>
    `;
  }

  #change(event: Event): void {
    const text = (event.target as HTMLInputElement).value.trim();
    const isNumber = text !== '' && Number.isFinite(Number(text));
    this.problem = isNumber ? '' : 'Type the angle as a number of degrees.';
    if (isNumber) {
      emit(this, 'job-changed', { grain: `${Number(text)}deg` });
    }
  }
}

customElements.define('grain-field', GrainField);
