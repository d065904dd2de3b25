/** What is told of files that are dragged over the page. */
export interface FileDropPorts {
  /** Files are over the page, or no longer. */
  readonly over: (isOver: boolean) => void;
  readonly drop: (files: readonly File[]) => void;
}

type Dragged = Pick<DragEvent, 'dataTransfer' | 'relatedTarget' | 'preventDefault'>;

/** Takes files that are dropped anywhere on the page; all else that can be dragged is left to the browser. */
export class FileDrop {
  readonly #ports: FileDropPorts;
  #isOver = false;

  constructor(ports: FileDropPorts) {
    this.#ports = ports;
  }

  /** Listens on a window until the signal. */
  listen(to: Window, signal: AbortSignal): void {
    to.addEventListener('dragover', (event) => this.over(event), { signal });
    to.addEventListener('dragleave', (event) => this.leave(event), { signal });
    to.addEventListener('drop', (event) => this.drop(event), { signal });
  }

  over(event: Dragged): void {
    if (event.dataTransfer?.types.includes('Files') === true) {
      event.preventDefault();
      this.#tell(true);
    }
  }

  /** From one element of the page to the next is not out of the page. */
  leave(event: Dragged): void {
    if (event.relatedTarget === null) {
      this.#tell(false);
    }
  }

  drop(event: Dragged): void {
    this.#tell(false);
    const files = [...(event.dataTransfer?.files ?? [])];
    if (files.length > 0) {
      event.preventDefault();
      this.#ports.drop(files);
    }
  }

  #tell(isOver: boolean): void {
    if (isOver !== this.#isOver) {
      this.#isOver = isOver;
      this.#ports.over(isOver);
    }
  }
}
