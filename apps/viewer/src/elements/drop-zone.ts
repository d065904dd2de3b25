import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { isolated } from '../look/isolated.ts';
import { shared } from '../look/shared.ts';
import { emit, type PageEvents } from './emit.ts';

/** Where artwork comes in, with its job, font and materials: files dropped anywhere on the page or chosen here, or the demo order. */
export class DropZone extends LitElement {
  static override properties = {
    isOver: { state: true },
    fileName: {},
    note: {},
    materialsName: {},
    coupons: { type: Number },
    isDemo: { attribute: false },
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

  declare isOver: boolean;
  /** What is on the sheet now; `''` for nothing. */
  declare fileName: string;
  /** What was wrong with the files, or what else is asked for; `''` for nothing. */
  declare note: string;
  /** The file that the materials are from; `''` for the usual ones. */
  declare materialsName: string;
  /** How many rows of coupons the job has. */
  declare coupons: number;
  /** Whether the demo lies on the sheet, in place of what the maker had there. */
  declare isDemo: boolean;

  constructor() {
    super();
    this.isOver = false;
    this.fileName = '';
    this.note = '';
    this.materialsName = '';
    this.coupons = 0;
    this.isDemo = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('dragover', this.#over);
    addEventListener('dragleave', this.#out);
    addEventListener('drop', this.#drop);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('dragover', this.#over);
    removeEventListener('dragleave', this.#out);
    removeEventListener('drop', this.#drop);
  }

  protected override render(): TemplateResult {
    return html`
      <div class="zone ${this.isOver ? 'over' : ''}">
        ${
          this.fileName === ''
            ? html`<p>Drop an SVG or DXF file anywhere on this page. It stays on this computer.</p>`
            : html`<p class="name"><bdi>${this.fileName}</bdi></p>`
        }
        <p class="soft">A job file, a font, materials.json and coupons may come along or later.</p>
        ${
          this.materialsName === ''
            ? nothing
            : html`<p class="soft">
                Materials from <bdi>${this.materialsName}</bdi>
                <button type="button" @click=${() => this.#leave('materials-dropped', null)}>Back to the usual</button>
              </p>`
        }
        ${
          this.coupons === 0
            ? nothing
            : html`<p class="soft">
                ${this.coupons} ${this.coupons === 1 ? 'row' : 'rows'} of coupons
                <button type="button" @click=${() => this.#leave('job-changed', { coupons: undefined })}>Take them off</button>
              </p>`
        }
        <p class="note" role="alert">${isolated(this.note)}</p>
        <div class="row">
          <button type="button" id="choose" class=${this.fileName === '' ? 'main' : ''} @click=${this.#open}>
            Choose files…
          </button>
          <button type="button" @click=${() => emit(this, 'demo-chosen', null)}>Show the demo</button>
          ${
            this.isDemo
              ? html`<button type="button" @click=${() => this.#leave('demo-left', null)}>Back to my own</button>`
              : nothing
          }
        </div>
        <input
          type="file"
          hidden
          multiple
          accept=".svg,.svgz,.dxf,.json,.ttf,.otf,.ttc,.woff,.woff2"
          aria-label="Artwork, job, font and materials files"
          @change=${this.#chosen}
        />
      </div>
    `;
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

  readonly #over = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files')) {
      event.preventDefault();
      this.isOver = true;
    }
  };

  readonly #out = (event: DragEvent): void => {
    if (event.relatedTarget === null) {
      this.isOver = false;
    }
  };

  readonly #drop = (event: DragEvent): void => {
    this.isOver = false;
    const files = [...(event.dataTransfer?.files ?? [])];
    if (files.length > 0) {
      event.preventDefault();
      this.#take(files);
    }
  };

  #take(files: readonly File[]): void {
    if (files.length > 0) {
      emit(this, 'files-chosen', files);
    }
  }
}

customElements.define('drop-zone', DropZone);
