import { formatLength, MeasureError, parseLengthMm } from '@pourproof/plane';
import type { FixOption, JobFile } from '@pourproof/proof';
import { html, type TemplateResult } from 'lit';
import { ProofController } from '../proof-controller.ts';
import type { Source } from '../proof-request.ts';
import { saveText } from '../save-text.ts';
import { LightElement } from './light-element.ts';

/** The page: slips on the left, the sheet in the middle, findings on the right; one column on a phone. */
export class ProofApp extends LightElement {
  static override properties = { sizeTrouble: { state: true } };

  readonly #proof = new ProofController(this);
  declare sizeTrouble: string;

  constructor() {
    super();
    this.sizeTrouble = '';
  }

  async #openFile(file: File): Promise<void> {
    const bytes = new Uint8Array(await file.arrayBuffer());
    this.sizeTrouble = '';
    this.#proof.open({ kind: 'file', name: file.name, bytes, widthMm: null });
  }

  #resize(text: string): void {
    try {
      this.#proof.resize(text === '' ? null : positiveMm(text));
      this.sizeTrouble = '';
    } catch (error) {
      if (!(error instanceof MeasureError)) {
        throw error;
      }
      this.sizeTrouble = error.message;
    }
  }

  #apply(option: FixOption): void {
    const { job, proof, source } = this.#proof.state;
    const value = Number(option.value);
    if (option.do === 'use-bit') {
      this.#proof.change({ bit: [...(job.bit ?? []), `flat:${value}mm`] });
    } else if (option.do === 'turn-grain') {
      this.#proof.change({ grain: `${turned(Number.parseFloat(job.grain ?? '0') - value)}deg` });
    } else if (option.do === 'scale' && source.kind === 'file' && proof !== null) {
      const [minX, , maxX] = proof.report.artwork.boundsMm;
      this.#proof.resize((maxX - minX) * value);
    }
  }

  #saveReport(): void {
    const { proof } = this.#proof.state;
    if (proof !== null) {
      saveText('proof-report.json', `${JSON.stringify(proof.report, null, 2)}\n`, 'application/json');
    }
  }

  protected override render(): TemplateResult {
    const { proof, isBusy } = this.#proof.state;
    return html`
      <a class="skip" href="#findings">Skip to the findings</a>
      <header>
        <h1>pourproof</h1>
        <verdict-line .report=${proof?.report ?? null} .isBusy=${isBusy}></verdict-line>
      </header>
      <main
        @open-file=${(event: CustomEvent<File>) => this.#openFile(event.detail)}
        @open-demo=${() => this.#proof.openDemo()}
        @open-lettering=${(event: CustomEvent<Source>) => this.#proof.open(event.detail)}
        @change-job=${(event: CustomEvent<Partial<JobFile>>) => this.#proof.change(event.detail)}
        @resize=${(event: CustomEvent<string>) => this.#resize(event.detail)}
        @choose=${(event: CustomEvent<[number, number]>) => this.#proof.choose(...event.detail)}
        @apply-fix=${(event: CustomEvent<FixOption>) => this.#apply(event.detail)}
        @save-report=${() => this.#saveReport()}
      >
        ${this.#settings()} ${this.#paper()} ${this.#results()}
      </main>
      <footer>
        Wood dust, uncured resin, hardener and solvents harm: extraction, mask, gloves, fresh air, no flames; small cups and
        thin pours. Data sheets and local rules come first. Colour travel is a prior: cut a test coupon in the same board.
      </footer>
    `;
  }

  #settings(): TemplateResult {
    const { source, job, jobTrouble } = this.#proof.state;
    const isFile = source.kind === 'file';
    const unit = job.units ?? 'mm';
    return html`
      <div class="settings">
        <drop-zone .fileName=${isFile ? source.name : `“${source.text}” in ${source.fontName}`}></drop-zone>
        <lettering-form></lettering-form>
        <job-form
          .job=${job}
          .trouble=${jobTrouble ?? ''}
          .sizeTrouble=${this.sizeTrouble}
          .isFile=${isFile}
          .width=${isFile && source.widthMm !== null ? formatLength(source.widthMm, unit) : ''}
        ></job-form>
      </div>
    `;
  }

  #paper(): TemplateResult {
    const { proof, trouble, job, finding, place } = this.#proof.state;
    return html`
      <div class="paper">
        ${
          trouble === null
            ? ''
            : html`<section class="slip reader-trouble" role="alert">
                <h2>This can’t be read</h2>
                <p>${trouble.what} ${trouble.where === '' ? '' : html`<br />Where: ${trouble.where}.`}</p>
                <p>${trouble.remedy}</p>
              </section>`
        }
        <proof-sheet
          .proof=${proof}
          .unit=${job.units ?? 'mm'}
          .grainDeg=${Number.parseFloat(job.grain ?? '0')}
          .finding=${finding}
          .place=${place}
        ></proof-sheet>
      </div>
    `;
  }

  #results(): TemplateResult {
    const { proof, job, finding, place, source } = this.#proof.state;
    const unit = job.units ?? 'mm';
    return html`
      <div class="results" id="findings" tabindex="-1">
        ${
          proof === null
            ? ''
            : html`<finding-list
                  .findings=${proof.report.findings}
                  .unit=${unit}
                  .chosen=${finding}
                  .place=${place}
                  .canScale=${source.kind === 'file'}
                ></finding-list>
                <measures-table .report=${proof.report} .unit=${unit}></measures-table>`
        }
      </div>
    `;
  }
}

function positiveMm(text: string): number {
  const mm = parseLengthMm(text);
  if (!(mm > 0)) {
    throw new MeasureError(`The width is ${text}; it must be above 0.`);
  }
  return mm;
}

function turned(deg: number): number {
  return ((deg % 180) + 180) % 180;
}
