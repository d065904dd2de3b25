import type { TypedJob } from '@pourproof/job';
import { defaultMaterials, type MaterialsBook } from '@pourproof/materials';
import type { FindingEntry } from '@pourproof/wording';
import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { shared } from '../look/shared.ts';
import { jobChange } from '../model/job-change.ts';
import { seenToChange } from '../model/seen-to-change.ts';
import type { Selection } from '../proof-controller.ts';
import { emit } from './emit.ts';
import { severityTag } from './severity-tag.ts';

/** The findings beside the sheet; the open one says all and steps through its places. */
export class FindingList extends LitElement {
  static override properties = {
    entries: { attribute: false },
    selection: { attribute: false },
    job: { attribute: false },
    materials: { attribute: false },
    isLettering: { attribute: false },
  };
  static override styles: CSSResultGroup = [
    shared,
    severityTag.styles,
    css`
      ol {
        margin: 0;
        padding: 0;
        list-style: none;
        border-top: 1px solid var(--ink);
      }
      li {
        border-bottom: 1px solid var(--ink);
      }
      .head {
        display: grid;
        grid-template-columns: 2rem 1fr auto;
        gap: 0.1rem 0.5rem;
        align-items: baseline;
        width: 100%;
        padding: 0.65rem 0.4rem;
        border: 0;
        border-radius: 0;
        background: none;
        text-align: left;
      }
      .head[aria-expanded='true'] {
        background: var(--paper-shade);
      }
      .head[aria-expanded='true'] .number {
        background: var(--ink);
        color: #fff;
      }
      .number {
        border: 1px solid var(--ink);
        border-radius: 2px;
        background: #fff;
        font-weight: 600;
        text-align: center;
      }
      .title {
        font: 1.05rem/1.3 var(--serif);
      }
      .sizes {
        grid-column: 2 / -1;
        color: var(--ink-soft);
        font-size: 0.87rem;
      }
      .body {
        padding: 0.3rem 0.5rem 0.9rem 0.5rem;
        background: var(--paper-shade);
      }
      .body > * + * {
        margin-top: 0.6rem;
      }
      .steps {
        display: flex;
        align-items: center;
        gap: 0.5rem;
      }
      .steps span {
        flex: 1;
        text-align: center;
        font-variant-numeric: tabular-nums;
      }
      ul {
        margin: 0.3rem 0 0;
        padding: 0;
        list-style: none;
      }
      ul li {
        display: flex;
        gap: 0.6rem;
        align-items: center;
        justify-content: space-between;
        padding: 0.3rem 0;
        border-bottom: 1px solid var(--rule);
      }
      ul li:last-child {
        border: 0;
      }
      ul button {
        flex: none;
      }
      h3 {
        margin: 0.6rem 0 0;
        font: 600 0.9rem var(--sans);
      }
      summary {
        cursor: pointer;
      }
      .none {
        padding: 0.7rem 0;
      }
      @media print {
        .body[hidden] {
          display: block !important;
        }
        .head {
          display: grid !important;
        }
        .body,
        .head[aria-expanded='true'] {
          background: none;
        }
        .head[aria-expanded='true'] .number {
          background: #fff;
          color: var(--ink);
        }
        .head {
          break-after: avoid;
        }
      }
    `,
  ];

  declare entries: readonly FindingEntry[];
  declare selection: Selection | null;
  declare job: TypedJob;
  declare materials: MaterialsBook;
  declare isLettering: boolean;

  constructor() {
    super();
    this.entries = [];
    this.selection = null;
    this.job = {};
    this.materials = defaultMaterials;
    this.isLettering = false;
  }

  protected override render(): TemplateResult {
    if (this.entries.length === 0) {
      return html`<p class="none">No findings: every check came out clear.</p>`;
    }
    return html`
      <p class="unseen" id="how">Up and down go through the findings, left and right through the places of one.</p>
      <ol aria-describedby="how" @keydown=${this.#key}>
        ${this.entries.map((entry) => this.#item(entry))}
      </ol>
    `;
  }

