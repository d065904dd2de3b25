import { type CSSResultGroup, css, html, LitElement, type TemplateResult } from 'lit';
import { shared } from '../look/shared.ts';
import { failureOf } from '../model/failure-of.ts';
import { emit } from './emit.ts';

/** Where artwork comes in: a file dropped anywhere on the page or chosen here, or the demo order. */
export class DropZone extends LitElement {
  static override properties = { isOver: { state: true }, fileName: {} };
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
      .name {
        overflow-wrap: anywhere;
        font: 1.05rem/1.3 var(--serif);
      }
    `,
  ];

  declare isOver: boolean;
  /** What is on the sheet now; `''` for nothing. */
  declare fileName: string;

  constructor() {
    super();
    this.isOver = false;
    this.fileName = '';
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
            : html`<p class="name">${this.fileName}</p>
              <p class="soft">Drop another file anywhere on this page.</p>`
        }
        <div class="row">
          <button type="button" class=${this.fileName === '' ? 'main' : ''} @click=${this.#open}>Choose a file…</button>
          <button type="button" @click=${() => emit(this, 'demo-chosen', null)}>Show the demo</button>
        </div>
        <input type="file" hidden accept=".svg,.svgz,.dxf" aria-label="Artwork file" @change=${this.#chosen} />
      </div>
    `;
  }

  #open(): void {
    this.renderRoot.querySelector('input')?.click();
  }

  #chosen(event: Event): void {
    const input = event.target as HTMLInputElement;
    void this.#take(input.files?.[0]);
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
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) {
      event.preventDefault();
      void this.#take(file);
    }
  };

  async #take(file: File | undefined): Promise<void> {
    if (file === undefined) {
      return;
    }
    emit(this, 'source-opening', null);
    try {
      const bytes = new Uint8Array(await file.arrayBuffer());
      emit(this, 'source-chosen', { kind: 'file', name: file.name, bytes });
    } catch {
      emit(this, 'source-failed', {
        ...failureOf(null),
        what: `${file.name} could not be opened.`,
        where: '',
        remedy: 'Check that it is still there and is a file, not a folder, and try again.',
      });
    }
  }
}

customElements.define('drop-zone', DropZone);
