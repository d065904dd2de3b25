import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import type { Failure } from '../model/failure.ts';
import { saveFile } from './save-file.ts';

/** Why there is no proof: what, where, and what to do. */
export class FailureNote extends LitElement {
  static override properties = { failure: { attribute: false } };
  static override styles: CSSResultGroup = [
    shared,
    css`
      :host {
        padding: 0.6rem 1.2rem;
      }
      h2 {
        font-size: 1.4rem;
      }
      dl {
        display: grid;
        grid-template-columns: 7.5rem 1fr;
        gap: 0.6rem 1rem;
        max-width: 40rem;
        margin: 0.8rem 0 0;
        padding: 0.9rem 0;
        border-top: 2px solid var(--ink);
        border-bottom: 1px solid var(--ink);
      }
      dt {
        font-weight: 600;
      }
      dd {
        margin: 0;
        overflow-wrap: anywhere;
        white-space: pre-line;
      }
      button {
        margin-top: 0.9rem;
      }
      @container (max-width: 32rem) {
        dl {
          grid-template-columns: 1fr;
          gap: 0.1rem;
        }
        dd {
          margin-bottom: 0.5rem;
        }
      }
    `,
  ];

  declare failure: Failure | null;

  constructor() {
    super();
    this.failure = null;
  }

  protected override render(): TemplateResult | typeof nothing {
    if (this.failure === null) {
      return nothing;
    }
    const { what, where, remedy, bundle } = this.failure;
    const row = (name: string, text: string): TemplateResult | typeof nothing =>
      text === '' ? nothing : html`<dt>${name}</dt><dd>${isolated(text)}</dd>`;
    return html`
      <h2>There is no proof yet</h2>
      <dl>${row('What', what)}${row('Where', where)}${row('What to do', remedy)}</dl>
      ${
        bundle === undefined
          ? nothing
          : html`<button type="button" @click=${() => saveFile({ name: 'pourproof.fault.json', type: 'application/json', content: `${JSON.stringify(bundle, null, 2)}\n` })}>Save the file for the report</button>`
      }
    `;
  }
}

customElements.define('failure-note', FailureNote);
