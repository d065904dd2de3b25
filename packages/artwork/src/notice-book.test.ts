import { expect, test } from 'vitest';
import { listed, NoticeBook, type Tally } from './notice-book.ts';
import { caution, counted, makeNotice, note } from './notice-kind.ts';

const book = () =>
  new NoticeBook({
    gap: caution<Tally>(({ count, maxMm }) => `${counted(count, 'gap')}, the widest ${maxMm} mm.`),
    odd: note<Tally>((tally) => `Odd: ${listed(tally, 2)}.`),
  });

test('many cases of one kind are one notice, with what its text is made of', () => {
  const notices = book();
  notices.add('gap', { line: 3 }, '', 0.5);
  notices.add('odd', {}, 'A');
  notices.add('gap', { line: 9 }, '', 2);
  expect(notices.notices()).toEqual([
    {
      code: 'gap',
      params: { count: 2, details: [], counts: [], minMm: 0.5, maxMm: 2 },
      text: { mm: '2 gaps, the widest 2 mm.', in: '2 gaps, the widest 2 mm.' },
      where: [{ line: 3 }, { line: 9 }],
      severity: 'caution',
    },
    {
      code: 'odd',
      params: { count: 1, details: ['A'], counts: [1], minMm: 0, maxMm: 0 },
      text: { mm: 'Odd: A.', in: 'Odd: A.' },
      where: [],
      severity: 'note',
    },
  ]);
});

test('details are counted where one occurs more than once, and the rest are counted together', () => {
  const notices = book();
  for (const detail of ['A', 'B', 'A', 'C']) {
    notices.add('odd', {}, detail);
  }
  expect(notices.notices()[0]!.text.mm).toBe('Odd: 2 × A, 1 × B and 1 more.');
});

test('places are listed up to fifty, all are counted', () => {
  const notices = book();
  for (let line = 1; line <= 70; line++) {
    notices.add('gap', { line }, '', line);
  }
  const [notice] = notices.notices();
  expect([notice!.where.length, notice!.params!.count, notice!.params!.maxMm]).toEqual([50, 70, 70]);
});

test('what occurs once is put as it is, in the order of first sight', () => {
  const notices = book();
  notices.add('odd', {}, 'A');
  const single = makeNotice(
    'unit',
    note<{ unit: string }>(({ unit }) => `Read in ${unit}.`),
    { unit: 'mm' },
  );
  notices.put(single);
  expect(notices.notices().map(({ code }) => code)).toEqual(['odd', 'unit']);
  expect(notices.notices()[1]).toBe(single);
});
