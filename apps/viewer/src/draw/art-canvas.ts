import { INKS } from './art-look.ts';
import type { Frame, InkColours } from './art-painter.ts';
import { type Art, artBuffers } from './art-shapes.ts';
import type { Layer } from './layer.ts';
import type { PaintAnswer, PaintQuestion } from './paint-question.ts';
import type { SheetSize, View } from './view.ts';

/** What is painted beyond each edge of the sheet, as a share of its size, so that a drag finds something there (our choice). */
const BEYOND = 0.15;

/**
 * The lines of a picture, painted by a worker and laid under the view at once: while the next frame is painted the last one is moved and
 * scaled. Never more than one frame is asked for; of the views in between only the last is painted.
 */
export class ArtCanvas {
  readonly #canvas: HTMLCanvasElement;
  readonly #worker: Worker;
  readonly #host: HTMLElement;
  #art: Art | null = null;
  #artId = 0;
  #layer: Layer = 'cut';
  #view: View | null = null;
  #size: SheetSize = { widthPx: 0, heightPx: 0 };
  /** The frame that lies on the sheet. */
  #shown: Frame | null = null;
  #isAsking = false;
  #isStale = false;

  /**
   * @param worker runs paint-worker.ts
   * @param lost called when the worker fails; the canvas is gone then
   */
  constructor(host: HTMLElement, worker: Worker, lost: () => void) {
    this.#host = host;
    this.#worker = worker;
    this.#canvas = document.createElement('canvas');
    this.#canvas.className = 'art-canvas';
    this.#canvas.setAttribute('aria-hidden', 'true');
    host.append(this.#canvas);
    worker.addEventListener('message', ({ data }: MessageEvent<PaintAnswer>) => this.#take(data));
    worker.addEventListener('error', () => {
      this.end();
      lost();
    });
  }

  /** Takes other lines or another layer of them; `null` clears the sheet. Lines to give are handed over, which takes no time. */
  show(lines: { readonly art: Art; readonly artToGive: Art } | null, layer: Layer): void {
    const art = lines?.art ?? null;
    if (art !== this.#art) {
      this.#art = art;
      this.#artId++;
      if (lines === null || art === null) {
        this.#shown = null;
        this.#canvas.hidden = true;
        delete this.#canvas.dataset.shows;
      } else {
        this.#give(lines);
      }
    }
    this.#layer = layer;
    this.#ask();
  }

  /** Follows the view. */
  place(view: View, size: SheetSize): void {
    const isSame =
      this.#view !== null &&
      this.#view.pxPerMm === view.pxPerMm &&
      this.#view.atMm[0] === view.atMm[0] &&
      this.#view.atMm[1] === view.atMm[1] &&
      this.#size.widthPx === size.widthPx &&
      this.#size.heightPx === size.heightPx;
    this.#view = view;
    this.#size = size;
    if (!isSame) {
      this.#lay();
      this.#ask();
    }
  }

  /** Ends the worker and takes the canvas away. */
  end(): void {
    this.#worker.terminate();
    this.#canvas.remove();
  }

  #ask(): void {
    if (this.#art === null || this.#view === null || this.#size.widthPx === 0) {
      return;
    }
    if (this.#isAsking) {
      this.#isStale = true;
      return;
    }
    this.#isAsking = true;
    this.#isStale = false;
    const { widthPx, heightPx } = this.#size;
    this.#post({
      kind: 'frame',
      artId: this.#artId,
      frame: {
        layer: this.#layer,
        atMm: this.#view.atMm,
        pxPerMm: this.#view.pxPerMm,
        widthPx: Math.ceil(widthPx * (1 + 2 * BEYOND)),
        heightPx: Math.ceil(heightPx * (1 + 2 * BEYOND)),
        density: devicePixelRatio,
      },
    });
  }

  #take({ artId, frame, bitmap }: PaintAnswer): void {
    this.#isAsking = false;
    if (artId !== this.#artId || this.#art === null) {
      bitmap.close();
      this.#ask();
      return;
    }
    const canvas = this.#canvas;
    canvas.width = bitmap.width;
    canvas.height = bitmap.height;
    canvas.getContext('bitmaprenderer')?.transferFromImageBitmap(bitmap);
    canvas.style.width = `${frame.widthPx}px`;
    canvas.style.height = `${frame.heightPx}px`;
    canvas.dataset.shows = this.#art.layers[frame.layer].map(({ name }) => name).join(' ');
    canvas.hidden = false;
    this.#shown = frame;
    this.#lay();
    if (this.#isStale) {
      this.#ask();
    }
  }

  /** Lays the last frame where it belongs in the view of now. */
  #lay(): void {
    if (this.#shown === null || this.#view === null) {
      return;
    }
    const { atMm, pxPerMm, widthPx, heightPx } = this.#shown;
    const by = this.#view.pxPerMm / pxPerMm;
    const x = this.#size.widthPx / 2 + (atMm[0] - this.#view.atMm[0]) * this.#view.pxPerMm;
    const y = this.#size.heightPx / 2 + (atMm[1] - this.#view.atMm[1]) * this.#view.pxPerMm;
    this.#canvas.style.transform = `translate(${x - (by * widthPx) / 2}px, ${y - (by * heightPx) / 2}px) scale(${by})`;
  }

  /** What was given before, as to the worker of another sheet, is copied. */
  #give({ art, artToGive }: { readonly art: Art; readonly artToGive: Art }): void {
    const buffers = artBuffers(artToGive);
    const isGiven = buffers.every(({ byteLength }) => byteLength === 0);
    const question = { kind: 'art', art: isGiven ? art : artToGive, inks: inksOf(this.#host) } as const;
    this.#post(question, isGiven ? [] : buffers);
  }

  #post(question: PaintQuestion, handedOver: ArrayBuffer[] = []): void {
    this.#worker.postMessage(question, handedOver);
  }
}

/** The inks as the page has them now. */
function inksOf(host: HTMLElement): InkColours {
  const style = getComputedStyle(host);
  return Object.fromEntries(
    INKS.map((ink) => [ink, style.getPropertyValue(`--${ink}`).trim()]),
  ) as unknown as InkColours;
}
