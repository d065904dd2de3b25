import { settleJob } from '@pourproof/job';
import { CAUTION_WORDS, VERDICT_WORDS } from '@pourproof/wording';
import { type CSSResultGroup, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Layer } from '../draw/layer.ts';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import type { PageModel } from '../model/page-model.ts';
import { savedJob } from '../model/saved-job.ts';
import { shippedFonts } from '../model/shipped-fonts.ts';
import type { ShownProof } from '../model/shown-proof.ts';
import { WORK_WORDS } from '../model/work-part.ts';
import { ProofController } from '../proof-controller.ts';
import './drop-zone.ts';
import type { PageEvents } from './emit.ts';
import './failure-note.ts';
import './job-form.ts';
import './lettering-form.ts';
import { proofAppLook } from './proof-app-look.ts';
import type { ProofSheet } from './proof-sheet.ts';
import { fileStem, saveFile } from './save-file.ts';
import { severityTag } from './severity-tag.ts';
import './sheet-legend.ts';

const SHOP_CAUTIONS: TemplateResult = html`<ul>
  ${(['dust', 'sensitisers', 'solvents', 'exotherm'] as const).map((id) => html`<li>${CAUTION_WORDS[id]}</li>`)}
</ul>`;

/** The whole page: job ticket, proof sheet, findings. */
export class ProofApp extends LitElement {
  static override styles: CSSResultGroup = [shared, severityTag.styles, proofAppLook];

  static override properties = { layer: { state: true } };

  /** What the picture shows. */
  declare layer: Layer;

  readonly #controller: ProofController = new ProofController(this);
  readonly #page: PageModel = this.#controller.page;

  constructor() {
    super();
    this.layer = 'cut';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('keydown', this.#key);
    if (location.hash === '#demo') {
      void this.#page.showDemo();
    }
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('keydown', this.#key);
  }

  protected override render(): TemplateResult {
    const { shown } = this.#page;
    return html`
      <nav aria-label="Shortcuts">
        <a class="unseen to-findings" href="#findings" @click=${this.#skip}>Skip to the findings</a>
      </nav>
      <header class="no-print">
        <h1>pourproof</h1>
        <p>Proof your artwork for carved and resin-filled wood, before the first chip.</p>
        <div class="tools">
          <button type="button" ?disabled=${shown?.isWhole !== true} @click=${this.#saveReport}>Save report (JSON)</button>
          <button type="button" ?disabled=${shown === null} @click=${this.#saveJob}>Save job</button>
          <button type="button" ?disabled=${shown?.isWhole !== true} @click=${() => print()}>Print</button>
        </div>
      </header>
      <main
        @files-chosen=${({ detail }: CustomEvent<PageEvents['files-chosen']>) => {
          this.#showPaper();
          void this.#page.openFiles(detail);
        }}
        @lettering-chosen=${({ detail }: CustomEvent<PageEvents['lettering-chosen']>) => {
          this.#showPaper();
          void this.#page.setLettering(detail.text, detail.font, detail.part);
        }}
        @demo-chosen=${() => this.#showDemo()}
        @demo-left=${() => this.#page.takeDemoOff()}
        @materials-dropped=${() => this.#page.dropMaterials()}
        @job-changed=${({ detail }: CustomEvent<PageEvents['job-changed']>) => this.#page.changeJob(detail)}
        @layer-chosen=${({ detail }: CustomEvent<PageEvents['layer-chosen']>) => {
          this.layer = detail;
        }}
        @place-chosen=${({ detail }: CustomEvent<PageEvents['place-chosen']>) => this.#page.select(detail)}
      >
        ${this.#ticket()} ${this.#paper()}
      </main>
      ${this.#foot()}
    `;
  }

  #ticket(): TemplateResult {
    const { source, job, ticket, aside, materials, materialsName, font, waitingText, note } =
      this.#page.state;
    return html`
      <section class="ticket no-print" aria-labelledby="ticket-title">
        <h2 id="ticket-title">Artwork</h2>
        <drop-zone
          .fileName=${source?.name ?? ''}
          .note=${note}
          .materialsName=${materialsName}
          .coupons=${job.coupons?.length ?? 0}
          .isDemo=${aside !== null}
        ></drop-zone>
        <lettering-form
          .job=${job}
          .ticket=${ticket}
          .materials=${materials}
          .font=${font}
          .text=${source?.kind === 'lettering' ? source.text : waitingText}
        ></lettering-form>
        <details class="job" ?open=${!isNarrow()}>
          <summary><h2>Job ticket${aside === null ? nothing : ' of the demo'}</h2></summary>
          <job-form .job=${job} .ticket=${ticket} .materials=${materials} .source=${source?.kind ?? null}></job-form>
        </details>
      </section>
    `;
  }

  #paper(): TemplateResult {
    const { shown, failure, selection, isBusy } = this.#page;
    const { paper } = this.#controller;
    const isOld = shown !== null && isBusy;
    return html`
      <article class="paper ${isOld ? 'old' : ''}" aria-busy=${isBusy} tabindex="-1">
        <div class="picture">
          ${this.#title()}
          <failure-note role="alert" tabindex="-1" .failure=${failure} ?hidden=${failure === null}></failure-note>
          ${shown === null && failure === null ? this.#blank() : nothing}
          ${paper?.picture(shown, this.layer, selection)}
        </div>
        <section class="remarks" id="findings" tabindex="-1" aria-label="Findings and measures" aria-busy=${shown?.isWhole === false} ?hidden=${shown === null}>
          ${paper?.remarks(shown, selection, isOld)}
        </section>
      </article>
    `;
  }

