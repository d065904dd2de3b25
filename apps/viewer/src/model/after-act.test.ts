import fc from 'fast-check';
import { expect, test } from 'vitest';
import { afterAct } from './after-act.ts';
import type { ArtworkSource } from './artwork-source.ts';
import { type Bench, BLANK_BENCH, MAX_STEPS, stateOf } from './bench.ts';
import type { OpenedFiles } from './opened-files.ts';
import type { PageAct } from './page-acts.ts';
import { BLANK_PAGE, isSameState, type PageState } from './page-state.ts';
import { tablesOf } from './shelf.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const NOTHING: OpenedFiles = {
  names: [],
  artwork: null,
  font: null,
  job: null,
  coupons: null,
  shop: null,
  materials: null,
  shippedFont: null,
};
const A = { name: 'a.svg', bytes: bytes('<svg/>') };
const B = { name: 'b.svg', bytes: bytes('<svg id="b"/>') };
const FONT = { name: 'mine.ttf', bytes: bytes('font') };
const DEMO: ArtworkSource = { kind: 'file', name: 'board.svg', bytes: bytes('<svg id="demo"/>'), font: null };
const SHOP = {
  name: 'shop.json',
  data: {
    schema: 'pourproof/shop@1',
    bits: ['flat:2mm'],
    usual: { seal: 'shellac' },
    materials: { woods: { board: { like: 'cherry', name: 'the boards on the shelf' } } },
  },
};
const opened = (files: Partial<OpenedFiles>): PageAct => ({
  do: 'open',
  files: { ...NOTHING, names: ['x'], ...files },
});
const typed = (part: object, run = ''): PageAct => ({ do: 'change-job', part, seen: '', run });
const set = (text: string, run: string): PageAct => ({
  do: 'set-lettering',
  text,
  font: null,
  part: { singleLine: true, capHeight: '15mm' },
  run,
});

/** Acts that make a step, or none where they change nothing. */
const doing: fc.Arbitrary<PageAct> = fc.constantFrom(
  opened({ artwork: A }),
  opened({ artwork: B }),
  opened({ artwork: A, job: { artwork: 'a.svg', width: '90mm' } }),
  opened({ job: { depth: '2mm' } }),
  opened({ font: FONT }),
  opened({ shop: SHOP }),
  opened({ coupons: [{ slots: ['none below 0.45mm', 'none below 0.45mm'] }] }),
  // the tables have no such wood without the shop
  typed({ wood: 'board' }),
  typed({ depth: '4mm' }),
  typed({ depth: '13mm' }),
  typed({ depth: undefined }),
  typed({ grain: '10deg' }, 'drag 1'),
  typed({ grain: '20deg' }, 'drag 1'),
  typed({ grain: '30deg' }, 'drag 2'),
  set('E', 'name 1'),
  set('Elm', 'name 1'),
  set('Oak', 'name 2'),
  { do: 'show-demo', demo: DEMO },
  { do: 'leave-demo' },
  { do: 'take-off', what: 'shop' },
  { do: 'take-off', what: 'coupons' },
  { do: 'take-shelf', shelf: { shop: SHOP, materials: null, coupons: null } },
  { do: 'note', note: 'x' },
);
const going: fc.Arbitrary<PageAct> = fc.oneof(
  fc.constantFrom<PageAct>({ do: 'undo' }, { do: 'redo' }),
  fc.nat(9).map((step): PageAct => ({ do: 'go-to', step })),
);
const acts = fc.array(fc.oneof({ weight: 3, arbitrary: doing }, { weight: 2, arbitrary: going }), {
  maxLength: 30,
});

const after = (list: readonly PageAct[]): Bench => list.reduce(afterAct, BLANK_BENCH);
const runOf = (act: PageAct): string => ('run' in act ? act.run : '');

/**
 * What undo and redo mean, said otherwise than the page does it: a list of acts for every step, of which those up to the step that is shown
 * are done from the beginning.
 */
function replayed(list: readonly PageAct[]): PageState {
  let steps: PageAct[][] = [];
  let shown = 0;
  const stateAt = (count: number, more: readonly PageAct[] = []): PageState =>
    stateOf(after([...steps.slice(0, count).flat(), ...more]));
  for (const act of list) {
    if (act.do === 'undo') {
      shown = Math.max(0, shown - 1);
    } else if (act.do === 'redo') {
      shown = Math.min(steps.length, shown + 1);
    } else if (act.do === 'go-to') {
      shown = act.step <= steps.length ? act.step : shown;
    } else if (!isSameState(stateAt(shown), stateAt(shown, [act]))) {
      const last = steps[shown - 1]?.at(-1);
      const isOfRun =
        last !== undefined && shown === steps.length && runOf(act) !== '' && runOf(last) === runOf(act);
      steps = isOfRun
        ? steps.with(shown - 1, [...(steps[shown - 1] ?? []), act])
        : [...steps.slice(0, shown), [act]];
      shown = steps.length;
    }
  }
  return stateAt(shown);
}

test('any acts with undo and redo between them end in the state of the acts that were not taken back', () => {
  fc.assert(
    fc.property(acts, (list) => {
      expect(stateOf(after(list))).toEqual(replayed(list));
    }),
    { numRuns: 150 },
  );
});

