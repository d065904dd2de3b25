import { type FaultBundle, replay } from 'pourproof';
import { expect, test } from 'vitest';
import { captured, fixture } from '../support/cli/captured-run.ts';
import { whileSkewed } from '../support/while-skewed.ts';

const broken = {
  readFile: (): Promise<Uint8Array> => Promise.reject(new Error('the bench gave way')),
};

test('a fault of ours asks for a report and shows no stack trace', async () => {
  expect(await captured(['vet', fixture('demo/board.svg')], broken)).toEqual({
    code: 70,
    out: '',
    err: [
      'pourproof: a fault in pourproof itself, not in your file: the bench gave way',
      '  What to do: please report it with the input and the command. POURPROOF_DEBUG=1 shows where it happened.',
      '',
    ].join('\n'),
  });
});

test('POURPROOF_DEBUG=1 shows where a fault of ours happened', async () => {
  const { code, err } = await captured(['vet', fixture('demo/board.svg')], {
    ...broken,
    env: { POURPROOF_DEBUG: '1' },
  });
  expect(code).toBe(70);
  expect(err).toMatch(/\n {4}at /u);
});

test('something thrown that is no error is told as well', async () => {
  const readFile = (): Promise<Uint8Array> => Promise.reject('just words');
  const { code, err } = await captured(['vet', fixture('demo/board.svg')], { readFile });
  expect(code).toBe(70);
  expect(err).toContain('not in your file: just words\n');
});

const square = new TextEncoder().encode(
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="20mm" viewBox="0 0 60 20"><path d="M5 5h12v12h-12z"/></svg>',
);
const flags = ['vet', 'my square.svg', '--bit', 'flat:2mm', '--depth', '3mm'];

/** A run in which every place on the axis is off by 0.02 mm, with the files that it writes. */
async function skewed(argv: readonly string[], changes: Parameters<typeof captured>[1] = {}) {
  const written = new Map<string, string>();
  const answer = await whileSkewed(() =>
    captured(argv, {
      readFile: async () => square,
      writeFile: async (path, text) => void written.set(path, text),
      fileIdentity: async (path) => (written.has(path) ? path : null),
      cwd: '/shop',
      ...changes,
    }),
  );
  return { ...answer, written };
}

test('figures that do not balance are a fault of ours: none is shown, and a file replays it', async () => {
  const { code, out, err, written } = await skewed(flags);
  expect(code).toBe(70);
  expect(out).toBe('');
  const [told, shown, remedy] = err.split('\n');
  expect(told).toMatch(
    /^pourproof: a fault in pourproof itself, not in your file: the width of a stroke is twice its distance from the outline \(no\. \d+\), but it is \d/u,
  );
  expect(shown).toBe('  No figure of this proof is shown, since one of them may be wrong.');
  expect(remedy).toBe(
    '  What to do: please report it with /shop/my-square.fault.json, which holds the artwork, its font and the job. POURPROOF_DEBUG=1 shows where it happened.',
  );
  const bundle = JSON.parse(written.get('/shop/my-square.fault.json') ?? '') as FaultBundle;
  expect(bundle.misses.map(({ id }) => id)).toContain('width-is-distance-to-outline');
  const { report } = await replay(bundle);
  // the bit leaves the corners round
  expect(report.cut.volumeMm3).toBeCloseTo(3 * (144 - (4 - Math.PI)), 6);
});

test('the file of a fault lies beside the outputs, and over no other file', async () => {
  const there = '/shop/out/my-square.fault.json';
  const { written } = await skewed([...flags, '--report', '/shop/out/sheet.html'], {
    fileIdentity: async (path) => (path === there ? path : null),
  });
  expect([...written.keys()]).toEqual(['/shop/out/my-square-2.fault.json']);
});

test('where no file can be written the fault is told all the same', async () => {
  const { code, err } = await skewed(flags, {
    writeFile: () => Promise.reject(new Error('read-only')),
  });
  expect(code).toBe(70);
  expect(err).toContain('please report it with the input and the command.');
});
