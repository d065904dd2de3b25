import { MeasureError, parseLengthMm } from '@pourproof/plane';
import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { shared } from '../look/shared.ts';
import { fetchBytes } from '../model/demo-order.ts';
import { failureOf } from '../model/failure-of.ts';
import { shippedFonts } from '../model/shipped-fonts.ts';
import { emit } from './emit.ts';

const OWN = 'own';

/** Sets lettering in a font file of the maker's own or in one that comes with the page. */
export class LetteringForm extends LitElement {
  static override properties = { problem: { state: true }, choice: { state: true } };
  static override styles: CSSResultGroup = [
    shared,
    css`
      form {
        display: grid;
        gap: 0.6rem;
        padding-top: 0.6rem;
      }
      label {
        display: grid;
        gap: 0.15rem;
      }
      summary {
        cursor: pointer;
      }
      .problem {
        font-weight: 600;
        color: var(--orange);
      }
    `,
  ];

  declare problem: string;
  declare choice: string;

  constructor() {
    super();
    this.problem = '';
    this.choice = '0';
  }

  protected override render(): TemplateResult {
    return html`
      <details>
        <summary>Type lettering instead</summary>
        <form @submit=${this.#submit} novalidate>
          <label>Text <textarea name="text" rows="2" required></textarea></label>
          <label>
            Font
            <select name="font" @change=${this.#pick}>
              ${shippedFonts.map((font, index) => html`<option value=${index}>${font.name}</option>`)}
              <option value=${OWN}>A font file of mine…</option>
            </select>
          </label>
          ${
            this.choice === OWN
              ? html`<label>Font file <input type="file" name="file" accept=".ttf,.otf,.woff,.woff2,.ttc" /></label>`
              : nothing
          }
          <label>Height of capitals <input name="cap" value="15mm" autocomplete="off" /></label>
          ${this.problem === '' ? nothing : html`<p class="problem" role="alert">${this.problem}</p>`}
          <button class="main">Set this lettering</button>
        </form>
      </details>
    `;
  }

  #pick(event: Event): void {
    this.choice = (event.target as HTMLSelectElement).value;
  }

  async #submit(event: Event): Promise<void> {
    event.preventDefault();
    const form = new FormData(event.target as HTMLFormElement);
    const text = String(form.get('text') ?? '').trim();
    const capHeight = String(form.get('cap') ?? '').trim();
    const file = form.get('file');
    this.problem = problemOf(text, capHeight, this.choice === OWN, file);
    if (this.problem !== '') {
      return;
    }
    emit(this, 'source-opening', null);
    try {
      const shipped = shippedFonts[Number(this.choice)];
      const font =
        shipped === undefined
          ? new Uint8Array(await (file as File).arrayBuffer())
          : await fetchBytes(shipped.url);
      emit(this, 'job-changed', { capHeight });
      emit(this, 'source-chosen', { kind: 'lettering', name: text.replaceAll(/\s+/gu, ' '), text, font });
    } catch (error) {
      emit(this, 'source-failed', failureOf(error));
    }
  }
}

function problemOf(text: string, capHeight: string, isOwn: boolean, file: unknown): string {
  if (text === '') {
    return 'Type the text to set.';
  }
  if (isOwn && !(file instanceof File && file.size > 0)) {
    return 'Choose the font file.';
  }
  try {
    return parseLengthMm(capHeight) > 0 ? '' : 'The height of capitals must be above 0.';
  } catch (error) {
    if (error instanceof MeasureError) {
      return error.message;
    }
    throw error;
  }
}

customElements.define('lettering-form', LetteringForm);
