import type { Bounds, Point } from '@pourproof/plane';
import { fittingView, type SheetSize, USUAL_PX_PER_MM, type View, viewBetween, zoomedView } from './view.ts';

const GLIDE_MS = 350;
/** Minimum margin around a chosen place, mm. */
const PLACE_MARGIN_MM = 5;
/** A view at most this much closer than the one that fits still counts as showing all. */
const FIT_SLACK = 1.05;
/** The farthest view is a quarter of the scale that fits; at the closest, a micrometre is 2 px. */
const MIN_OF_FIT = 0.25;
const MAX_PX_PER_MM = 2000;

/** What a sheet shows of the artwork, as it moves: it pans, zooms, glides and fits. */
export class SheetView {
  view: View = { atMm: [0, 0], pxPerMm: USUAL_PX_PER_MM };
  size: SheetSize = { widthPx: 600, heightPx: 400 };

  readonly #show: () => void;
  #bounds: Bounds = [0, 0, 0, 0];
  #glide = 0;

  /** @param show called whenever the view has moved */
  constructor(show: () => void) {
    this.#show = show;
  }

  /** The view that shows the whole artwork. */
  get whole(): View {
    return fittingView(this.#bounds, this.size);
  }

  /** Whether less than the whole artwork is in view. */
  get isClose(): boolean {
    return this.view.pxPerMm > FIT_SLACK * this.whole.pxPerMm;
  }

  /** Takes other artwork, and shows the whole of it if it has another box. */
  setBounds(bounds: Bounds): void {
    const isSame = this.#bounds.every((side, k) => side === bounds[k]);
    this.#bounds = bounds;
    if (!isSame) {
      this.stop();
      this.view = this.whole;
    }
  }

  /** Takes another size of the sheet: a whole view stays whole, a close one keeps its place. */
  setSize(size: SheetSize): void {
    const isClose = this.isClose;
    this.size = size;
    this.view = isClose ? this.view : this.whole;
    this.#show();
  }

  /** Zooms about a point of the sheet, px; about its middle where none is given. */
  zoom(factor: number, at: Point = [this.size.widthPx / 2, this.size.heightPx / 2]): void {
    this.stop();
    const scale = Math.min(
      Math.max(this.view.pxPerMm * factor, MIN_OF_FIT * this.whole.pxPerMm),
      MAX_PX_PER_MM,
    );
    this.view = zoomedView(this.view, scale / this.view.pxPerMm, at, this.size);
    this.#show();
  }

  /** Moves the artwork by so many px. */
  pan(dx: number, dy: number): void {
    this.stop();
    const { atMm, pxPerMm } = this.view;
    this.view = { atMm: [atMm[0] - dx / pxPerMm, atMm[1] - dy / pxPerMm], pxPerMm };
    this.#show();
  }

  /** Glides to the whole artwork. */
  showAll(): void {
    this.#glideTo(this.whole);
  }

  /** Glides to a place with its outline. */
  goTo([x, y]: Point, outline: readonly (readonly Point[])[]): void {
    const half = (k: 0 | 1, at: number): number =>
      PLACE_MARGIN_MM + outline.flat().reduce((max, point) => Math.max(max, Math.abs(point[k] - at)), 0);
    const [w, h] = [half(0, x), half(1, y)];
    const close = fittingView([x - w, y - h, x + w, y + h], this.size);
    this.#glideTo({ atMm: [x, y], pxPerMm: Math.max(close.pxPerMm, this.whole.pxPerMm) });
  }

  /** Ends a glide where it is. */
  stop(): void {
    cancelAnimationFrame(this.#glide);
  }

  #glideTo(to: View): void {
    this.stop();
    const from = this.view;
    const start = performance.now();
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
      this.view = to;
      this.#show();
      return;
    }
    const step = (now: number): void => {
      const share = Math.min((now - start) / GLIDE_MS, 1);
      this.view = share === 1 ? to : viewBetween(from, to, share * share * (3 - 2 * share));
      this.#show();
      if (share < 1) {
        this.#glide = requestAnimationFrame(step);
      }
    };
    this.#glide = requestAnimationFrame(step);
  }
}
