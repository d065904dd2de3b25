import type { Report, Severity } from '@pourproof/proof';
import { css, html, type TemplateResult } from 'lit';

const WORDS: Readonly<Record<Severity | Report['verdict'], string>> = {
  stop: 'Stop',
  caution: 'Caution',
  note: 'Note',
  clear: 'Clear',
};

/** The word for how grave something is, told apart by its frame and ground, not by colour alone. */
export const severityTag = {
  render: (severity: Severity | Report['verdict']): TemplateResult =>
    html`<span class="tag ${severity}">${WORDS[severity]}</span>`,
  styles: css`
    .tag {
      display: inline-block;
      padding: 0 0.5em;
      border: 1.5px solid var(--ink);
      border-radius: 2px;
      font: 600 0.85rem/1.5 var(--sans);
      background: #fff;
      color: var(--ink);
    }
    .tag.stop {
      background: var(--ink);
      color: #fff;
      print-color-adjust: exact;
      -webkit-print-color-adjust: exact;
    }
    .tag.caution {
      border: 1.5px solid var(--orange);
      color: var(--orange);
      box-shadow: inset 0 -3px 0 var(--orange-wash);
    }
    .tag.note,
    .tag.clear {
      border-style: solid;
      border-width: 1px;
    }
    .tag.clear {
      border-color: var(--blue);
      color: var(--blue);
    }
  `,
};
