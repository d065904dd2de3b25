import { CAUTION_WORDS } from '@pourproof/wording';
import { html, nothing, type TemplateResult } from 'lit';
import { shippedFonts } from '../model/shipped-fonts.ts';
import type { OfflineState } from '../offline.ts';

const SHOP_CAUTIONS: TemplateResult = html`<ul>
  ${(['dust', 'sensitisers', 'solvents', 'exotherm'] as const).map((id) => html`<li>${CAUTION_WORDS[id]}</li>`)}
</ul>`;

/** What the foot tells of the page without a connection. */
interface Offline {
  readonly state: OfflineState;
  /** Whether no other tab has the page open: a newer version would take its parts away from that one. */
  readonly isAlone: boolean;
  readonly take: () => void;
}

/** What holds for every job: rules, cautions, licences; and of the page itself, whether it needs a connection. */
export function pageFoot(offline: Offline): TemplateResult {
  return html`
    <footer>
      <p>${CAUTION_WORDS.rules} ${CAUTION_WORDS.food}</p>
      <details class="no-print">
        <summary>Usual cautions in the shop</summary>
        ${SHOP_CAUTIONS}
      </details>
      <div class="print-only">${SHOP_CAUTIONS}</div>
      ${offlineNote(offline)}
      <p class="no-print">
        Fonts under the SIL Open Font License:
        ${shippedFonts.map(({ name, licenceUrl }, k) => html`${k > 0 ? ', ' : ''}<a href=${licenceUrl}>${name}</a>`)}.
      </p>
    </footer>
  `;
}

function offlineNote({ state, isAlone, take }: Offline): TemplateResult {
  return html`<p class="no-print offline" role="status">${
    state === 'none'
      ? nothing
      : state === 'ready'
        ? 'This page is kept in the browser and opens without a connection.'
        : html`A newer version of this page is there. It is taken when the page is closed in every tab${
            isAlone
              ? html`, or <button type="button" @click=${take}>now</button>: your job is kept, and the page loads once more.`
              : '; another tab is open.'
          }`
  }</p>`;
}
