import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import type { KeptJob } from '../store/database.ts';
import type { Keeping } from '../store/keeper.ts';
import { emit } from './emit.ts';

/** Why what is done is not kept, and the way out. */
const NOT_KEPT: Readonly<Record<Exclude<Keeping, 'kept'>, string>> = {
  unavailable:
    'This browser keeps nothing for this page, as private windows often do not. What you do here is gone with the window: save the job, its drawing and its font as files before you close it.',
  full: 'This browser has no more room for this page, and your last changes are not kept. Save the job, its drawing and its font as files, or delete jobs that you no longer need.',
  failed:
    'This browser could not keep your last changes. Save the job, its drawing and its font as files, then load the page again.',
};

/** The jobs that are kept in this browser, and what there is to say of keeping. */
export class KeptJobs extends LitElement {
  static override properties = {
    jobs: { attribute: false },
    elsewhere: { attribute: false },
    own: {},
    keeping: {},
    said: {},
    isOffered: { attribute: false },
  };
  static override styles: CSSResultGroup = [
    shared,
    css`
      summary {
        cursor: pointer;
        padding: 0.2rem 0;
      }
      ul {
        margin: 0.4rem 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.3rem 0.5rem;
        padding: 0.4rem 0;
        border-top: 1px solid #b9b39b;
      }
      li > span {
        flex: 1 1 9rem;
        min-width: 0;
        overflow-wrap: anywhere;
      }
      .when {
        display: block;
      }
      .said {
        margin-bottom: 0.5rem;
        padding-left: 0.6rem;
        border-left: 4px solid var(--blue);
      }
      .said button {
        margin: 0.3rem 0.4rem 0 0;
      }
      .lost {
        border-color: var(--orange);
        font-weight: 600;
      }
    `,
  ];

  declare jobs: readonly KeptJob[];
  /** Ids of those that other tabs have. */
  declare elsewhere: ReadonlySet<string>;
  /** Id of the one on the page. */
  declare own: string;
  declare keeping: Keeping;
  /** What happened to this tab's job; `''` for nothing. */
  declare said: string;
  /** Whether shop, materials and coupons of another tab could be taken. */
  declare isOffered: boolean;

  constructor() {
    super();
    this.jobs = [];
    this.elsewhere = new Set();
    this.own = '';
    this.keeping = 'kept';
    this.said = '';
    this.isOffered = false;
  }

  protected override render(): TemplateResult {
    const { keeping, jobs } = this;
    return html`
      <div role="status">
        ${keeping === 'kept' ? nothing : html`<p class="said lost">${NOT_KEPT[keeping]}</p>`}
        ${this.said === '' ? nothing : html`<p class="said">${isolated(this.said)}</p>`}
        ${this.isOffered ? this.#offer() : nothing}
      </div>
      <details>
        <summary>Jobs kept in this browser${jobs.length === 0 ? nothing : html` <span class="soft">(${jobs.length})</span>`}</summary>
        <ul>
          ${repeat(
            jobs,
            ({ id }) => id,
            (job) => this.#item(job),
          )}
        </ul>
        <p class="soft">
          They stay on this computer. A private window forgets them when it is closed, and a browser may clear them when the disk is full: the files that
          you save are the safe copy.
        </p>
        <button type="button" id="begin" @click=${() => emit(this, 'job-begun', null)}>Begin another job</button>
      </details>
    `;
  }

  #offer(): TemplateResult {
    return html`<p class="said">
      Another tab has opened other files of the shop. This job goes by its own.
      <button type="button" @click=${() => emit(this, 'shelf-answered', 'take')}>Take them for this job</button>
      <button type="button" @click=${() => emit(this, 'shelf-answered', 'leave')}>Leave it as it is</button>
    </p>`;
  }

  #item({ id, name, isDemo, savedAt }: KeptJob): TemplateResult {
    const title = `${name === '' ? 'no artwork yet' : name}${isDemo ? ', the demo' : ''}`;
    const when = new Date(savedAt).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
    return html`<li>
      <span>${isolated(title)} <span class="soft when">${when}</span></span>
      ${
        id === this.own
          ? html`<span class="soft">on the page now</span>`
          : this.elsewhere.has(id)
            ? html`<span class="soft">open in another tab</span>`
            : html`
              <button type="button" aria-label="Open: ${title}" @click=${() => this.#tell('job-opened', id)}>Open</button>
              <button type="button" aria-label="Delete: ${title}" @click=${() => this.#tell('job-deleted', id)}>Delete</button>
            `
      }
    </li>`;
  }

  /** The button may be gone afterwards, and the focus with it. */
  #tell(name: 'job-opened' | 'job-deleted', id: string): void {
    this.renderRoot.querySelector<HTMLElement>('#begin')?.focus();
    emit(this, name, id);
  }
}

customElements.define('kept-jobs', KeptJobs);
