import type { LengthUnit } from '@pourproof/plane';
import { adviceFor, type Finding, type FixOption } from '@pourproof/proof';
import { html, type TemplateResult } from 'lit';
import { LightElement } from './light-element.ts';

const SEVERITY: Readonly<Record<Finding['severity'], string>> = {
  stop: 'Stop',
  caution: 'Caution',
  note: 'Note',
};

/** Fixes that this page can apply by itself, with what its button says. */
const APPLICABLE: Readonly<Partial<Record<FixOption['do'], string>>> = {
  'use-bit': 'Add this bit',
  scale: 'Scale the artwork',
  'turn-grain': 'Turn it on the board',
};

/** The findings; tells `choose` with [finding, place] and `apply-fix` with a fix option. Arrow keys walk the list. */
export class FindingList extends LightElement {
  static override properties = {
    findings: { attribute: false },
    unit: { type: String },
    chosen: { type: Number },
    place: { type: Number },
    canScale: { type: Boolean },
  };

  declare findings: readonly Finding[];
  declare unit: LengthUnit;
  declare chosen: number;
  declare place: number;
  declare canScale: boolean;

  #walk(event: KeyboardEvent): void {
    const buttons = [...this.querySelectorAll<HTMLButtonElement>('.finding-title')];
    const at = buttons.indexOf(event.target as HTMLButtonElement);
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: buttons.length - 1 }[event.key];
    if (at === -1 || to === undefined) {
      return;
    }
    event.preventDefault();
    const next = Math.min(buttons.length - 1, Math.max(0, to));
    buttons[next]?.focus();
    this.tell('choose', [next, 0]);
  }

  protected override render(): TemplateResult {
    return html`
      <section class="slip" aria-label="Findings">
        <h2>Findings <span class="count">${this.findings.length}</span></h2>
        ${this.findings.length === 0 ? html`<p>None.</p>` : ''}
        <ol class="findings" @keydown=${(event: KeyboardEvent) => this.#walk(event)}>
          ${this.findings.map((finding, k) => this.#entry(finding, k))}
        </ol>
      </section>
    `;
  }

  #entry(finding: Finding, k: number): TemplateResult {
    const advice = adviceFor(finding, this.unit);
    const isChosen = k === this.chosen;
    return html`
      <li class="finding finding-${finding.severity}">
        <button
          type="button"
          class="finding-title"
          data-code=${finding.code}
          aria-expanded=${isChosen ? 'true' : 'false'}
          aria-controls="finding-${k}"
          @click=${() => this.tell('choose', [isChosen ? -1 : k, 0])}
        >
          <span class="severity">${SEVERITY[finding.severity]}</span> ${advice.title}
        </button>
        <p class="headline">${advice.headline}</p>
        <div id="finding-${k}" ?hidden=${!isChosen}>
          <p>${advice.why}</p>
          ${this.#steps(finding, k)}
          <ul class="fixes">
            ${advice.fixes.map((fix, i) => html`<li>${fix} ${this.#applyButton(finding.fix.options[i])}</li>`)}
          </ul>
          <p class="because">Why we say so: ${finding.because.join(', ')}</p>
        </div>
      </li>
    `;
  }

  #steps(finding: Finding, k: number): TemplateResult {
    const count = finding.where.length;
    if (count === 0) {
      return html`<p>It has no place on the artwork.</p>`;
    }
    const to = (place: number): void => this.tell('choose', [k, (place + count) % count]);
    return html`
      <p class="row">
        <button type="button" ?disabled=${count < 2} @click=${() => to(this.place - 1)}>Previous place</button>
        <span>place ${this.place + 1} of ${count}</span>
        <button type="button" ?disabled=${count < 2} @click=${() => to(this.place + 1)}>Next place</button>
      </p>
    `;
  }

  #applyButton(option: FixOption | undefined): TemplateResult | string {
    const words = option === undefined ? undefined : APPLICABLE[option.do];
    if (words === undefined || (option?.do === 'scale' && !this.canScale)) {
      return '';
    }
    return html`<button type="button" class="apply" @click=${() => this.tell('apply-fix', option)}>${words}</button>`;
  }
}
