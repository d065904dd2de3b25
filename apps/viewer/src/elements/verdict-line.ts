import type { Report } from '@pourproof/proof';
import { html, type TemplateResult } from 'lit';
import { LightElement } from './light-element.ts';

const WORDS: Readonly<Record<Report['verdict'], { readonly word: string; readonly meaning: string }>> = {
  clear: { word: 'Clear', meaning: 'Nothing speaks against carving this artwork with this job.' },
  caution: { word: 'Caution', meaning: 'It can be carved, but read the findings first.' },
  stop: { word: 'Stop', meaning: 'Carved like this, it will not come out as drawn.' },
};

/** The verdict in one line, spoken when it changes. */
export class VerdictLine extends LightElement {
  static override properties = { report: { attribute: false }, isBusy: { type: Boolean } };

  declare report: Report | null;
  declare isBusy: boolean;

  protected override render(): TemplateResult {
    const { report } = this;
    const { word, meaning } = report === null ? { word: '…', meaning: 'Proving.' } : WORDS[report.verdict];
    return html`
      <div class="verdict verdict-${report?.verdict ?? 'none'}" role="status" aria-live="polite" aria-busy=${this.isBusy ? 'true' : 'false'}>
        <strong>${word}</strong>
        <span>${meaning}</span>
        <span class="busy" aria-hidden="true">${this.isBusy ? 'proving …' : ''}</span>
      </div>
    `;
  }
}
