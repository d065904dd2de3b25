import type { Point } from '@pourproof/plane';
import type { SheetView } from '../draw/sheet-view.ts';

const PAN_STEP_PX = 60;
/** Zoom for each px of the wheel, and of a pinch on a touchpad, as powers of e. */
const WHEEL_RATE = 0.0015;
const PINCH_RATE = 0.01;
/** A pointer that moves no farther than this, px, has clicked. */
const CLICK_SLACK_PX = 4;

/** Turns what hands do on a sheet into moves of its view. */
export class SheetGestures {
  readonly #view: SheetView;
  readonly #sheet: () => HTMLElement;
  readonly #click: (target: Element) => void;
  readonly #pointers = new Map<number, Point>();
  #moved = 0;

  constructor(view: SheetView, sheet: () => HTMLElement, click: (target: Element) => void) {
    this.#view = view;
    this.#sheet = sheet;
    this.#click = click;
  }

  /** Moves the artwork by the arrow keys. */
  key(event: KeyboardEvent): void {
    const pans: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [PAN_STEP_PX, 0],
      ArrowRight: [-PAN_STEP_PX, 0],
      ArrowUp: [0, PAN_STEP_PX],
      ArrowDown: [0, -PAN_STEP_PX],
    };
    const pan = pans[event.key];
    if (pan !== undefined && !event.altKey && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      this.#view.pan(...pan);
    }
  }

  /** Zooms about the pointer. */
  wheel(event: WheelEvent): void {
    event.preventDefault();
    // browsers report a pinch on a touchpad as a wheel with Ctrl held
    const rate = event.ctrlKey ? PINCH_RATE : WHEEL_RATE;
    this.#view.zoom(Math.exp(-event.deltaY * rate), this.#onSheet([event.clientX, event.clientY]));
  }

  press(event: PointerEvent): void {
    this.#pointers.set(event.pointerId, [event.clientX, event.clientY]);
    this.#moved = 0;
  }

  /** Moves the artwork with one pointer, and zooms with two. */
  drag(event: PointerEvent): void {
    const before = this.#pointers.get(event.pointerId);
    if (before === undefined || (event.pointerType === 'mouse' && event.buttons === 0)) {
      this.#pointers.delete(event.pointerId);
      return;
    }
    const now: Point = [event.clientX, event.clientY];
    this.#moved += Math.hypot(now[0] - before[0], now[1] - before[1]);
    const other = [...this.#pointers].find(([id]) => id !== event.pointerId)?.[1];
    if (other !== undefined) {
      const span = (p: Point): number => Math.hypot(p[0] - other[0], p[1] - other[1]);
      const middle: Point = [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2];
      this.#view.zoom(span(now) / Math.max(span(before), 1), this.#onSheet(middle));
    }
    const share = other === undefined ? 1 : 0.5;
    if (this.#moved > CLICK_SLACK_PX) {
      this.#sheet().setPointerCapture(event.pointerId);
      this.#view.pan((now[0] - before[0]) * share, (now[1] - before[1]) * share);
    }
    this.#pointers.set(event.pointerId, now);
  }

  release(event: PointerEvent): void {
    this.#pointers.delete(event.pointerId);
    const isClick = event.type === 'pointerup' && this.#moved <= CLICK_SLACK_PX;
    if (isClick && event.target instanceof Element) {
      this.#click(event.target);
    }
  }

  #onSheet([x, y]: Point): Point {
    const box = this.#sheet().getBoundingClientRect();
    return [x - box.left, y - box.top];
  }
}
