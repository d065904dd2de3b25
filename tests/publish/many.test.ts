import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import type { JobInput } from '@pourproof/job';
import type { Source } from 'pourproof';
import type { ComparedRow, ManyAnswer, ManyItem } from 'pourproof/many';
import { expect, test } from 'vitest';
import { compare, vetMany } from '../../packages/pourproof/dist/many.js';
import { captured, fixture } from '../support/cli/captured-run.ts';
import { asBuilt } from '../support/front-door/ways-in.ts';
import { rememberedVet } from '../support/remembered-vet.ts';

// threads run what was built, so does this file

const job: JobInput = { bit: ['flat:1mm'], depth: '2mm', wood: 'maple', seal: 'epoxy' };

const bar = (widthMm: number, more = ''): Source & { readonly kind: 'file' } => ({
  kind: 'file',
  name: `bar ${widthMm}.svg`,
  bytes: new TextEncoder().encode(
    `<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="30mm" viewBox="0 0 80 30"><rect x="5" y="5" width="${widthMm}" height="10"/>${more}</svg>`,
  ),
});

async function all(items: Iterable<ManyItem>, options = {}): Promise<ManyAnswer[]> {
  const answers: ManyAnswer[] = [];
  for await (const answer of vetMany(items, options)) {
    answers.push(answer);
  }
  return answers;
}

const fileOf = (answer: ManyAnswer | undefined): string =>
  answer?.kind === 'vetted' ? answer.vetted.report.artwork.file : (answer?.kind ?? '');

/** Names of one letter each; 200 of them where time is given. */
const NAMES = Array.from({ length: process.env.POURPROOF_LANE === 'long' ? 200 : 20 }, (_, k) =>
  'IlLTi'.charAt(k % 5),
);

test('names are answered in their order, each as it is vetted alone', async () => {
  const letters: JobInput = { ...job, capHeight: '60mm' };
  const font = new Uint8Array(readFileSync(fixture('fonts/lora-400.ttf')));
  const items = NAMES.map((text): ManyItem => ({ source: { kind: 'lettering', text, font }, job: letters }));
  const answers = await all(items);
  expect(answers.map(fileOf)).toEqual(NAMES);
  for (const [k, { source }] of items.entries()) {
    const { report } = await rememberedVet(source, letters);
    expect(answers[k]).toMatchObject({ kind: 'vetted', vetted: { report } });
  }
});

test('the command line answers many files as it does one after the other, and tells what it cannot read', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'pourproof-many-'));
  try {
    const files = [40, 41, 42].map((widthMm) => bar(widthMm));
    for (const { name, bytes } of files) {
      writeFileSync(join(folder, name), bytes);
    }
    writeFileSync(join(folder, 'letter.svg'), 'Dear maker');
    const names = ['bar 40.svg', 'letter.svg', 'bar 41.svg', 'none.svg', 'bar 42.svg'];
    const argv = ['vet', ...names, '--bit', 'flat:1mm', '--depth', '2mm', '--seal', 'epoxy'];
    const inTurn = await captured(argv, { cwd: folder });
    expect(inTurn).toMatchObject({ code: 2, err: expect.stringMatching(/letter\.svg.*\n.*\n.*none\.svg/u) });
    expect(asBuilt(argv, folder)).toEqual(inTurn);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

test('one that cannot be read is refused in its place, in the words asked for, and harms none', async () => {
  const empty: Source = { kind: 'file', name: 'empty.svg', bytes: new Uint8Array() };
  const items = [bar(40), empty, bar(41), bar(42)].map((source): ManyItem => ({ source, job }));
  const wrong: ManyItem = { source: bar(43), job: { ...job, depth: 'deep' } };
  const answers = await all([...items, wrong, ...items], { threads: 2, names: { depth: '--depth' } });
  expect(answers.map(fileOf)).toEqual([
    ...['bar 40.svg', 'refused', 'bar 41.svg', 'bar 42.svg'],
    'refused',
    ...['bar 40.svg', 'refused', 'bar 41.svg', 'bar 42.svg'],
  ]);
  expect(answers[1]).toMatchObject({ refusal: { where: 'empty.svg' } });
  expect(answers[4]).toMatchObject({ refusal: { what: expect.stringContaining('--depth') } });
});

test('a thread that breaks down is a fault in the place of its item, and the others are vetted', async () => {
  // more points than a thread of so little memory can hold
  const points = Array.from({ length: 150_000 }, (_, k) => `${(k % 700) / 10} ${(k * 7) % 29}`).join('L');
  const items = [bar(40), bar(41, `<path d="M${points}Z"/>`), bar(42), bar(43)];
  const answers = await all(
    items.map((source) => ({ source, job })),
    { threads: 2, heapMb: 48 },
  );
  expect(answers.map(fileOf)).toEqual(['bar 40.svg', 'fault', 'bar 42.svg', 'bar 43.svg']);
  expect(answers[1]).toMatchObject({ what: expect.stringMatching(/memory/iu) });
});

test('items are drawn as threads become free, so that memory holds a few of them', async () => {
  let drawn = 0;
  let answered = 0;
  let most = 0;
  function* items(): Generator<ManyItem> {
    for (let k = 0; k < 20; k++) {
      drawn++;
      most = Math.max(most, drawn - answered);
      yield { source: bar(30 + k), job };
    }
  }
  for await (const answer of vetMany(items(), { threads: 2 })) {
    expect(answer.kind).toBe('vetted');
    answered++;
  }
  expect(answered).toBe(20);
  expect(most).toBeLessThanOrEqual(5);
});

test('a count of threads that is none is a misuse', async () => {
  await expect(all([], { threads: 0 })).rejects.toThrow(RangeError);
});

test('threads compare rows as one thread does: in the order asked for, each as vet has it, whatever is wrong with others', async () => {
  const bad: Source = { kind: 'file', name: 'bad.svg', bytes: new TextEncoder().encode('Dear maker') };
  const base: JobInput = { wood: 'maple', seal: 'epoxy' };
  const vary = { bit: [['flat:1mm'], ['flat:12mm']], depth: ['2mm', 'deep'] };
  const comparison = { sources: [bar(40), bad, bar(42)], job: base, vary };
  const progress: string[] = [];
  const rows: ComparedRow[] = [];
  const onProgress = (done: number, of: number): void => void progress.push(`${done} of ${of}`);
  for await (const row of compare(comparison, { threads: 2, onProgress })) {
    rows.push(row);
  }
  const told = rows.map(({ source, values: { bit, depth }, outcome }) => [
    source,
    `${bit} ${depth}`,
    outcome.is,
  ]);
  const is = (k: number): string => (k === 1 ? 'refused' : 'judged');
  expect(told).toEqual(
    [0, 1, 2].flatMap((k) => [
      [k, 'flat:1mm 2mm', is(k)],
      [k, 'flat:1mm deep', 'refused'],
      [k, 'flat:12mm 2mm', is(k)],
      [k, 'flat:12mm deep', 'refused'],
    ]),
  );
  const { report } = await rememberedVet(bar(42), { ...base, bit: ['flat:12mm'], depth: '2mm' });
  expect(report.verdict).toBe('stop');
  expect(rows[10]).toMatchObject({
    outcome: {
      figures: {
        verdict: 'stop',
        minutes: report.cut.time.minutes,
        lostLengthMm: report.strokes.lengthNarrowerThanBitMm,
      },
    },
  });
  expect(progress.at(-1)).toBe('12 of 12');
  await expect(compare(comparison, { threads: 0 }).next()).rejects.toThrow(RangeError);
});
