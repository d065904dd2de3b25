import { expect, test } from 'vitest';
import { FileDrop } from './file-drop.ts';

const dragged = (types: readonly string[], files: readonly string[] = [], relatedTarget: unknown = null) => {
  const event = {
    isTaken: false,
    dataTransfer: { types, files },
    relatedTarget,
    preventDefault: () => {
      event.isTaken = true;
    },
  };
  return event as unknown as DragEvent & { readonly isTaken: boolean };
};

test('files are taken wherever they fall, once told that they are over the page, and a dragged word is not', () => {
  const told: unknown[] = [];
  const drop = new FileDrop({
    over: (isOver) => told.push(isOver),
    drop: (files) => told.push(files),
  });
  const word = dragged(['text/plain']);
  drop.over(word);
  drop.drop(word);
  expect([told, word.isTaken]).toEqual([[], false]);
  const over = dragged(['Files']);
  drop.over(over);
  drop.over(dragged(['Files']));
  // from one part of the page to another
  drop.leave(dragged(['Files'], [], {}));
  expect([told, over.isTaken]).toEqual([[true], true]);
  drop.leave(dragged(['Files']));
  drop.over(dragged(['Files']));
  const fallen = dragged(['Files'], ['a.svg', 'job.json']);
  drop.drop(fallen);
  expect(told).toEqual([true, false, true, false, ['a.svg', 'job.json']]);
  expect(fallen.isTaken).toBe(true);
});
