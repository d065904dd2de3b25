import { expect, test } from 'vitest';
import type { SheetView } from '../draw/sheet-view.ts';
import { SheetGestures } from './sheet-gestures.ts';

/** A sheet at (100, 50) that notes what becomes of its view. */
function inHand() {
  const told: (readonly [string, ...unknown[]])[] = [];
  const view = {
    pan: (dx: number, dy: number) => told.push(['pan', dx, dy]),
    zoom: (by: number, at: readonly number[]) => told.push(['zoom', Number(by.toFixed(6)), ...at]),
  } as unknown as SheetView;
  const captured: number[] = [];
  const sheet = {
    getBoundingClientRect: () => ({ left: 100, top: 50 }),
    setPointerCapture: (id: number) => captured.push(id),
  } as unknown as HTMLElement;
  const gestures = new SheetGestures(
    view,
    () => sheet,
    () => told.push(['click']),
  );
  return { gestures, told, captured };
}

const pointer = (pointerId: number, x: number, y: number, more: object = {}): PointerEvent =>
  ({ pointerId, clientX: x, clientY: y, pointerType: 'mouse', buttons: 1, ...more }) as PointerEvent;

test('a drag moves the artwork by as much as the pointer, once it is more than a trembling hand', () => {
  const { gestures, told, captured } = inHand();
  gestures.press(pointer(1, 200, 200));
  gestures.drag(pointer(1, 202, 201));
  expect(told).toEqual([]);
  gestures.drag(pointer(1, 212, 206));
  expect([told, captured]).toEqual([[['pan', 10, 5]], [1]]);
});

test('a pointer that lost its button outside the page drags no more', () => {
  const { gestures, told } = inHand();
  gestures.press(pointer(1, 200, 200));
  gestures.drag(pointer(1, 260, 200, { buttons: 0 }));
  gestures.drag(pointer(1, 300, 200));
  expect(told).toEqual([]);
});

test('two fingers zoom by the ratio of their distances, about their middle', () => {
  const { gestures, told } = inHand();
  gestures.press(pointer(1, 200, 150, { pointerType: 'touch' }));
  gestures.press(pointer(2, 300, 150, { pointerType: 'touch' }));
  gestures.drag(pointer(2, 400, 150, { pointerType: 'touch' }));
  // the middle, from the corner of the sheet
  expect(told).toEqual([
    ['zoom', 2, 200, 100],
    ['pan', 50, 0],
  ]);
});

test('the wheel zooms about the pointer, and forth and back is where it was', () => {
  const { gestures, told } = inHand();
  const turn = (deltaY: number) =>
    ({ deltaY, ctrlKey: false, clientX: 130, clientY: 90, preventDefault: () => {} }) as WheelEvent;
  gestures.wheel(turn(120));
  gestures.wheel(turn(-120));
  const [first, second] = told as unknown as readonly (readonly [string, number, number, number])[];
  expect((first?.[1] ?? 0) * (second?.[1] ?? 0)).toBeCloseTo(1, 5);
  expect(first?.slice(2)).toEqual([30, 40]);
});

test('arrow keys move the artwork, but not with a key of the browser', () => {
  const { gestures, told } = inHand();
  const key = (name: string, more: object = {}) =>
    ({ key: name, preventDefault: () => told.push(['kept']), ...more }) as unknown as KeyboardEvent;
  gestures.key(key('ArrowLeft', { altKey: true }));
  gestures.key(key('a'));
  expect(told).toEqual([]);
  gestures.key(key('ArrowLeft'));
  expect(told).toEqual([['kept'], ['pan', 60, 0]]);
});
