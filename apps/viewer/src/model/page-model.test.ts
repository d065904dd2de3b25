import fc from 'fast-check';
import { sourceName, vet } from 'pourproof';
import { expect, test } from 'vitest';
import { isSameQuestion } from './asked.ts';
import type { Bench } from './bench.ts';
import { stateOf } from './bench.ts';
import { jobForSource } from './job-for-source.ts';
import { type ChosenFile, openedFiles } from './opened-files.ts';
import { PageModel } from './page-model.ts';
import type { PageState } from './page-state.ts';
import type { Answer, Question } from './question.ts';
import { sheetPicture } from './sheet-picture.ts';
import { shownProof } from './shown-proof.ts';

const bar =
  '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="4mm"><rect width="9mm" height="4mm"/></svg>';
const proved = await vet({ kind: 'file', name: 'x.svg', bytes: new TextEncoder().encode(bar) }, {});
const example = { ...proved, picture: sheetPicture(proved.picture) };

/** A file as a browser hands it over. */
const opened = (name: string, text: string): ChosenFile => ({
  name,
  arrayBuffer: async () => new TextEncoder().encode(text).buffer as ArrayBuffer,
});
const drawing = (name: string): ChosenFile => opened(name, `<svg id="${name}"/>`);
const job = (name: string, fields: object): ChosenFile =>
  opened(name, JSON.stringify({ schema: 'pourproof/job@1', ...fields }));

const SIZED = { artwork: 'a.svg', width: '90mm', depth: '2mm' };
const SHOP = { schema: 'pourproof/shop@1', bits: ['flat:2mm'], usual: { seal: 'shellac' } };
const COUPONS = {
  schema: 'pourproof/coupons@1',
  coupons: [{ slots: ['none below 0.45mm', 'none below 0.45mm'] }],
};

const DEMO_BYTES = new TextEncoder().encode(bar);

/** Everything that is done on a page in its tests, by name. */
const ACTS = {
  'open a.svg': (page) => page.openFiles([drawing('a.svg')]),
  'open b.svg': (page) => page.openFiles([drawing('b.svg')]),
  'open a job with its drawing': (page) => page.openFiles([job('j.json', SIZED), drawing('a.svg')]),
  'open a job for a.svg': (page) => page.openFiles([job('j.json', SIZED)]),
  'open a job of words': (page) =>
    page.openFiles([job('w.json', { text: 'HI', singleLine: true, capHeight: '9mm' })]),
  'open a job that waits for its font': (page) =>
    page.openFiles([job('f.json', { text: 'HO', font: 'mine.ttf', capHeight: '8mm' })]),
  'open a font': (page) => page.openFiles([opened('mine.ttf', 'font')]),
  'open coupons': (page) => page.openFiles([opened('coupons.json', JSON.stringify(COUPONS))]),
  'open a broken job': (page) => page.openFiles([opened('broken.json', '{')]),
  'open what is gone': (page) =>
    page.openFiles([{ name: 'gone.svg', arrayBuffer: () => Promise.reject(new Error('gone')) }]),
  'set words': (page) => page.setLettering('ELM', null, { singleLine: true, capHeight: '15mm' }),
  'show the demo': (page) => page.showDemo(),
  'leave the demo': (page) => page.act({ do: 'leave-demo' }),
  'open a shop': (page) => page.openFiles([opened('shop.json', JSON.stringify(SHOP))]),
  'take the shop off': (page) => page.takeOff('shop'),
  'take the coupons off': (page) => page.takeOff('coupons'),
  undo: (page) => page.act({ do: 'undo' }),
  redo: (page) => page.act({ do: 'redo' }),
  'go to the first step': (page) => page.act({ do: 'go-to', step: 0 }),
  'type depth 4mm': (page) => page.changeJob({ depth: '4mm' }),
  'type a depth that is refused': (page) => page.changeJob({ depth: '13mm' }),
  'type width 70mm': (page) => page.changeJob({ width: '70mm' }),
  'type seal epoxy': (page) => page.changeJob({ seal: 'epoxy' }),
  'lay a board and turn': (page) => page.changeJob({ board: 'plain 300x180x20mm maple', turn: '15deg' }),
  'empty the depth': (page) => page.changeJob({ depth: undefined }),
} as const satisfies Readonly<Record<string, (page: PageModel) => Promise<void> | void>>;

