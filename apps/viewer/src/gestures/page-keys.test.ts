import { expect, test } from 'vitest';
import { isTypedInto, pageKey } from './page-keys.ts';

const pressed = (text: string) => {
  const parts = text.split('-');
  const has = (name: string): boolean => parts.slice(0, -1).includes(name);
  return {
    key: parts.at(-1) === '' ? '-' : (parts.at(-1) as string),
    ctrlKey: has('ctrl'),
    metaKey: has('meta'),
    altKey: has('alt'),
    shiftKey: has('shift'),
  };
};

test('keys of the page are those that makers know, and leave the others to the browser', () => {
  const asked = (text: string) => pageKey(pressed(text), false);
  expect(['ctrl-z', 'meta-z', 'ctrl-shift-Z', 'meta-shift-z', 'ctrl-y'].map(asked)).toEqual([
    'undo',
    'undo',
    'redo',
    'redo',
    'redo',
  ]);
  expect(['+', '=', '0', '−'].map(asked)).toEqual(['closer', 'closer', 'all', 'farther']);
  expect(['ctrl-0', 'ctrl-+', 'alt-z', 'z', 'ctrl-c', 'a'].map(asked)).toEqual(Array(6).fill(null));
});

test('in a field the browser undoes what was typed, on a box or a slider the page does', () => {
  expect(pageKey(pressed('ctrl-z'), true)).toBeNull();
  const element = (localName: string, type = '') => ({ localName, type }) as unknown as EventTarget;
  expect([element('input', 'text'), element('textarea'), element('select')].map(isTypedInto)).toEqual([
    true,
    true,
    true,
  ]);
  expect(
    [element('input', 'range'), element('input', 'checkbox'), element('button')].map(isTypedInto),
  ).toEqual([false, false, false]);
});