  #item(entry: FindingEntry): TemplateResult {
    const isOpen = entry.code === this.selection?.code;
    const body = `body-${entry.code}`;
    return html`
      <li>
        <button
          type="button"
          class="head"
          data-code=${entry.code}
          aria-expanded=${isOpen}
          aria-controls=${body}
          @click=${() => emit(this, 'place-chosen', isOpen ? null : { code: entry.code, place: 0 })}
        >
          <span class="number">${entry.number}</span>
          <span class="title">${entry.title}</span>
          ${severityTag.render(entry.severity)}
          <span class="sizes">${this.#sizes(entry)}${entry.seenTo === true ? ' · seen to by you' : ''}</span>
        </button>
        <div class="body" id=${body} ?hidden=${!isOpen}>
          ${isOpen ? this.#steps(entry) : nothing}
          <p>${entry.headline}</p>
          <p>${entry.why}</p>
          ${entry.fixes.length > 0 ? this.#fixes(entry) : nothing}
          ${entry.seenTo === null ? nothing : this.#seenTo(entry, entry.seenTo)}
          <details class="no-print">
            <summary class="soft">What this rests on</summary>
            <p class="soft">${entry.basis.join('; ')}.</p>
          </details>
          <p class="soft print-only">Basis: ${entry.basis.join('; ')}.</p>
        </div>
      </li>
    `;
  }

  #sizes({ measured, limit, places }: FindingEntry): string {
    const where = places.length === 1 ? '1 place' : `${places.length} places`;
    return `${measured}, limit ${limit}${places.length > 0 ? ` · ${where}` : ''}`;
  }

  #steps(entry: FindingEntry): TemplateResult | typeof nothing {
    const count = entry.places.length;
    const at = this.selection?.place ?? 0;
    const place = entry.places[at];
    if (place === undefined) {
      return nothing;
    }
    return html`
      <div class="steps no-print" role="group" aria-label="Places of this finding">
        <button type="button" aria-label="Place before" ?disabled=${count < 2} @click=${() => this.#step(entry, -1)}>←</button>
        <span aria-live="polite">Place <b>${place.label}</b>, ${at + 1} of ${count}: ${place.text}</span>
        <button type="button" aria-label="Next place" ?disabled=${count < 2} @click=${() => this.#step(entry, 1)}>→</button>
      </div>
    `;
  }

  #fixes({ fixes }: FindingEntry): TemplateResult {
    const { job, materials, isLettering } = this;
    return html`
      <div>
        <h3>Ways out</h3>
        <ul>
          ${fixes.map(({ text, fix }) => {
            const change = fix === null ? null : jobChange(fix, job, { materials, isLettering });
            return html`<li>
              <span>${text}</span>
              ${
                change === null
                  ? nothing
                  : html`<button
                    type="button"
                    aria-label="${change.label}: ${text}"
                    @click=${() => emit(this, 'job-changed', change.part)}
                  >
                    ${change.label}
                  </button>`
              }
            </li>`;
          })}
        </ul>
      </div>
    `;
  }

  #seenTo({ code }: FindingEntry, isSeenTo: boolean): TemplateResult {
    return html`<label class="no-print">
      <input
        type="checkbox"
        data-seen-to=${code}
        .checked=${isSeenTo}
        @change=${() => emit(this, 'job-changed', seenToChange(this.job, code, !isSeenTo))}
      />
      I have seen to it, or will: it no longer counts
    </label>`;
  }

  #step(entry: FindingEntry, by: number): void {
    const count = entry.places.length;
    if (count === 0) {
      return;
    }
    const place = ((this.selection?.place ?? 0) + by + count) % count;
    emit(this, 'place-chosen', { code: entry.code, place });
  }

  #key(event: KeyboardEvent): void {
    const heads = [...this.renderRoot.querySelectorAll<HTMLElement>('.head')];
    const at = heads.indexOf(event.target as HTMLElement);
    if (at < 0 || event.altKey || event.ctrlKey || event.metaKey) {
      return;
    }
    const goTo: Readonly<Record<string, number>> = {
      ArrowDown: Math.min(at + 1, heads.length - 1),
      ArrowUp: Math.max(at - 1, 0),
      Home: 0,
      End: heads.length - 1,
    };
    const next = goTo[event.key];
    const open = this.entries[at];
    if (next !== undefined) {
      event.preventDefault();
      heads[next]?.focus();
      const entry = this.entries[next];
      if (entry !== undefined && entry.code !== this.selection?.code) {
        emit(this, 'place-chosen', { code: entry.code, place: 0 });
      }
    } else if (open !== undefined && (event.key === 'ArrowRight' || event.key === 'ArrowLeft')) {
      event.preventDefault();
      if (open.code === this.selection?.code) {
        this.#step(open, event.key === 'ArrowRight' ? 1 : -1);
      } else {
        emit(this, 'place-chosen', { code: open.code, place: 0 });
      }
    }
  }
}

customElements.define('finding-list', FindingList);