/** Name of something that is done. */
type ActName = keyof typeof ACTS;

/** A worker that refuses one depth and else gives a report that bears its question, first without ways out. */
function answersTo({ id, source, job }: Question): readonly Answer[] {
  const asked = JSON.stringify(job);
  if (job.depth === '13mm') {
    return [
      {
        id,
        kind: 'refused',
        refusal: { code: 'x', what: asked, where: sourceName(source), remedy: '' },
      },
    ];
  }
  const artwork = { ...example.report.artwork, file: sourceName(source) };
  const defaults = [asked] as readonly string[] as typeof example.report.defaults;
  const report = { ...example.report, artwork, defaults };
  return [
    { id, kind: 'working', at: 'cut' },
    { id, kind: 'judged', vetted: { ...example, report } },
    { id, kind: 'working', at: 'ways' },
    { id, kind: 'vetted', report },
  ];
}

/** A page whose loads end, and whose questions are answered, when the test says so. */
function pageInHand(): {
  readonly page: PageModel;
  readonly act: (name: ActName) => void;
  readonly endLoad: (k: number) => Promise<void>;
  /** Has the worker say what it says next. */
  readonly answer: () => void;
  /** Has it say all that it has to say of a question. */
  readonly answerAll: () => void;
  /** Ends what is worked on, if a newer question waits for it. */
  readonly letGo: () => void;
  readonly loads: readonly unknown[];
  readonly questions: Question[];
} {
  const gates: (() => void)[] = [];
  const begun: Promise<void>[] = [];
  const questions: Question[] = [];
  let isOvertaken = false;
  let told = 0;
  const answer = (): void => {
    const [question] = questions;
    const answers = question === undefined ? [] : answersTo(question);
    const next = answers[told++];
    if (told >= answers.length) {
      questions.shift();
      isOvertaken = false;
      told = 0;
    }
    if (next !== undefined) {
      page.answer(next);
    }
  };
  const gated = async <T>(load: () => Promise<T>): Promise<T> => {
    await new Promise<void>((resolve) => gates.push(resolve));
    return load();
  };
  const page = new PageModel({
    loads: {
      files: (files) => gated(() => openedFiles(files)),
      demo: () => gated(async () => ({ kind: 'file', name: 'board.svg', bytes: DEMO_BYTES, font: null })),
      font: () => gated(async () => null),
    },
    post: (question) => questions.push(question),
    overtaken: () => {
      isOvertaken = true;
    },
    shownProof,
    changed: () => {},
  });
  return {
    page,
    act: (name) => {
      const ended = ACTS[name](page);
      if (ended !== undefined) {
        begun.push(ended);
      }
    },
    endLoad: async (k) => {
      const at = k % gates.length;
      gates.splice(at, 1)[0]?.();
      await begun.splice(at, 1)[0];
    },
    answer,
    answerAll: () => {
      do {
        answer();
      } while (told > 0);
    },
    letGo: () => {
      if (isOvertaken) {
        isOvertaken = false;
        questions.shift();
        told = 0;
        page.letGo();
      }
    },
    loads: gates,
    questions,
  };
}

/** What is shown is one proof; what is wrong is wrong with this job; and what is not marked as old is of what is on the page. */
function expectOnePiece({ state, shown, failure, isBusy }: PageModel): void {
  if (shown !== null) {
    expect(shown.report.artwork.file).toBe(shown.source.name);
    expect(shown.report.defaults).toEqual([JSON.stringify(shown.job)]);
  }
  if (failure !== null) {
    expect(failure.what).toBe(JSON.stringify(state.job));
    expect(failure.where).toBe(state.source?.name);
  }
  if (!isBusy) {
    expect(shown === null && failure === null).toBe(state.source === null);
    const { source } = state;
    expect(shown === null || (source !== null && isSameQuestion(shown, { ...state, source }))).toBe(true);
  }
}

