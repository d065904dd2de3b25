import { SETTINGS, type TypedJob } from '@pourproof/job';
import {
  type CSSResultGroup,
  css,
  html,
  LitElement,
  nothing,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { keyed } from 'lit/directives/keyed.js';
import { live } from 'lit/directives/live.js';
import { shared } from '../look/shared.ts';
import type { NamedBytes } from '../model/artwork-source.ts';
import { changedJob, type JobPart } from '../model/changed-job.ts';
import { chosenFont, fontChoice, OWN_FONT, SINGLE_STROKES } from '../model/font-choice.ts';
import { jobProblem } from '../model/job-problem.ts';
import { letteringPart, OFFERED_CAP_HEIGHT } from '../model/lettering-part.ts';
import { type Tables, USUAL_TABLES } from '../model/shelf.ts';
import { shippedFonts } from '../model/shipped-fonts.ts';
import { emit } from './emit.ts';

const ARC_SIDES = [
  ['over', 'over the circle'],
  ['under', 'under the circle'],
] as const;
const FONT_FILE: TemplateResult = html`<input id="file" type="file" name="file" accept=".ttf,.otf,.woff,.woff2,.ttc" />`;

/** Sets lettering in a font file of the maker's own, in one that comes with the page, or in single strokes. */
export class LetteringForm extends LitElement {
  static override properties = {
    job: { attribute: false },
    tables: { attribute: false },
    text: {},
    font: { attribute: false },
    ticket: { attribute: false },
    problem: { state: true },
    choice: { state: true },
  };
  static override styles: CSSResultGroup = [
    shared,
    css`
      form,
      .more {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: 0.6rem;
        padding-top: 0.6rem;
      }
      .field {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: 0.15rem;
      }
      summary {
        cursor: pointer;
        padding: 0.2rem 0;
      }
      .pair {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(7rem, 100%), 1fr));
        gap: 0.6rem;
        align-items: end;
      }
      .problem {
        font-weight: 600;
        color: var(--orange);
      }
    `,
  ];

  declare job: TypedJob;
  declare tables: Tables;
  /** What is set now, or what a job asks to be set. */
  declare text: string;
  /** The maker's own font that is at hand. */
  declare font: NamedBytes | null;
  /** Which ticket it is: what was typed for another one is dropped. */
  declare ticket: number;
  declare problem: string;
  /** Which font is chosen; `null` for the one of the job. */
  declare choice: string | null;

  constructor() {
    super();
    this.job = {};
    this.tables = USUAL_TABLES;
    this.text = '';
    this.font = null;
    this.ticket = 0;
    this.problem = '';
    this.choice = null;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('ticket')) {
      this.problem = '';
      this.choice = null;
    }
  }

  protected override render(): TemplateResult {
    const choice = this.#choice();
    const { capHeight, width } = this.job;
    const offered = width === undefined ? OFFERED_CAP_HEIGHT : '';
    return html`
      <details>
        <summary>Lettering: lines, spacing, arc, own font</summary>
        ${keyed(
          this.ticket,
          html`<form @submit=${this.#submit} novalidate>
          ${field('text', 'Text', html`<textarea id="text" name="text" rows="2" required dir="auto" .value=${this.text}></textarea>`)}
          ${field('font', 'Font', this.#fonts(choice))}
          ${choice === OWN_FONT ? field('file', this.#fileLabel(), FONT_FILE) : nothing}
          ${field('capHeight', 'Height of capitals', typedIn('capHeight', capHeight ?? offered, `set by the width, ${width ?? ''}`))}
          ${this.#more(choice)}
          ${this.problem === '' ? nothing : html`<p class="problem" role="alert">${this.problem}</p>`}
          <button class="main">Set this lettering</button>
        </form>`,
        )}
      </details>
    `;
  }

  #fonts(choice: string): TemplateResult {
    const option = (value: string, name: string): TemplateResult =>
      html`<option value=${value} .selected=${live(choice === value)}>${name}</option>`;
    return html`<select id="font" name="font" @change=${this.#pick}>
      ${shippedFonts.map(({ name, file }) => option(file, name))}
      ${option(SINGLE_STROKES, 'Single strokes, as wide as the bit')}
      ${option(OWN_FONT, this.font === null ? 'A font file of mine…' : `My font file ${this.font.name}`)}
    </select>`;
  }

  #fileLabel(): string {
    const { font } = this.job;
    const isNamed = font !== undefined && font !== this.font?.name;
    return isNamed ? `Font file (the job names ${font})` : 'Font file';
  }

  #more(choice: string): TemplateResult {
    const { align, tracking, lineSpacing, arc, axis } = this.job;
    const [radius = '', side = 'over'] = (arc ?? '').split(/\s+/u);
    const sides = [
      ['', 'the left edge; on an arc the centre'],
      ...(SETTINGS.align.holds.choices ?? []).map(
        (each) => [each, each === 'centre' ? 'the centre' : `the ${each} edge`] as const,
      ),
    ] as const;
    return html`
      <details>
        <summary>More: lines, spacing, arc${choice === SINGLE_STROKES ? nothing : ', axes'}</summary>
        <div class="more">
          ${field('align', 'Lines meet at', chosenOf('align', sides, align ?? ''))}
          <div class="pair">
            ${field('tracking', 'Room between letters', typedIn('tracking', tracking ?? '', '0mm'))}
            ${field('lineSpacing', 'Line spacing', typedIn('lineSpacing', String(lineSpacing ?? ''), '1'))}
          </div>
          <div class="pair">
            ${field('radius', 'Arc, radius', typedIn('radius', radius, 'straight'))}
            ${field('side', 'Arc runs', chosenOf('side', ARC_SIDES, side))}
          </div>
          ${
            choice === SINGLE_STROKES
              ? nothing
              : field('axis', 'Axes of a variable font', typedIn('axis', (axis ?? []).join(' '), 'wght=600'))
          }
        </div>
      </details>
    `;
  }

  #choice(): string {
    return this.choice ?? fontChoice(this.job);
  }

  #pick(event: Event): void {
    this.choice = (event.target as HTMLSelectElement).value;
  }

  #submit(event: Event): void {
    event.preventDefault();
    const form = new FormData(event.target as HTMLFormElement);
    const text = String(form.get('text') ?? '').trim();
    const file = form.get('file');
    const choice = this.#choice();
    const own = file instanceof File && file.size > 0 ? file : null;
    const part = letteringPart(form, choice === SINGLE_STROKES);
    this.problem = this.#problemOf(text, choice === OWN_FONT && own === null && this.font === null, part);
    if (this.problem !== '') {
      return;
    }
    const font = own === null ? chosenFont(choice, this.font) : ({ kind: 'file', file: own } as const);
    emit(this, 'lettering-chosen', { text, part, font: font ?? null });
  }

  #problemOf(text: string, isFontMissing: boolean, part: JobPart): string {
    if (text === '') {
      return 'Type the text to set.';
    }
    return isFontMissing ? 'Choose the font file.' : jobProblem(changedJob(this.job, part), this.tables);
  }
}

function field(id: string, label: string, control: TemplateResult): TemplateResult {
  return html`<div class="field"><label for=${id}>${label}</label>${control}</div>`;
}

function typedIn(name: string, value: string, placeholder: string): TemplateResult {
  return html`<input id=${name} name=${name} .value=${value} placeholder=${placeholder} autocomplete="off" />`;
}

function chosenOf(
  name: string,
  options: readonly (readonly [value: string, title: string])[],
  chosen: string,
): TemplateResult {
  return html`<select id=${name} name=${name}>
    ${options.map(([value, title]) => html`<option value=${value} ?selected=${value === chosen}>${title}</option>`)}
  </select>`;
}

customElements.define('lettering-form', LetteringForm);
