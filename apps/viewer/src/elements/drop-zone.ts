import { html, type TemplateResult } from 'lit';
import { LightElement } from './light-element.ts';

/** Takes a file by dropping it anywhere on the page or by choosing it; tells `open-file` with a File. */
export class DropZone extends LightElement {
  static override properties = { fileName: { type: String } };

  declare fileName: string;

  override connectedCallback(): void {
    super.connectedCallback();
    document.addEventListener('dragover', this.#over);
    document.addEventListener('dragleave', this.#leave);
    document.addEventListener('drop', this.#drop);
  }

  override disconnectedCallback(): void {
    document.removeEventListener('dragover', this.#over);
    document.removeEventListener('dragleave', this.#leave);
    document.removeEventListener('drop', this.#drop);
    super.disconnectedCallback();
  }

  readonly #over = (event: DragEvent): void => {
    event.preventDefault();
    document.body.classList.add('file-over-page');
  };

  readonly #leave = (): void => {
    document.body.classList.remove('file-over-page');
  };

  readonly #drop = (event: DragEvent): void => {
    event.preventDefault();
    this.#leave();
    this.#take(event.dataTransfer?.files ?? null);
  };

  #take(files: FileList | null): void {
    const file = files?.[0];
    if (file !== undefined) {
      this.tell('open-file', file);
    }
  }

  protected override render(): TemplateResult {
    return html`
      <section class="slip" aria-label="Artwork">
        <h2>Artwork</h2>
        <p class="on-the-bench">${this.fileName}</p>
        <p class="row">
          <label class="button">
            <input
              type="file"
              accept=".svg,.svgz,.dxf,image/svg+xml"
              @change=${(event: Event) => this.#take((event.target as HTMLInputElement).files)}
            />
            Choose an SVG or DXF file
          </label>
          <button type="button" @click=${() => this.tell('open-demo', null)}>Use the demo</button>
        </p>
        <p class="hint">Or drop a file anywhere on this page. It stays on this machine.</p>
      </section>
    `;
  }
}