/** What a page holds, without notes: an older one is put aside by what is done after it was seen. */
function held(bench: Bench): unknown {
  return [bench.at, ...bench.steps.map(({ state, told }) => [told, heldIn(state)])];
}

function heldIn({ source, job, aside, waitingFile, shelf, font }: PageState): unknown {
  return [source?.name, job, aside?.source?.name, aside?.job, waitingFile, shelf, font?.name];
}

async function inOrder(names: readonly ActName[]): Promise<PageState> {
  return stateOf(await benchInOrder(names));
}

async function benchInOrder(names: readonly ActName[]): Promise<Bench> {
  const { page, act, endLoad, loads } = pageInHand();
  for (const name of names) {
    act(name);
    if (loads.length > 0) {
      await endLoad(0);
    }
  }
  return page.bench;
}

const step = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...(Object.keys(ACTS) as ActName[])) },
  { weight: 3, arbitrary: fc.record({ load: fc.nat(9) }) },
  { weight: 3, arbitrary: fc.constant('answer' as const) },
  { weight: 2, arbitrary: fc.constant('let go' as const) },
);

test('whatever ends when, the page shows one proof, and in the end that of all acts in the order in which they were done', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 24 }), fc.infiniteStream(fc.nat(9)), async (steps, rest) => {
      const { page, act, endLoad, answer, letGo, loads, questions } = pageInHand();
      const done: ActName[] = [];
      for (const each of steps) {
        if (typeof each === 'object') {
          await (loads.length > 0 ? endLoad(each.load) : undefined);
        } else if (each === 'answer') {
          answer();
        } else if (each === 'let go') {
          letGo();
        } else {
          done.push(each);
          act(each);
        }
        expectOnePiece(page);
      }
      while (loads.length > 0) {
        await endLoad(rest.next().value ?? 0);
        expectOnePiece(page);
      }
      while (questions.length > 0) {
        answer();
        expectOnePiece(page);
      }
      expect(page.isBusy).toBe(false);
      expect(held(page.bench)).toEqual(held(await benchInOrder(done)));
    }),
    { numRuns: 300 },
  );
});

test('a proof that nobody waits for any more can be ended, and the newest question is worked on next', async () => {
  const { page, act, endLoad, answerAll, letGo, questions } = pageInHand();
  act('open a.svg');
  await endLoad(0);
  act('open b.svg');
  await endLoad(0);
  expect(questions.map(({ source }) => sourceName(source))).toEqual(['a.svg']);
  letGo();
  expect(questions.map(({ source }) => sourceName(source))).toEqual(['b.svg']);
  answerAll();
  expect([page.isBusy, page.shown?.source.name]).toEqual([false, 'b.svg']);
});

test('verdict and findings are shown before their ways out have been tried, over the picture that stays', async () => {
  const { page, act, endLoad, answer } = pageInHand();
  act('open a.svg');
  await endLoad(0);
  answer();
  expect([page.isBusy, page.working, page.shown]).toEqual([true, 'cut', null]);
  answer();
  const judged = page.shown;
  expect([page.isBusy, judged?.isWhole]).toEqual([false, false]);
  answer();
  answer();
  expect([page.shown?.isWhole, page.working]).toEqual([true, null]);
  expect(page.shown?.picture).toBe(judged?.picture);
});

test('a slow drawing that ends after a newer one is let go, and does not keep the page waiting', async () => {
  const { page, act, endLoad, answerAll } = pageInHand();
  act('open a.svg');
  act('open b.svg');
  await endLoad(1);
  expect(page.isBusy).toBe(true);
  answerAll();
  expect([page.isBusy, page.shown?.source.name]).toEqual([false, 'b.svg']);
  await endLoad(0);
  expect([page.isBusy, page.shown?.source.name]).toEqual([false, 'b.svg']);
});

test('what is typed while a job file loads stays on top of it', async () => {
  const { page, act, endLoad } = pageInHand();
  act('open a job with its drawing');
  act('type depth 4mm');
  await endLoad(0);
  expect(page.state.job).toMatchObject({ depth: '4mm', width: '90mm' });
});

