import type { Report } from '@pourproof/proof';
import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import { severityTag } from './severity-tag.ts';

type ReaderNotice = Report['artwork']['notices'][number];

const MOST_PLACES = 4;

/** What the reader skipped, closed, merged or assumed. */
export class NoticeList extends LitElement {
  static override properties = { notices: { attribute: false } };
  static override styles: CSSResultGroup = [
    shared,
    severityTag.styles,
    css`
      ul {
        margin: 0.3rem 0 0;
        padding: 0;
        list-style: none;
      }
      li {
        padding: 0.35rem 0;
        border-bottom: 1px solid var(--rule);
        font-size: 0.93rem;
        overflow-wrap: anywhere;
      }
    `,
  ];

  declare notices: readonly ReaderNotice[];

  constructor() {
    super();
    this.notices = [];
  }

  protected override render(): TemplateResult | typeof nothing {
    return this.notices.length === 0
      ? nothing
      : html`<h3>From reading the file</h3>
          <ul>
            ${this.notices.map(
              (notice) =>
                html`<li>${severityTag.render(notice.severity)} ${isolated(notice.text)} <span class="soft">${isolated(places(notice))}</span></li>`,
            )}
          </ul>`;
  }
}

function places({ where }: ReaderNotice): string {
  const texts = where
    .map(({ line, element }) =>
      [line === undefined ? '' : `line ${line}`, element ?? ''].filter(Boolean).join(': '),
    )
    .filter((text) => text !== '');
  const more = texts.length > MOST_PLACES ? `; and ${texts.length - MOST_PLACES} more` : '';
  return texts.length === 0 ? '' : `(${texts.slice(0, MOST_PLACES).join('; ')}${more})`;
}

customElements.define('notice-list', NoticeList);
