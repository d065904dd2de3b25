import type { TypedJob } from '@pourproof/job';
import {
  type CSSResultGroup,
  css,
  html,
  LitElement,
  nothing,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { live } from 'lit/directives/live.js';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import { changedJob, type JobPart } from '../model/changed-job.ts';
import { type JobField as Field, optionsOf, usualValue } from '../model/job-fields.ts';
import { jobProblem } from '../model/job-problem.ts';
import { type Tables, USUAL_TABLES } from '../model/shelf.ts';
import { emit } from './emit.ts';
import { jobFormLook } from './job-form-look.ts';

/** Time of day that a day alone starts with, until another is typed. */
const USUAL_TIME = '09:00';

/** One value of the job with its label, its way of being written, and what is wrong with it. */
export class JobField extends LitElement {
  static override properties = {
    field: { attribute: false },
    job: { attribute: false },
    tables: { attribute: false },
    problem: { state: true },
  };
  static override styles: CSSResultGroup = [
    shared,
    jobFormLook,
    css`
      textarea {
        resize: vertical;
      }
      .moment {
        display: flex;
        flex-wrap: wrap;
        gap: 0.4rem;
      }
      .moment input {
        flex: 1 1 auto;
        width: auto;
        min-width: min(100%, 8.5em);
        max-width: 100%;
      }
    `,
  ];

  declare field: Field;
  declare job: TypedJob;
  declare tables: Tables;
  /** What was typed and is refused, which stays until it is put right. */
  declare problem: { readonly text: string; readonly message: string } | null;

  constructor() {
    super();
    this.field = { key: 'depth', label: '', form: 'text' };
    this.job = {};
    this.tables = USUAL_TABLES;
    this.problem = null;
  }

  // a refusal is one by the job as it is: another value of this setting ends it, other settings may mend it
  protected override willUpdate(changed: PropertyValues<this>): void {
    const before = changed.get('job');
    if (this.problem === null || before === undefined) {
      return;
    }
    const { key } = this.field;
    const { text } = this.problem;
    this.problem = before[key] === this.job[key] ? this.#refusal(text) : null;
    if (this.problem === null && before[key] === this.job[key]) {
      void this.updateComplete.then(() => this.#change(text));
    }
  }

  protected override render(): TemplateResult {
    const { label, hint, key } = this.field;
    if (this.field.form === 'tick') {
      return html`<div class="tick">
        <input id=${key} name=${key} type="checkbox" .checked=${live(this.job[key] === true)} @change=${this.#tick} />
        <label for=${key}>${label}</label>
      </div>`;
    }
    return html`<div class="field">
      <label for=${key}>${label}</label>
      ${this.#control()} ${hint === undefined ? nothing : html`<span class="soft" id="${key}-hint">${hint}</span>`}
      <span class="problem" id="${key}-problem" role="alert">${isolated(this.problem?.message ?? '')}</span>
    </div>`;
  }

  #control(): TemplateResult {
    const { key, form, hint } = this.field;
    const shown = this.problem?.text ?? textOf(this.job[key]);
    const isInvalid = this.problem !== null;
    const described = `${key}-problem${hint === undefined ? '' : ` ${key}-hint`}`;
    const change = (event: Event): void => this.#change((event.target as HTMLInputElement).value);
    switch (form) {
      case 'choice': {
        const chosen = shown === '' ? usualValue(key, this.job, this.tables) : shown;
        return html`<select id=${key} name=${key} aria-describedby=${described} @change=${change}>
          ${optionsOf(this.field, this.tables.materials).map(
            ([id, name]) => html`<option value=${id} .selected=${live(id === chosen)}>${name}</option>`,
          )}
        </select>`;
      }
      case 'lines':
        return html`<textarea
          id=${key}
          name=${key}
          rows="3"
          aria-invalid=${isInvalid}
          aria-describedby=${described}
          .value=${live(shown)}
          @change=${change}
        ></textarea>`;
      case 'time':
        return this.#moment(shown, described);
      default:
        return html`<input
          id=${key}
          name=${key}
          type="text"
          inputmode=${form === 'number' ? 'decimal' : 'text'}
          autocomplete="off"
          placeholder=${usualValue(key, this.job, this.tables)}
          aria-invalid=${isInvalid}
          aria-describedby=${described}
          .value=${live(shown)}
          @change=${change}
        />`;
    }
  }

  /** A day and a time of day in fields of their own: on a narrow page, or in large letters, they stand below each other. */
  #moment(shown: string, described: string): TemplateResult {
    const { key, label } = this.field;
    const [day = '', time = ''] = shown.split(' ');
    const change = (): void => {
      const [first = '', second = ''] = [key, `${key}-time`].map(
        (id) => this.renderRoot.querySelector<HTMLInputElement>(`#${id}`)?.value,
      );
      this.#change(first === '' ? '' : `${first} ${second === '' ? USUAL_TIME : second}`);
    };
    return html`<span class="moment">
      <input
        id=${key}
        name=${key}
        type="date"
        aria-invalid=${this.problem !== null}
        aria-describedby=${described}
        .value=${live(day)}
        @change=${change}
      />
      <input
        id="${key}-time"
        name="${key}-time"
        type="time"
        aria-label="${label}, time of day"
        aria-invalid=${this.problem !== null}
        .value=${live(time)}
        @change=${change}
      />
    </span>`;
  }

  #tick(event: Event): void {
    this.#tell({ [this.field.key]: (event.target as HTMLInputElement).checked ? true : undefined });
  }

  #change(text: string): void {
    this.problem = this.#refusal(text);
    if (this.problem === null) {
      this.#tell(this.#part(text));
    }
  }

  #part(text: string): JobPart {
    const typed = text.trim();
    return { [this.field.key]: typed === '' ? undefined : typedValue(typed, this.field.form) };
  }

  #refusal(text: string): JobField['problem'] {
    const part = this.#part(text);
    const value = part[this.field.key];
    const message =
      typeof value === 'number' && !Number.isFinite(value)
        ? `"${text.trim()}" is not a number.`
        : jobProblem(changedJob(this.job, part), this.tables);
    return message === '' ? null : { text: text.trim(), message };
  }

  #tell(part: JobPart): void {
    emit(this, 'job-changed', part);
  }
}

function typedValue(text: string, form: Field['form']): string | number | readonly string[] {
  switch (form) {
    case 'number':
      return Number(text.replace(',', '.'));
    case 'lines':
      return text
        .split('\n')
        .map((line) => line.trim())
        .filter((line) => line !== '');
    default:
      return text;
  }
}

function textOf(value: TypedJob[keyof TypedJob]): string {
  return value === undefined ? '' : Array.isArray(value) ? value.join('\n') : String(value);
}

customElements.define('job-field', JobField);
