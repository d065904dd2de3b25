import { noticePlaceText, type ToldNotice } from '@pourproof/wording';
import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import { fieldName } from '../model/field-name.ts';
import { seenToChange } from '../model/seen-to-change.ts';
import type { ShownProof } from '../model/shown-proof.ts';
import { emit } from './emit.ts';
import { severityTag } from './severity-tag.ts';

const MOST_PLACES = 4;

/** What the reader skipped, closed, merged or assumed. */
export class NoticeList extends LitElement {
  static override properties = { proof: { attribute: false }, isOld: { attribute: false } };
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
      label {
        display: block;
        margin-top: 0.2rem;
      }
    `,
  ];

  declare proof: ShownProof | null;
  /** Whether the ticket has moved on. */
  declare isOld: boolean;

  constructor() {
    super();
    this.proof = null;
    this.isOld = false;
  }

  protected override render(): TemplateResult | typeof nothing {
    const notices = this.proof?.report.artwork.notices ?? [];
    return notices.length === 0
      ? nothing
      : html`<h3>From reading the file</h3>
          <ul>
            ${notices.map((notice) => this.#item(notice))}
          </ul>`;
  }

  #item(notice: ToldNotice): TemplateResult {
    return html`<li>
      ${severityTag.render(notice.severity)} ${isolated(notice.text)}
      <span class="soft">${isolated(this.#places(notice))}${notice.seenTo === true ? ' · seen to by you' : ''}</span>
      ${notice.seenTo === undefined ? nothing : this.#seenTo(notice.code, notice.seenTo)}
    </li>`;
  }

  #seenTo(code: string, isSeenTo: boolean): TemplateResult {
    return html`<label class="no-print">
      <input
        type="checkbox"
        data-seen-to=${code}
        .checked=${live(isSeenTo)}
        aria-disabled=${this.isOld}
        @click=${(event: Event) => this.isOld && event.preventDefault()}
        @change=${() => emit(this, 'job-changed', seenToChange(this.proof?.job ?? {}, code, !isSeenTo))}
      />
      I have looked: the artwork is as I mean it
    </label>`;
  }

  #places({ where }: ToldNotice): string {
    const { proof } = this;
    const texts = where
      .map((place) => (proof === null ? '' : noticePlaceText(place, proof.report, proof.unit, fieldName)))
      .filter((text) => text !== '');
    const more = texts.length > MOST_PLACES ? `; and ${texts.length - MOST_PLACES} more` : '';
    return texts.length === 0 ? '' : `(${texts.slice(0, MOST_PLACES).join('; ')}${more})`;
  }
}

customElements.define('notice-list', NoticeList);