test('undo and then redo is as if nothing had been done, and so is what changes nothing', () => {
  fc.assert(
    fc.property(acts, (list) => {
      const bench = after(list);
      if (bench.at > 0) {
        expect({ ...afterAct(afterAct(bench, { do: 'undo' }), { do: 'redo' }), note: '' }).toEqual({
          ...bench,
          note: '',
        });
      }
      if (bench.at === bench.steps.length - 1) {
        expect(afterAct(bench, { do: 'redo' })).toBe(bench);
      }
    }),
    { numRuns: 100 },
  );
});

test('acts are plain: cloned as a browser does, they make the same bench, which is plain too', () => {
  fc.assert(
    fc.property(acts, (list) => {
      const bench = after(list);
      expect(after(structuredClone(list))).toEqual(bench);
      expect(structuredClone(bench)).toEqual(bench);
    }),
    { numRuns: 100 },
  );
});

test('every step settles with the shelf that it has', () => {
  fc.assert(
    fc.property(acts, (list) => {
      for (const { state } of after(list).steps) {
        expect(() => tablesOf(state.shelf)).not.toThrow();
      }
    }),
    { numRuns: 50 },
  );
});

test('what is typed in one go is one step, and what comes after it another', () => {
  const bench = after([set('E', 'name 1'), set('El', 'name 1'), set('Elm', 'name 1'), set('Oak', 'name 2')]);
  expect(bench.steps.map(({ told }) => told)).toEqual([
    'Blank sheet',
    '“Elm” in single strokes',
    '“Oak” in single strokes',
  ]);
  const back = afterAct(bench, { do: 'undo' });
  expect(stateOf(back).source?.name).toBe('Elm');
  // what was taken back is gone once something else is done
  expect(
    afterAct(back, set('Elms', 'name 1'))
      .steps.map(({ told }) => told)
      .at(-1),
  ).toBe('“Elms” in single strokes');
});

test('what a job needs stays on the shelf, and it is said which job', () => {
  const bench = after([opened({ shop: SHOP }), typed({ wood: 'board' }), { do: 'take-off', what: 'shop' }]);
  expect(stateOf(bench).shelf.shop).toBe(SHOP);
  expect(bench.note).toContain('The job needs this shop file');
});

test('coupons of the shelf go with the next job file, but not over its own', () => {
  const rows = [{ slots: ['none below 0.45mm', 'none below 0.45mm'] }] as const;
  const own = [{ slots: ['none below 0.6mm', 'none below 0.6mm'] }] as const;
  const with_ = after([opened({ coupons: rows }), opened({ job: { depth: '2mm' } })]);
  expect(stateOf(with_).job).toEqual({ depth: '2mm', coupons: rows });
  const over = after([opened({ coupons: rows }), opened({ job: { depth: '2mm', coupons: own } })]);
  expect(stateOf(over).job.coupons).toEqual(own);
  const off = afterAct(with_, { do: 'take-off', what: 'coupons' });
  expect([stateOf(off).job.coupons, stateOf(off).shelf.coupons]).toEqual([undefined, null]);
});

test('a first own artwork is vetted with what is usual, never with the job of the demo', () => {
  const demo: PageAct = { do: 'show-demo', demo: DEMO };
  for (const own of [opened({ artwork: A }), set('Elm', 'name 1')]) {
    const { job, source } = stateOf(after([demo, typed({ depth: '4mm' }), own]));
    expect(source?.name).toMatch(/^(?:a\.svg|Elm)$/u);
    expect(job).toEqual(own.do === 'open' ? {} : { singleLine: true, capHeight: '15mm' });
  }
});

test('a kept bench whose shop file is no longer taken is laid without it, and says so', () => {
  const bench = after([opened({ artwork: A })]);
  const bad = { shop: { name: 'shop.json', data: { schema: 'pourproof/shop@1', bits: ['round:2mm'] } } };
  const shelf = { ...bad, materials: null, coupons: null };
  const kept = { ...bench, steps: bench.steps.map((step) => ({ ...step, state: { ...step.state, shelf } })) };
  const laid = afterAct(BLANK_BENCH, { do: 'lay', bench: kept });
  expect(laid.steps).toEqual(bench.steps);
  expect(laid.note).toMatch(/cannot be read any more and were left out: .*shop\.json/u);
  expect(afterAct(BLANK_BENCH, { do: 'lay', bench })).toBe(bench);
});

test('of more steps than are kept the oldest go, and it can be seen', () => {
  const many = Array.from({ length: MAX_STEPS + 5 }, (_, k) => typed({ depth: `${k + 1}0um` }));
  const bench = after(
    many.map((act, k) => (act.do === 'change-job' ? { ...act, part: { depth: `${1 + k / 100}mm` } } : act)),
  );
  expect([bench.steps.length, bench.at, bench.isCut]).toEqual([MAX_STEPS, MAX_STEPS - 1, true]);
  expect(stateOf(bench).job.depth).toBe(`${1 + (MAX_STEPS + 4) / 100}mm`);
  expect(BLANK_PAGE.job).toEqual({});
});
