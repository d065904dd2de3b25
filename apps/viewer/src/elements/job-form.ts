import { type TypedJob, typedUnit } from '@pourproof/job';
import { type CSSResultGroup, html, LitElement, nothing, type TemplateResult } from 'lit';
import { keyed } from 'lit/directives/keyed.js';
import { live } from 'lit/directives/live.js';
import { shared } from '../look/shared.ts';
import {
  type JobField as Field,
  isAsked,
  JOB_GROUPS,
  type JobGroup,
  type SourceKind,
} from '../model/job-fields.ts';
import { type Tables, USUAL_TABLES } from '../model/shelf.ts';
import './bit-list.ts';
import { emit } from './emit.ts';
import './grain-field.ts';
import './job-field.ts';
import { jobFormLook } from './job-form-look.ts';

/** The job ticket: what every job needs, and the rest folded away by subject. */
export class JobForm extends LitElement {
  static override properties = {
    job: { attribute: false },
    tables: { attribute: false },
    source: { attribute: false },
    ticket: { attribute: false },
  };
  static override styles: CSSResultGroup = [shared, jobFormLook];

  declare job: TypedJob;
  declare tables: Tables;
  /** What is on the sheet: some values are for files only. */
  declare source: SourceKind;
  /** Which ticket it is: what was typed into the fields of another one is dropped. */
  declare ticket: number;

  constructor() {
    super();
    this.job = {};
    this.tables = USUAL_TABLES;
    this.source = null;
    this.ticket = 0;
  }

  protected override render(): TemplateResult {
    return html`
      <form @submit=${(event: Event) => event.preventDefault()} novalidate>
        ${keyed(this.ticket, html`<bit-list .job=${this.job} .tables=${this.tables}></bit-list>`)}
        ${this.#fields('first')}
        ${
          this.job.board === undefined
            ? keyed(this.ticket, html`<grain-field .job=${this.job}></grain-field>`)
            : html`<p class="soft">The board says which wood lies where, and how its fibres run.</p>`
        }
        <div class="pair">${this.#fields('seal')}</div>
        ${JOB_GROUPS.filter(({ id }) => id !== 'first' && id !== 'seal').map((group) => this.#group(group))}
        ${this.#units()}
      </form>
    `;
  }

  #fields(id: JobGroup['id']): readonly unknown[] {
    return JOB_GROUPS.find((group) => group.id === id)?.fields.map((field) => this.#field(field)) ?? [];
  }

  #group({ title, fields }: JobGroup): TemplateResult {
    const set = fields.filter(({ key }) => this.job[key] !== undefined).length;
    return html`
      <details class="group">
        <summary>${title}${set === 0 ? nothing : html` <span class="soft">(${set} set)</span>`}</summary>
        <div class="fields">${fields.map((field) => this.#field(field))}</div>
      </details>
    `;
  }

  #field(field: Field): unknown {
    return isAsked(field, this.job, this.source, this.tables)
      ? keyed(
          this.ticket,
          html`<job-field class=${field.form === 'tick' ? 'row' : ''} .field=${field} .job=${this.job} .tables=${this.tables}></job-field>`,
        )
      : nothing;
  }

  #units(): TemplateResult {
    const units = this.job.units ?? typedUnit(this.job) ?? 'mm';
    return html`
      <fieldset class="units">
        <legend>Show sizes in</legend>
        ${(['mm', 'in'] as const).map(
          (unit) => html`<label>
            <input
              type="radio"
              name="units"
              value=${unit}
              .checked=${live(units === unit)}
              @change=${() => emit(this, 'job-changed', { units: unit })}
            />
            ${unit === 'mm' ? 'millimetres' : 'inches'}
          </label>`,
        )}
      </fieldset>
    `;
  }
}

customElements.define('job-form', JobForm);
