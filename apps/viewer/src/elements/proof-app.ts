import { VERDICT_WORDS } from '@pourproof/wording';
import { type CSSResultGroup, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Layer } from '../draw/layer.ts';
import { FileDrop } from '../gestures/file-drop.ts';
import { isTypedInto, pageKey } from '../gestures/page-keys.ts';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import { fontChoice, ownFont } from '../model/font-choice.ts';
import { settledJob } from '../model/job-problem.ts';
import type { PageModel } from '../model/page-model.ts';
import { filesBeside, jobFile, reportFile, type SavedFile, shelfFile } from '../model/saved-files.ts';
import type { ShownProof } from '../model/shown-proof.ts';
import { WORK_WORDS } from '../model/work-part.ts';
import { ProofController } from '../proof-controller.ts';
import './drop-zone.ts';
import type { PageEvents } from './emit.ts';
import './failure-note.ts';
import './job-form.ts';
import './kept-jobs.ts';
import './lettering-form.ts';
import './name-field.ts';
import { pageFoot } from './page-foot.ts';
import { proofAppLook } from './proof-app-look.ts';
import type { ProofSheet } from './proof-sheet.ts';
import { saveFile } from './save-file.ts';
import { severityTag } from './severity-tag.ts';
import './sheet-legend.ts';
import './step-strip.ts';

/** The demo is never taken for the maker's own. */
const DEMO_NOTE: TemplateResult = html`<p class="demo">
  <b>This is the demo</b>, an invented order with a job of its own. Yours takes its place as soon as you type a name or open a file.
</p>`;

const ZOOM_STEP = 1.5;

const SHORT = 'Proof your artwork for carved and resin-filled wood, before the first chip.';

/** What the page is for, for who sees it for the first time. */
const WHAT_FOR: TemplateResult = html`<p class="purpose first">
  Type a name, or drop a drawing, that you mean to carve in wood and fill with coloured resin. You see what your bit leaves standing, where
  colour may creep along the fibres, what sanding takes off and what to change, all before the first chip. It is worked out in this browser,
  and nothing leaves this computer.
</p>`;

/** The whole page: job ticket, proof sheet, findings. */
export class ProofApp extends LitElement {
  static override styles: CSSResultGroup = [shared, severityTag.styles, proofAppLook];

  static override properties = { layer: { state: true }, isOver: { state: true } };

  /** What the picture shows. */
  declare layer: Layer;
  /** Whether files are held over the page. */
  declare isOver: boolean;

