import type { Fix } from '../report/fix-schema.ts';

/**
 * Where the work of a way out is done: a `setting` of the job; the `drawing`, which is vetted anew then; the
 * `bench`, where no proof can follow; or it takes a `look` at the work or at a test, which only the maker can judge.
 */
export type FixWork = 'setting' | 'drawing' | 'bench' | 'look';

/** Where the work of each kind of way out is done. */
export const FIX_WORK: Readonly<Record<Fix['do'], FixWork>> = {
  'use-bit': 'setting',
  'use-vee': 'setting',
  'use-tip': 'setting',
  scale: 'setting',
  widen: 'drawing',
  'move-apart': 'drawing',
  track: 'setting',
  'space-lines': 'setting',
  turn: 'setting',
  move: 'setting',
  'change-seal': 'setting',
  'fewer-coats': 'setting',
  wait: 'setting',
  'pour-sooner': 'setting',
  abrade: 'bench',
  deepen: 'setting',
  'cut-shallower': 'setting',
  'level-less': 'setting',
  'level-by': 'setting',
  flatten: 'bench',
  'use-scale': 'setting',
  'zero-between': 'bench',
  'mix-more': 'bench',
  'read-label': 'bench',
  'top-up': 'bench',
  'change-temperature': 'setting',
  'less-pigment': 'setting',
  'pour-proud': 'setting',
  'more-cups': 'bench',
  'pour-in-layers': 'bench',
  'use-resin': 'setting',
  clean: 'bench',
  'test-coupon': 'look',
  // typed anew with its place
  'move-clamp': 'setting',
  'thicker-board': 'setting',
  'part-by-wall': 'drawing',
  'pour-in-rounds': 'setting',
  'join-ends': 'setting',
  'redraw-ends': 'look',
  'close-gap': 'look',
  'merge-shapes': 'look',
};
