import { keepUnits } from '@pourproof/plane';
import type { Fact } from '@pourproof/wording';
import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';

/** A table of what was measured or is to be done, in the words of the printed sheet. */
export class FactTable extends LitElement {
  static override properties = { facts: { attribute: false } };
  static override styles: CSSResultGroup = [
    shared,
    css`
      table {
        width: 100%;
        border-collapse: collapse;
        font-size: 0.93rem;
      }
      th,
      td {
        padding: 0.28rem 0;
        border-bottom: 1px solid var(--rule);
        text-align: left;
        vertical-align: baseline;
        font-weight: 400;
      }
      th {
        width: 42%;
        padding-right: 0.6rem;
      }
      th,
      td {
        overflow-wrap: anywhere;
      }
      /* very large text on a phone: names above their values */
      @container (max-width: 18rem) {
        tr,
        th,
        td {
          display: block;
          width: 100%;
          padding-right: 0;
        }
        th {
          border: 0;
          padding-bottom: 0;
        }
      }
      .part {
        padding-left: 0.9rem;
      }
      b {
        font-weight: 600;
        font-variant-numeric: tabular-nums;
      }
      .soft {
        display: block;
      }
      tr {
        break-inside: avoid;
      }
      @media print {
        th {
          width: 30%;
        }
        .soft {
          display: inline;
          margin-left: 0.5rem;
        }
      }
    `,
  ];

  declare facts: readonly Fact[];

  constructor() {
    super();
    this.facts = [];
  }

  protected override render(): TemplateResult {
    return html`<table>
      <tbody>
        ${this.facts.map(
          ({ name, value, remark }) => html`<tr>
            <th scope="row" class=${name.startsWith(' ') ? 'part' : ''}>${isolated(name.trim())}</th>
            <td><b>${isolated(keepUnits(value))}</b>${remark === '' ? nothing : html` <span class="soft">${isolated(keepUnits(remark))}</span>`}</td>
          </tr>`,
        )}
      </tbody>
    </table>`;
  }
}

customElements.define('fact-table', FactTable);
