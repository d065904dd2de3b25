/** What a key asks of the page, wherever the focus is. */
export type PageKey = 'undo' | 'redo' | 'closer' | 'farther' | 'all';

type Pressed = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

const ZOOMS: Readonly<Record<string, PageKey>> = {
  '+': 'closer',
  '=': 'closer',
  '-': 'farther',
  '−': 'farther',
  '0': 'all',
};

/**
 * What a key asks of the page; `null` for nothing.
 *
 * @param isTyping whether it goes into a field, whose letters the browser undoes itself
 */
export function pageKey(
  { key, ctrlKey, metaKey, altKey, shiftKey }: Pressed,
  isTyping: boolean,
): PageKey | null {
  if (isTyping || altKey) {
    return null;
  }
  if (!ctrlKey && !metaKey) {
    return ZOOMS[key] ?? null;
  }
  switch (key.toLowerCase()) {
    case 'z':
      return shiftKey ? 'redo' : 'undo';
    case 'y':
      return 'redo';
    default:
      return null;
  }
}

/** Whether an element takes letters. */
export function isTypedInto(element: EventTarget | undefined): boolean {
  const name = (element as Partial<Element> | undefined)?.localName ?? '';
  const type = (element as Partial<HTMLInputElement> | undefined)?.type ?? '';
  return (
    name === 'textarea' ||
    name === 'select' ||
    (name === 'input' && !/^(?:checkbox|radio|range)$/u.test(type))
  );
}
