import { type CSSResultGroup, html, LitElement, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { shared } from '../look/shared.ts';
import { OWN_FONT, SINGLE_STROKES } from '../model/font-choice.ts';
import { shippedFonts } from '../model/shipped-fonts.ts';
import { emit } from './emit.ts';
import { nameFieldLook } from './name-field-look.ts';

/** One wide field: what is typed is set and proved as it is typed, in the font that is chosen below it by its own letters. */
export class NameField extends LitElement {
  static override properties = {
    text: {},
    choice: {},
    ownFont: {},
    picked: { state: true },
  };
  static override styles: CSSResultGroup = [shared, nameFieldLook];

  /** What is set now; `''` where no lettering is on the sheet. */
  declare text: string;
  /** The font of the job. */
  declare choice: string;
  /** Name of the maker's own font; `''` where none is at hand. */
  declare ownFont: string;
  /** A font that was picked before there were letters; `null` for that of the job. */
  declare picked: string | null;

  /** What is typed until the field is left is one step. */
  #run = '';

  constructor() {
    super();
    this.text = '';
    this.choice = shippedFonts[0]?.file ?? SINGLE_STROKES;
    this.ownFont = '';
    this.picked = null;
  }

  protected override render(): TemplateResult {
    const choice = this.picked ?? this.choice;
    return html`
      <form @submit=${(event: Event) => event.preventDefault()}>
        <label for="name">Type a name</label>
        <textarea
          id="name"
          class=${letters(choice)}
          rows=${this.text.split('\n').length}
          dir="auto"
          autocomplete="off"
          spellcheck="false"
          placeholder="and see what becomes of it in wood"
          .value=${live(this.text)}
          @focus=${() => {
            this.#run = `name ${Date.now()}`;
          }}
          @input=${(event: Event) => this.#tell((event.target as HTMLTextAreaElement).value, choice, this.#run)}
        ></textarea>
        <fieldset>
          <legend class="unseen">Font</legend>
          ${shippedFonts.map(({ file, name }) => this.#font(file, name, choice))}
          ${this.#font(SINGLE_STROKES, 'Single strokes', choice)}
          ${this.ownFont === '' ? '' : this.#font(OWN_FONT, this.ownFont, choice)}
        </fieldset>
      </form>
    `;
  }

  #font(id: string, name: string, choice: string): TemplateResult {
    return html`<label class="font ${letters(id)}">
      <input
        type="radio"
        name="font"
        value=${id}
        .checked=${live(id === choice)}
        @change=${() => {
          this.picked = id;
          this.#tell(this.text, id, '');
        }}
      />
      <span>${name}</span>
    </label>`;
  }

  #tell(text: string, choice: string, run: string): void {
    if (text.trim() !== '') {
      this.picked = null;
      emit(this, 'name-typed', { text, choice, run });
    }
  }
}

/** The class that shows letters in a font of the page. */
function letters(choice: string): string {
  const at = shippedFonts.findIndex(({ file }) => file === choice);
  return at < 0 ? '' : `letters-${at}`;
}

customElements.define('name-field', NameField);
