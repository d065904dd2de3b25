import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import type { ShelfPart } from '../model/page-acts.ts';
import { EMPTY_SHELF, type Shelf } from '../model/shelf.ts';
import { emit, type PageEvents } from './emit.ts';

/** Where artwork comes in, with its job, font and materials: files dropped anywhere on the page or chosen here, or the demo order. */
export class DropZone extends LitElement {
  static override properties = {
    isOver: { attribute: false },
    fileName: {},
    note: {},
    shelf: { attribute: false },
    coupons: { type: Number },
    isDemo: { attribute: false },
    hasOwn: { attribute: false },
  };
  static override styles: CSSResultGroup = [
    shared,
    css`
      .zone {
        padding: 0.8rem;
        border: 1.5px dashed var(--ink-soft);
        border-radius: 3px;
      }
      .zone.over {
        border: 1.5px solid var(--blue);
        background: var(--blue-wash);
      }
      .row {
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem;
        margin-top: 0.6rem;
      }
      .row button {
        flex: 1 1 auto;
      }
      .own {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem 0.5rem;
        align-items: center;
        margin-top: 0.4rem;
      }
      .own span {
        flex: 1 1 100%;
        overflow-wrap: anywhere;
      }
      .note {
        margin-top: 0.6rem;
        font-weight: 600;
        color: var(--orange);
        overflow-wrap: anywhere;
        white-space: pre-line;
      }
      .note:empty {
        display: none;
      }
      .name {
        overflow-wrap: anywhere;
        font: 1.05rem/1.3 var(--serif);
      }
    `,
  ];

  /** Whether files are held over the page. */
  declare isOver: boolean;
  /** What is on the sheet now; `''` for nothing. */
  declare fileName: string;
  /** What was wrong with the files, or what else is asked for; `''` for nothing. */
  declare note: string;
  /** What the maker has for every job. */
  declare shelf: Shelf;
  /** How many rows of coupons the job has. */
  declare coupons: number;
  /** Whether the demo lies on the sheet, in place of what the maker had there. */
  declare isDemo: boolean;
  /** Whether there is anything that the demo stands in place of. */
  declare hasOwn: boolean;

  constructor() {
    super();
    this.isOver = false;
    this.fileName = '';
    this.note = '';
    this.shelf = EMPTY_SHELF;
    this.hasOwn = false;
    this.coupons = 0;
    this.isDemo = false;
  }

  protected override render(): TemplateResult {
    return html`
      <div class="zone ${this.isOver ? 'over' : ''}">
        ${
          this.fileName === ''
            ? html`<p>Drop an SVG or DXF file anywhere on this page. It stays on this computer.</p>`
            : html`<p class="name"><bdi>${this.fileName}</bdi></p>`
        }
        <p class="soft">A job file, a font, shop.json, materials.json and coupons may come along or later.</p>
        ${this.#own('shop', this.shelf.shop === null ? nothing : html`Shop from <bdi>${this.shelf.shop.name}</bdi>`)}
        ${this.#own('materials', this.shelf.materials === null ? nothing : html`Materials from <bdi>${this.shelf.materials.name}</bdi>`)}
        ${this.#own('coupons', this.coupons === 0 ? nothing : `${this.coupons} ${this.coupons === 1 ? 'row' : 'rows'} of coupons`)}
        <p class="note" role="alert">${isolated(this.note)}</p>
        <div class="row">
          <button type="button" id="choose" class=${this.fileName === '' ? 'main' : ''} @click=${this.#open}>
            Choose files…
          </button>
          ${
            this.isDemo
              ? html`<button type="button" @click=${() => this.#leave('demo-left', null)}>${this.hasOwn ? 'Back to my own' : 'Clear the sheet'}</button>`
              : html`<button type="button" @click=${() => this.#leave('demo-chosen', null)}>Show the demo</button>`
          }
        </div>
        <input
          type="file"
          hidden
          multiple
          accept=".svg,.svgz,.dxf,.json,.ttf,.otf,.ttc,.woff,.woff2"
          aria-label="Artwork, job, font, shop, materials and coupons files"
          @change=${this.#chosen}
        />
      </div>
    `;
  }

  /** What the maker has for every job, with ways to save it as the same file and to take it off. */
  #own(what: ShelfPart, words: unknown): TemplateResult | typeof nothing {
    return words === nothing
      ? nothing
      : html`<p class="own soft" data-part=${what}>
          <span>${words}</span>
          <button type="button" aria-label="Save: the file of the ${what}" @click=${() => emit(this, 'part-saved', what)}>Save</button>
          <button type="button" aria-label="Take off: the ${what}" @click=${() => this.#leave('part-taken-off', what)}>Take off</button>
        </p>`;
  }

  /** Tells something after which its button may be gone, and the focus with it. */
  #leave<Name extends keyof PageEvents>(name: Name, detail: PageEvents[Name]): void {
    this.renderRoot.querySelector<HTMLElement>('#choose')?.focus();
    emit(this, name, detail);
  }

  #open(): void {
    this.renderRoot.querySelector('input')?.click();
  }

  #chosen(event: Event): void {
    const input = event.target as HTMLInputElement;
    this.#take([...(input.files ?? [])]);
    // so that the same file can be chosen again after a change
    input.value = '';
  }

  #take(files: readonly File[]): void {
    if (files.length > 0) {
      emit(this, 'files-chosen', files);
    }
  }
}

customElements.define('drop-zone', DropZone);
