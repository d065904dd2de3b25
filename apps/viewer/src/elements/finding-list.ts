import type { FindingEntry, FixEntry } from '@pourproof/wording';
import {
  type CSSResultGroup,
  html,
  LitElement,
  nothing,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { live } from 'lit/directives/live.js';
import { repeat } from 'lit/directives/repeat.js';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import type { JobPart } from '../model/changed-job.ts';
import { jobChange } from '../model/job-change.ts';
import { seenToChange } from '../model/seen-to-change.ts';
import type { Selection } from '../model/selection.ts';
import { vetOptions } from '../model/shelf.ts';
import type { ShownProof } from '../model/shown-proof.ts';
import { type TakenWayOut, toldAfter } from '../model/taken-way-out.ts';
import { emit } from './emit.ts';
import { findingListLook } from './finding-list-look.ts';
import { severityTag } from './severity-tag.ts';

/** The findings beside the sheet; the open one says all and steps through its places. */
export class FindingList extends LitElement {
  static override properties = {
    proof: { attribute: false },
    selection: { attribute: false },
    isOld: { attribute: false },
  };
  static override styles: CSSResultGroup = [shared, severityTag.styles, findingListLook];

  declare proof: ShownProof | null;
  declare selection: Selection | null;
  /** Whether the ticket has moved on: ways out of an older proof are not for it. */
  declare isOld: boolean;

  /** The way out that was taken last, until the proof with it is there. */
  #taken: TakenWayOut | null = null;
  #told = '';
  #hadFocus = false;

  constructor() {
    super();
    this.proof = null;
    this.selection = null;
    this.isOld = false;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    this.#hadFocus = this.shadowRoot?.activeElement != null;
    const isCompleted = changed.get('proof')?.isWhole === false && this.proof?.isWhole === true;
    if (changed.has('proof') && this.proof !== null && !isCompleted) {
      this.#told = this.#taken === null ? '' : toldAfter(this.#taken, this.proof.entries);
    }
  }

  protected override render(): TemplateResult {
    const entries = this.#entries();
    return html`
      <p class="told no-print" role="status" aria-live="polite">${isolated(this.#told)}</p>
      ${
        entries.length === 0
          ? html`<p class="none" tabindex="-1">No findings: every check came out clear.</p>`
          : html`
            <p class="unseen" id="how">Up and down go through the findings, left and right through the places of one.</p>
            <ol aria-describedby="how" @keydown=${this.#key}>
              ${repeat(
                entries,
                ({ id }) => id,
                (entry) => this.#item(entry),
              )}
            </ol>
          `
      }
    `;
  }

  protected override updated(changed: PropertyValues<this>): void {
    const taken = this.#taken;
    if (!changed.has('proof') || this.proof === null || taken === null) {
      return;
    }
    this.#taken = null;
    // whoever has gone elsewhere meanwhile stays there
    if (this.#hadFocus && this.shadowRoot?.activeElement === null) {
      this.#focusNear(taken);
    }
  }

  #entries(): readonly FindingEntry[] {
    return this.proof?.entries ?? [];
  }

  /** The finding whose way out was taken, or else the one that has come to its place. */
  #focusNear({ code, at }: TakenWayOut): void {
    const heads = [...this.renderRoot.querySelectorAll<HTMLElement>('.head')];
    const own = heads.find((head) => head.dataset.code === code);
    const near = own ?? heads[Math.min(at, heads.length - 1)];
    (near ?? this.renderRoot.querySelector<HTMLElement>('.none'))?.focus();
  }

  #item(entry: FindingEntry): TemplateResult {
    const isOpen = entry.id === this.selection?.code;
    const body = `body-${entry.id}`;
    return html`
      <li>
        <button
          type="button"
          class="head"
          data-code=${entry.id}
          aria-expanded=${isOpen}
          aria-controls=${body}
          @click=${() => emit(this, 'place-chosen', isOpen ? null : { code: entry.id, place: 0 })}
        >
          <span class="number">${entry.number}</span>
          <span class="title">${isolated(entry.title)}</span>
          ${severityTag.render(entry.severity)}
          <span class="sizes">${isolated(this.#sizes(entry))}${entry.seenTo === true ? ' · seen to by you' : ''}</span>
        </button>
        <div class="body" id=${body} ?hidden=${!isOpen}>
          ${isOpen ? this.#steps(entry) : nothing}
          <p>${isolated(entry.headline)}</p>
          <p>${isolated(entry.why)}</p>
          ${this.#fixes(entry)}
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
        <span aria-live="polite">Place <b>${place.label}</b>, ${at + 1} of ${count}: ${isolated(place.text)}</span>
        <button type="button" aria-label="Next place" ?disabled=${count < 2} @click=${() => this.#step(entry, 1)}>→</button>
      </div>
    `;
  }

  #fixes(entry: FindingEntry): TemplateResult | typeof nothing {
    if (this.proof?.isWhole === false) {
      return html`<p class="soft">Ways out are still being tried.</p>`;
    }
    if (entry.fixes.length === 0) {
      return nothing;
    }
    return html`
      <div>
        <h3>Ways out</h3>
        <ul>
          ${entry.fixes.map(({ text, fix }) => html`<li><span>${isolated(text)}</span>${this.#button(entry, text, fix)}</li>`)}
        </ul>
      </div>
    `;
  }

  #seenTo({ code }: FindingEntry, isSeenTo: boolean): TemplateResult {
    const change = seenToChange(this.proof?.job ?? {}, code, !isSeenTo);
    return html`<label class="no-print">
      <input
        type="checkbox"
        data-seen-to=${code}
        .checked=${live(isSeenTo)}
        aria-disabled=${this.isOld}
        @click=${(event: Event) => this.isOld && event.preventDefault()}
        @change=${() => emit(this, 'job-changed', change)}
      />
      I have seen to it, or will: it no longer counts
    </label>`;
  }

  #button(entry: FindingEntry, text: string, fix: FixEntry['fix']): TemplateResult | typeof nothing {
    if (fix === null || this.proof === null) {
      return nothing;
    }
    const { job, tables, source } = this.proof;
    const change = jobChange(fix, job, { ...vetOptions(tables), isLettering: source.kind === 'lettering' });
    const take = (part: JobPart): void => {
      if (!this.isOld) {
        const codes = this.#entries().map(({ id }) => id);
        this.#taken = { code: entry.id, title: entry.title, at: codes.indexOf(entry.code), codes };
        emit(this, 'job-changed', part);
      }
    };
    return change === null
      ? nothing
      : html`<button
          type="button"
          aria-label="${change.label}: ${text}"
          aria-disabled=${this.isOld}
          @click=${() => take(change.part)}
        >
          ${change.label}
        </button>`;
  }

  #step(entry: FindingEntry, by: number): void {
    const count = entry.places.length;
    if (count === 0) {
      return;
    }
    const place = ((this.selection?.place ?? 0) + by + count) % count;
    emit(this, 'place-chosen', { code: entry.id, place });
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
    const open = this.#entries()[at];
    if (next !== undefined) {
      event.preventDefault();
      heads[next]?.focus();
      const entry = this.#entries()[next];
      if (entry !== undefined && entry.id !== this.selection?.code) {
        emit(this, 'place-chosen', { code: entry.id, place: 0 });
      }
    } else if (open !== undefined && (event.key === 'ArrowRight' || event.key === 'ArrowLeft')) {
      event.preventDefault();
      if (open.id === this.selection?.code) {
        this.#step(open, event.key === 'ArrowRight' ? 1 : -1);
      } else {
        emit(this, 'place-chosen', { code: open.id, place: 0 });
      }
    }
  }
}

customElements.define('finding-list', FindingList);
