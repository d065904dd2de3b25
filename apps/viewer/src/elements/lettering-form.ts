import { MeasureError, parseLengthMm } from '@pourproof/plane';
import { html, type TemplateResult } from 'lit';
import { LightElement } from './light-element.ts';

/** Lettering from the maker's own font; tells `open-lettering` with the text, the font and the height of capitals. */
export class LetteringForm extends LightElement {
  static override properties = { trouble: { state: true } };

  declare trouble: string;

  constructor() {
    super();
    this.trouble = '';
  }

  async #submit(event: SubmitEvent): Promise<void> {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const text = (form.elements.namedItem('text') as HTMLInputElement).value;
    const file = (form.elements.namedItem('font') as HTMLInputElement).files?.[0];
    const height = (form.elements.namedItem('capHeight') as HTMLInputElement).value;
    try {
      const capHeightMm = parseLengthMm(height);
      if (text.trim() === '' || file === undefined || !(capHeightMm > 0)) {
        this.trouble = 'Lettering needs a text, a font file and a height above 0.';
        return;
      }
      const font = new Uint8Array(await file.arrayBuffer());
      this.trouble = '';
      this.tell('open-lettering', { kind: 'lettering', text, fontName: file.name, font, capHeightMm });
    } catch (error) {
      if (!(error instanceof MeasureError)) {
        throw error;
      }
      this.trouble = error.message;
    }
  }

  protected override render(): TemplateResult {
    return html`
      <details class="slip">
        <summary><h2>Lettering instead of a file</h2></summary>
        <form @submit=${(event: SubmitEvent) => this.#submit(event)}>
          <label>Text <input name="text" autocomplete="off" /></label>
          <label>Font file <input name="font" type="file" accept=".ttf,.otf,.woff,.woff2" /></label>
          <label>Height of capitals <input name="capHeight" value="15mm" autocomplete="off" /></label>
          <button type="submit">Set it</button>
          <p class="trouble" role="alert">${this.trouble}</p>
        </form>
      </details>
    `;
  }
}