  #blank(): TemplateResult {
    const { isBusy } = this.#page;
    return html`<div class="blank">
      <h2>${isBusy ? 'Reading the artwork…' : 'The sheet is blank'}</h2>
      <p>Drop a drawing on it, and it will show what the bit and the wood make of it:</p>
      <sheet-legend stacked></sheet-legend>
      <button type="button" class="main" ?hidden=${isBusy} @click=${this.#leaveBlank}>
        See it on the demo order
      </button>
    </div>`;
  }

  #title(): TemplateResult {
    const { shown, isBusy, state } = this.#page;
    const { paper } = this.#controller;
    const source = shown?.source ?? state.source;
    const told = (proof: ShownProof): TemplateResult =>
      html`${severityTag.render(proof.report.verdict)} <span>${VERDICT_WORDS[proof.report.verdict]}.</span>`;
    return html`
      <div class="title">
        <p class="verdict" role="status" aria-live="polite">
          ${isBusy ? this.#atWork() : shown === null ? nothing : told(shown)}
        </p>
        ${isBusy || shown?.isWhole !== false ? nothing : html`<p class="trying">Ways out are still being tried.</p>`}
        ${shown !== null && isBusy ? html`<p class="before">Before your last change: ${told(shown)}</p>` : nothing}
        ${shown === null || isBusy ? nothing : paper?.notDrawn(shown)}
        ${
          source === null
            ? nothing
            : html`<p class="file">
                <b><bdi>${source.name}</bdi></b>
                ${isolated(paper?.jobLine(shown?.settled ?? settleJob(state.job, { materials: state.materials })) ?? '')}
              </p>`
        }
      </div>
    `;
  }

  /** The part that is worked on is named only where that takes long, so that nobody is told of each. */
  #atWork(): TemplateResult {
    const { working } = this.#page;
    return html`<span class="busy no-print">Working out the proof${working === null ? nothing : html`: ${WORK_WORDS[working]}`}…</span>`;
  }

  #foot(): TemplateResult {
    return html`
      <footer>
        <p>${CAUTION_WORDS.rules} ${CAUTION_WORDS.food}</p>
        <details class="no-print">
          <summary>Usual cautions in the shop</summary>
          ${SHOP_CAUTIONS}
        </details>
        <div class="print-only">${SHOP_CAUTIONS}</div>
        <p class="no-print">
          Fonts under the SIL Open Font License:
          ${shippedFonts.map(({ name, licenceUrl }, k) => html`${k > 0 ? ', ' : ''}<a href=${licenceUrl}>${name}</a>`)}.
        </p>
      </footer>
    `;
  }

  #saveReport(): void {
    this.#save((shown) => [shown.report, 'proof']);
  }

  #saveJob(): void {
    this.#save((shown) => [savedJob(shown.job, shown.source), 'job']);
  }

  #save(what: (shown: ShownProof) => readonly [data: unknown, kind: string]): void {
    const { shown } = this.#page;
    if (shown !== null) {
      const [data, kind] = what(shown);
      const name = `${fileStem(shown.source.name)}.${kind}.json`;
      saveFile(name, 'application/json', `${JSON.stringify(data, null, 2)}\n`);
    }
  }

  #showDemo(): void {
    this.#showPaper();
    void this.#page.showDemo();
  }

  /** The button that has the focus goes away with the blank sheet. */
  #leaveBlank(): void {
    this.renderRoot.querySelector<HTMLElement>('.paper')?.focus({ preventScroll: true });
    this.#showDemo();
  }

  /** On a phone the sheet lies below the ticket, out of sight. */
  #showPaper(): void {
    if (isNarrow()) {
      this.renderRoot.querySelector('.paper')?.scrollIntoView();
    }
  }

  #skip(event: Event): void {
    event.preventDefault();
    const target = this.renderRoot.querySelector<HTMLElement>('#findings:not([hidden])');
    (target ?? this.renderRoot.querySelector<HTMLElement>('.ticket button, drop-zone'))?.focus();
  }

  readonly #key = (event: KeyboardEvent): void => {
    const [focused] = event.composedPath();
    const isTyping =
      focused instanceof HTMLTextAreaElement ||
      focused instanceof HTMLSelectElement ||
      focused instanceof HTMLInputElement;
    if (isTyping || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const sheet = this.renderRoot.querySelector<ProofSheet>('proof-sheet:not([hidden])');
    if (event.key === '+' || event.key === '=') {
      sheet?.zoom(1.5);
    } else if (event.key === '-' || event.key === '−') {
      sheet?.zoom(1 / 1.5);
    } else if (event.key === '0') {
      sheet?.showAll();
    }
  };
}

/** Whether the sheet lies below the ticket: see the widths in the look of the page. */
function isNarrow(): boolean {
  const letter = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  return document.documentElement.clientWidth <= 50 * letter;
}

customElements.define('proof-app', ProofApp);