  readonly #controller: ProofController = new ProofController(this);
  readonly #page: PageModel = this.#controller.page;
  readonly #drop: FileDrop = new FileDrop({
    over: (isOver) => {
      this.isOver = isOver;
    },
    drop: (files) => this.#open(files),
  });
  #away = new AbortController();

  constructor() {
    super();
    this.layer = 'cut';
    this.isOver = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#away = new AbortController();
    this.#drop.listen(window, this.#away.signal);
    addEventListener('keydown', this.#key, { signal: this.#away.signal });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#away.abort();
  }

  protected override render(): TemplateResult {
    const { shown } = this.#page;
    return html`
      <nav aria-label="Shortcuts">
        <a class="unseen to-findings" href="#findings" @click=${this.#skip}>Skip to the findings</a>
      </nav>
      <header class="no-print">
        <h1>pourproof</h1>
        ${this.#page.state.source === null || this.#page.state.aside !== null ? WHAT_FOR : html`<p class="purpose">${SHORT}</p>`}
        <div class="tools">
          <button type="button" ?disabled=${shown?.isWhole !== true} @click=${() => this.#save((proof) => [reportFile(proof)])}>Save report</button>
          <button type="button" ?disabled=${shown === null} @click=${() => this.#save((proof) => [jobFile(proof)])}>Save job</button>
          <button type="button" ?disabled=${shown === null} @click=${() => this.#save(filesBeside)}>Save drawing</button>
          <button type="button" ?disabled=${shown?.isWhole !== true} @click=${() => print()}>Print</button>
        </div>
      </header>
      <main
        @files-chosen=${({ detail }: CustomEvent<PageEvents['files-chosen']>) => this.#open(detail)}
        @name-typed=${({ detail }: CustomEvent<PageEvents['name-typed']>) => void this.#page.typeName(detail.text, detail.choice, detail.run)}
        @lettering-chosen=${({ detail }: CustomEvent<PageEvents['lettering-chosen']>) => {
          this.#showPaper();
          void this.#page.setLettering(detail.text, detail.font, detail.part);
        }}
        @demo-chosen=${() => this.#showDemo()}
        @demo-left=${() => this.#page.act({ do: 'leave-demo' })}
        @part-taken-off=${({ detail }: CustomEvent<PageEvents['part-taken-off']>) => this.#page.takeOff(detail)}
        @part-saved=${({ detail }: CustomEvent<PageEvents['part-saved']>) => saveAll([shelfFile(this.#page.state, detail)])}
        @job-opened=${({ detail }: CustomEvent<PageEvents['job-opened']>) => this.#controller.openKept(detail)}
        @job-deleted=${({ detail }: CustomEvent<PageEvents['job-deleted']>) => void this.#controller.keeper.delete(detail)}
        @job-begun=${() => this.#controller.beginAnother()}
        @shelf-answered=${({ detail }: CustomEvent<PageEvents['shelf-answered']>) => this.#controller.answerShelf(detail)}
        @step-chosen=${({ detail }: CustomEvent<PageEvents['step-chosen']>) => this.#page.act(detail)}
        @job-changed=${({ detail }: CustomEvent<PageEvents['job-changed']>) => this.#page.changeJob(detail)}
        @layer-chosen=${({ detail }: CustomEvent<PageEvents['layer-chosen']>) => {
          this.layer = detail;
        }}
        @place-chosen=${({ detail }: CustomEvent<PageEvents['place-chosen']>) => this.#page.select(detail)}
      >
        ${this.#name()} ${this.#steps()}
        ${this.#ticket()} ${this.#paper()}
      </main>
      ${pageFoot({
        state: this.#controller.offline.state,
        isAlone: this.#controller.keeper.elsewhere.size === 0,
        take: () => void this.#controller.takeNewer(),
      })}
    `;
  }

  #name(): TemplateResult {
    const { source, aside, job, font } = this.#page.state;
    return html`<name-field
      class="no-print"
      .text=${source?.kind === 'lettering' && aside === null ? source.text : ''}
      .choice=${fontChoice(job)}
      .ownFont=${ownFont(font)?.name ?? ''}
    ></name-field>`;
  }

  #steps(): TemplateResult {
    const { steps, at, isCut } = this.#page.bench;
    return html`<step-strip
      class="no-print"
      .steps=${steps.map(({ told }) => told)}
      .at=${at}
      .isCut=${isCut}
      ?hidden=${steps.length < 2}
    ></step-strip>`;
  }

  #ticket(): TemplateResult {
    const { source, job, ticket, aside, shelf, font, waitingText } = this.#page.state;
    const { bench, tables } = this.#page;
    return html`
      <section class="ticket no-print" aria-labelledby="ticket-title">
        <h2 id="ticket-title">Artwork</h2>
        <drop-zone
          .fileName=${source?.name ?? ''}
          .isOver=${this.isOver}
          .note=${bench.note}
          .shelf=${shelf}
          .coupons=${job.coupons?.length ?? 0}
          .isDemo=${aside !== null}
          .hasOwn=${aside !== null && (aside.source !== null || Object.keys(aside.job).length > 0)}
        ></drop-zone>
        <lettering-form
          .job=${job}
          .ticket=${ticket}
          .tables=${tables}
          .font=${font}
          .text=${source?.kind === 'lettering' ? source.text : waitingText}
        ></lettering-form>
        ${this.#kept()}
        <details class="job" ?open=${!isNarrow()}>
          <summary><h2>Job ticket${aside === null ? nothing : ' of the demo'}</h2></summary>
          <job-form .job=${job} .ticket=${ticket} .tables=${tables} .source=${source?.kind ?? null}></job-form>
        </details>
      </section>
    `;
  }

  #kept(): TemplateResult {
    const { jobs, elsewhere, keeping, said, offered } = this.#controller.keeper;
    return html`<kept-jobs
      .jobs=${jobs}
      .elsewhere=${elsewhere}
      .own=${this.#page.bench.id}
      .keeping=${keeping}
      .said=${said}
      .isOffered=${offered !== null}
    ></kept-jobs>`;
  }

  #paper(): TemplateResult {
    const { shown, failure, selection, isBusy, state } = this.#page;
    const { aside } = state;
    const { paper } = this.#controller;
    const isOld = shown !== null && isBusy;
    return html`
      <article class="paper ${isOld ? 'old' : ''}" aria-busy=${isBusy} tabindex="-1">
        <div class="picture">
          ${this.#title()} ${aside === null ? nothing : DEMO_NOTE}
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
    const settled = shown?.settled ?? settledJob(state.job, this.#page.tables);
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
                ${settled === null ? nothing : isolated(paper?.jobLine(settled) ?? '')}
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

  #save(files: (shown: ShownProof) => readonly SavedFile[]): void {
    const { shown } = this.#page;
    saveAll(shown === null ? [] : files(shown));
  }

  #open(files: PageEvents['files-chosen']): void {
    this.#showPaper();
    void this.#page.openFiles(files);
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
    const asked = pageKey(event, isTypedInto(event.composedPath()[0]));
    const sheet = this.renderRoot.querySelector<ProofSheet>('proof-sheet:not([hidden])');
    switch (asked) {
      case null:
        return;
      case 'undo':
      case 'redo':
        event.preventDefault();
        this.#page.act({ do: asked });
        return;
      case 'all':
        sheet?.showAll();
        return;
      default:
        sheet?.zoom(asked === 'closer' ? ZOOM_STEP : 1 / ZOOM_STEP);
    }
  };
}

function saveAll(files: readonly (SavedFile | null)[]): void {
  for (const file of files) {
    if (file !== null) {
      saveFile(file);
    }
  }
}

/** Whether the sheet lies below the ticket: see the widths in the look of the page. */
function isNarrow(): boolean {
  const letter = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  return document.documentElement.clientWidth <= 50 * letter;
}

customElements.define('proof-app', ProofApp);
