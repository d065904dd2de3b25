import { settleJob } from '@pourproof/job';
import { keepUnits } from '@pourproof/plane';
import {
  CAUTION_WORDS,
  calendarFile,
  cutSentences,
  jobFacts,
  measureFacts,
  notAsDrawn,
  resinFacts,
  VERDICT_WORDS,
  workFacts,
} from '@pourproof/wording';
import { type CSSResultGroup, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Vetted } from 'pourproof';
import type { Layer } from '../draw/layer.ts';
import { shared } from '../look/shared.ts';
import { jobLine } from '../model/job-line.ts';
import { savedJob } from '../model/saved-job.ts';
import { shippedFonts } from '../model/shipped-fonts.ts';
import { ProofController } from '../proof-controller.ts';
import './drop-zone.ts';
import type { PageEvents } from './emit.ts';
import './fact-table.ts';
import './failure-note.ts';
import './finding-list.ts';
import './job-form.ts';
import './lettering-form.ts';
import './notice-list.ts';
import { proofAppLook } from './proof-app-look.ts';
import './proof-sheet.ts';
import type { ProofSheet } from './proof-sheet.ts';
import { saveFile } from './save-file.ts';
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

  readonly #proof: ProofController = new ProofController(this);

  constructor() {
    super();
    this.layer = 'cut';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('keydown', this.#key);
    if (location.hash === '#demo') {
      void this.#proof.useDemo();
    }
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('keydown', this.#key);
  }

  protected override render(): TemplateResult {
    const { proof } = this.#proof;
    return html`
      <nav aria-label="Shortcuts">
        <a class="unseen to-findings" href="#findings" @click=${this.#skip}>Skip to the findings</a>
      </nav>
      <header class="no-print">
        <h1>pourproof</h1>
        <p>Proof your artwork for carved and resin-filled wood, before the first chip.</p>
        <div class="tools">
          <button type="button" ?disabled=${proof === null} @click=${this.#saveReport}>Save report (JSON)</button>
          <button type="button" ?disabled=${proof === null} @click=${this.#saveJob}>Save job</button>
          <button type="button" ?disabled=${proof === null} @click=${() => print()}>Print</button>
        </div>
      </header>
      <main
        @source-opening=${() => {
          this.#showPaper();
          this.#proof.awaitSource();
        }}
        @source-chosen=${({ detail }: CustomEvent<PageEvents['source-chosen']>) => this.#proof.useSource(detail)}
        @source-failed=${({ detail }: CustomEvent<PageEvents['source-failed']>) => this.#proof.fail(detail)}
        @files-chosen=${({ detail }: CustomEvent<PageEvents['files-chosen']>) => {
          this.#showPaper();
          void this.#proof.openFiles(detail);
        }}
        @materials-dropped=${() => this.#proof.dropMaterials()}
        @demo-chosen=${() => {
          this.#showPaper();
          void this.#proof.useDemo();
        }}
        @job-changed=${({ detail }: CustomEvent<PageEvents['job-changed']>) => this.#proof.changeJob(detail)}
        @layer-chosen=${({ detail }: CustomEvent<PageEvents['layer-chosen']>) => {
          this.layer = detail;
        }}
        @place-chosen=${({ detail }: CustomEvent<PageEvents['place-chosen']>) => this.#proof.select(detail)}
      >
        ${this.#ticket()} ${this.#paper()}
      </main>
      ${this.#foot()}
    `;
  }

  #ticket(): TemplateResult {
    const { source, job, materials, materialsName, font, waitingText, note } = this.#proof;
    return html`
      <section class="ticket no-print" aria-labelledby="ticket-title">
        <h2 id="ticket-title">Artwork</h2>
        <drop-zone .fileName=${source?.name ?? ''} .note=${note} .materialsName=${materialsName} .coupons=${job.coupons?.length ?? 0}></drop-zone>
        <lettering-form
          .job=${job}
          .materials=${materials}
          .font=${font}
          .text=${source?.kind === 'lettering' ? source.text : waitingText}
        ></lettering-form>
        <details class="job" ?open=${matchMedia('(min-width: 760px)').matches}>
          <summary><h2>Job ticket</h2></summary>
          <job-form .job=${job} .materials=${materials} .source=${source?.kind ?? null}></job-form>
        </details>
      </section>
    `;
  }

  #paper(): TemplateResult {
    const { proof, failure, entries, selection, job, source, isBusy, materials } = this.#proof;
    const unit = job.units ?? 'mm';
    return html`
      <article class="paper" aria-busy=${isBusy}>
        <div class="picture">
          ${this.#title()}
          <failure-note role="alert" .failure=${failure} ?hidden=${failure === null}></failure-note>
          ${
            proof === null && failure === null
              ? html`<div class="blank">
                  <h2>${source === null ? 'The sheet is blank' : 'Reading the artwork…'}</h2>
                  <p>Drop a drawing on it, and it will show what the bit and the wood make of it:</p>
                  <sheet-legend stacked></sheet-legend>
                  <button type="button" class="main" ?hidden=${source !== null} @click=${() => this.#proof.useDemo()}>
                    See it on the demo order
                  </button>
                </div>`
              : nothing
          }
          <proof-sheet
            ?hidden=${proof === null}
            .picture=${proof?.picture ?? null}
            .layer=${this.layer}
            .entries=${entries}
            .selection=${selection}
            .unit=${unit}
          ></proof-sheet>
          <sheet-legend
            .picture=${proof?.picture ?? null}
            .layer=${this.layer}
            .unit=${unit}
            ?hidden=${proof === null}
          ></sheet-legend>
        </div>
        <section class="remarks" id="findings" tabindex="-1" aria-label="Findings and measures" ?hidden=${proof === null}>
          <h2>Findings</h2>
          <finding-list
            .entries=${entries}
            .selection=${selection}
            .job=${job}
            .materials=${materials}
            .isLettering=${source?.kind === 'lettering'}
          ></finding-list>
          <notice-list .notices=${proof?.report.artwork.notices ?? []}></notice-list>
          ${proof === null ? nothing : this.#facts(proof)}
        </section>
      </article>
    `;
  }

  /** What the printed sheet lists, in the same words. */
  #facts({ report, job }: Vetted): TemplateResult {
    const unit = this.#proof.job.units ?? 'mm';
    const isDated = report.pour.schedule.some(({ earliest }) => earliest !== undefined);
    return html`
      <h3>Measures</h3>
      <p class="lead">${keepUnits(cutSentences(report, unit).join(' '))}</p>
      <fact-table .facts=${measureFacts(report, unit)}></fact-table>
      <h3>Resin</h3>
      <fact-table .facts=${resinFacts(report, unit)}></fact-table>
      <h3>The work</h3>
      <p class="calendar no-print">
        <button type="button" ?disabled=${!isDated} @click=${this.#saveCalendar}>Save calendar (.ics)</button>
        ${isDated ? nothing : html`<span class="soft">Say under “Shop and dates” when carving starts, and the steps get dates.</span>`}
      </p>
      <fact-table .facts=${workFacts(report)}></fact-table>
      <h3>The job</h3>
      <fact-table .facts=${jobFacts(job)}></fact-table>
    `;
  }

  #title(): TemplateResult {
    const { proof, isBusy, source, job, materials } = this.#proof;
    return html`
      <div class="title">
        <p class="verdict" role="status" aria-live="polite">
          ${
            isBusy
              ? html`<span class="busy">Working out the proof…</span>`
              : proof === null
                ? nothing
                : html`${severityTag.render(proof.report.verdict)} <span>${VERDICT_WORDS[proof.report.verdict]}.</span>`
          }
        </p>
        ${proof === null || isBusy ? nothing : this.#notDrawn(proof)}
        <p class="file" ?hidden=${source === null}><b>${source?.name ?? ''}</b> ${jobLine(settleJob(job, { materials }))}</p>
      </div>
    `;
  }

  /** Right under the verdict, which holds for the artwork as read. */
  #notDrawn({ report }: Vetted): TemplateResult | typeof nothing {
    const texts = notAsDrawn(report);
    return texts.length === 0
      ? nothing
      : html`<div class="not-drawn"><b>Not as drawn</b><ul>${texts.map((text) => html`<li>${text}</li>`)}</ul></div>`;
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
    this.#save('proof', this.#proof.proof?.report);
  }

  #saveJob(): void {
    const { job, source } = this.#proof;
    if (source !== null) {
      this.#save('job', savedJob(job, source));
    }
  }

  #saveCalendar(): void {
    const { proof, source } = this.#proof;
    if (proof !== null && source !== null) {
      saveFile(
        `${stem(source.name)}.ics`,
        'text/calendar',
        calendarFile(proof.report.artwork.file, proof.report.pour.schedule),
      );
    }
  }

  #save(what: string, data: unknown): void {
    const name = this.#proof.source?.name ?? 'artwork';
    saveFile(`${stem(name)}.${what}.json`, 'application/json', `${JSON.stringify(data, null, 2)}\n`);
  }

  /** On a phone the sheet lies below the ticket, out of sight. */
  #showPaper(): void {
    if (matchMedia('(max-width: 759px)').matches) {
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

/** A name of artwork as the start of a file's name. */
function stem(name: string): string {
  return name.replace(/\.[^.]*$/u, '').replaceAll(/[^\p{L}\p{N}-]+/gu, '-');
}

customElements.define('proof-app', ProofApp);
