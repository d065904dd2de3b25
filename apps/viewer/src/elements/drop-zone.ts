import { type CSSResultGroup, css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { shared } from '../look/shared.ts';
import { emit } from './emit.ts';

/** Where artwork comes in, with its job, font and materials: files dropped anywhere on the page or chosen here, or the demo order. */
export class DropZone extends LitElement {
  static override properties = {
    isOver: { state: true },
    fileName: {},
    note: {},
    materialsName: {},
    coupons: { type: Number },
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

  constructor() {
    super();
    this.isOver = false;
    this.fileName = '';
    this.note = '';
    this.materialsName = '';
    this.coupons = 0;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('dragover', this.#over);
    addEventListener('dragleave', this.#leave);
    addEventListener('drop', this.#drop);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('dragover', this.#over);
    removeEventListener('dragleave', this.#leave);
    removeEventListener('drop', this.#drop);
  }

  protected override render(): TemplateResult {
    return html`
      <div class="zone ${this.isOver ? 'over' : ''}">
        ${
          this.fileName === ''
            ? html`<p>Drop an SVG or DXF file anywhere on this page. It stays on this computer.</p>`
            : html`<p class="name">${this.fileName}</p>`
        }
        <p class="soft">A job file, a font, materials.json and coupons may come along or later.</p>
        ${
          this.materialsName === ''
            ? nothing
            : html`<p class="soft">
                Materials from ${this.materialsName}
                <button type="button" @click=${() => emit(this, 'materials-dropped', null)}>Back to the usual</button>
              </p>`
        }
        ${
          this.coupons === 0
            ? nothing
            : html`<p class="soft">
                ${this.coupons} ${this.coupons === 1 ? 'row' : 'rows'} of coupons
                <button type="button" @click=${() => emit(this, 'job-changed', { coupons: undefined })}>Take them off</button>
              </p>`
        }
        <p class="note" role="alert">${this.note}</p>
        <div class="row">
          <button type="button" class=${this.fileName === '' ? 'main' : ''} @click=${this.#open}>Choose files…</button>
          <button type="button" @click=${() => emit(this, 'demo-chosen', null)}>Show the demo</button>
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

  readonly #leave = (event: DragEvent): void => {
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