test('a load that fails is told, and leaves everything as it was', async () => {
  const { page, act, endLoad } = pageInHand();
  act('open a.svg');
  act('open what is gone');
  act('type depth 4mm');
  await endLoad(1);
  await endLoad(0);
  expect(page.state).toMatchObject({ source: { name: 'a.svg' }, job: { depth: '4mm' } });
  expect(page.bench.note).toContain('gone.svg could not be opened');
});

test('the demo has a ticket of its own, and the maker’s is back with the next drawing', async () => {
  const own = await inOrder(['type depth 4mm', 'open a.svg', 'show the demo', 'type seal epoxy']);
  expect([own.source?.name, own.job.depth, own.job.seal]).toEqual(['board.svg', '2.5mm', 'epoxy']);
  const next = await inOrder([
    'type depth 4mm',
    'open a.svg',
    'show the demo',
    'type seal epoxy',
    'open b.svg',
  ]);
  expect([next.source?.name, next.job, next.aside]).toEqual(['b.svg', { depth: '4mm' }, null]);
  const back = await inOrder(['type depth 4mm', 'open a.svg', 'show the demo', 'leave the demo']);
  expect([back.source?.name, back.job]).toEqual(['a.svg', { depth: '4mm' }]);
  expect((await inOrder(['open b.svg'])).job).toEqual({});
});

test('a turn and a place on the board are those of one drawing', async () => {
  const same = await inOrder(['open a.svg', 'lay a board and turn', 'open a.svg']);
  expect(same.job.turn).toBe('15deg');
  const other = await inOrder(['open a.svg', 'lay a board and turn', 'open b.svg']);
  expect(other.job).toEqual({ board: 'plain 300x180x20mm maple' });
});

test('what the maker has seen to, and the resins of its colours, are those of one drawing', () => {
  const job = { seenTo: ['pour-hurried'], colourOf: 'red=black', depth: '4mm' };
  const file = (name: string) => ({ kind: 'file', name, bytes: new Uint8Array(), font: null }) as const;
  expect(jobForSource(job, file('b.svg'), file('a.svg'))).toEqual({ depth: '4mm' });
  expect(jobForSource(job, file('a.svg'), file('a.svg'))).toEqual(job);
});

test('a job whose drawing comes later keeps the sizes that are for it, and before any drawing they are typed for the next', async () => {
  const later = await inOrder(['open b.svg', 'open a job for a.svg', 'open a.svg']);
  expect([later.source?.name, later.job.width, later.waitingFile]).toEqual(['a.svg', '90mm', '']);
  const other = await inOrder(['open a job for a.svg', 'open b.svg', 'open a.svg']);
  expect(other.job.width).toBeUndefined();
  expect((await inOrder(['type width 70mm', 'open a.svg'])).job.width).toBe('70mm');
});

test('an answer to an older question, and one that nobody asked for, change nothing', () => {
  const { page } = pageInHand();
  const question = {
    id: 0,
    source: { kind: 'file', name: 'x', bytes: new Uint8Array() },
    job: {},
    options: {},
  } as const;
  for (const answer of answersTo(question)) {
    page.answer(answer);
  }
  expect([page.shown, page.failure]).toEqual([null, null]);
});

test('a worker that breaks down is told with the question that it had, and the next one is asked anew', async () => {
  const { page, act, endLoad, answerAll, questions } = pageInHand();
  page.breakDown({ kind: 'fault', message: 'early' });
  expect(page.failure).toBeNull();
  act('open a.svg');
  await endLoad(0);
  questions.shift();
  page.breakDown({ kind: 'fault', message: '404' });
  expect([page.isBusy, page.failure?.where]).toEqual([false, '404']);
  act('type depth 4mm');
  expect(page.failure).toBeNull();
  answerAll();
  expect([page.isBusy, page.failure, page.shown?.job.depth]).toEqual([false, null, '4mm']);
});

test('files that cannot be used change nothing but the note', async () => {
  const bench = await benchInOrder(['open a.svg', 'open a broken job']);
  const state = stateOf(bench);
  expect([state.source?.name, state.job]).toEqual(['a.svg', {}]);
  expect(bench.note).toContain('is not JSON');
});
