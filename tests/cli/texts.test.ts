import type { Report } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { type Captured, captured } from '../support/cli/captured-run.ts';

// single strokes as wide as the bit, in letters that are proved in a moment
const SMALL = ['--single-line', '--cap-height', '15mm', '--bit', 'flat:2mm', '--seal', 'epoxy'];

function listed(list: string | Uint8Array, ...args: readonly string[]): Promise<Captured> {
  const bytes = typeof list === 'string' ? new TextEncoder().encode(list) : list;
  return captured(['vet', '--texts', '-', ...SMALL, ...args], {
    isStdinTerminal: false,
    readStdin: async () => bytes,
  });
}

const filesIn = ({ out }: Captured): readonly string[] =>
  (JSON.parse(out) as readonly Report[]).map(({ artwork }) => artwork.file);

test('each line of a list is vetted as lettering, in its order; empty lines and the ends of lines of any computer are passed over', async () => {
  expect(filesIn(await listed('\uFEFFIL\r\n\r\n  LI \nT\\nI\r', '--json'))).toEqual(['IL', 'LI', 'T / I']);
  const alone = await captured(['vet', '--text', 'LI', ...SMALL, '--json']);
  const [first] = JSON.parse((await listed('LI\n', '--json')).out) as readonly Report[];
  expect(first).toEqual(JSON.parse(alone.out));
});

test('a text that cannot be set is told in its turn, and the others are vetted all the same', async () => {
  const { code, out, err } = await listed('IL\n\u{1F600}\nLI', '--json');
  expect([code, (JSON.parse(out) as readonly Report[]).map(({ artwork }) => artwork.file)]).toEqual([
    2,
    ['IL', 'LI'],
  ]);
  expect(err).toContain('\u{1F600}');
});

test.each([
  ['an empty list', '\n \n', [], 'there is no text in standard input.'],
  [
    'a list that is not UTF-8',
    Uint8Array.of(0x49, 0xff, 0x0a),
    [],
    'the list of texts, standard input, is not UTF-8.',
  ],
  ['a list beside a file', 'I', ['sign.svg'], 'both --texts and sign.svg are given.'],
  ['a list beside a text', 'I', ['--text', 'L'], 'both --texts and --text are given.'],
  [
    'a list and a job from one input',
    'I',
    ['--job', '-'],
    '--texts - and --job - are all the standard input',
  ],
  [
    'one overlay for several',
    'I\nL',
    ['--overlay', 'over.svg'],
    '--overlay can show one artwork, but 2 are given.',
  ],
  ['a flag for files', 'I', ['--join', '1mm'], '--join says how a file is read, but lettering is vetted.'],
] as const)('%s is refused', async (_, list, args, what) => {
  const { code, out, err } = await listed(list, ...args);
  expect([code, out]).toEqual([2, '']);
  expect(err).toContain(what);
});
