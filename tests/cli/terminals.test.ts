import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { stripVTControlCharacters } from 'node:util';
import type { Io } from '@pourproof/cli';
import { describe, expect, test } from 'vitest';
import { folderWithSquare, SQUARE } from '../support/cli/bad-input.ts';
import { captured, fixture } from '../support/cli/captured-run.ts';

interface Screen {
  readonly columns?: number;
  readonly env?: Io['env'];
}

/** What a terminal of some width shows. */
async function shown(argv: readonly string[], { columns, env = {} }: Screen): Promise<string> {
  const pieces: string[] = [];
  const out = { write: (text: string) => void pieces.push(text), isTerminal: true, columns };
  await captured(argv, { out, env });
  return pieces.join('');
}

const DEMO = ['vet', '--job', fixture('demo/job.json')] as const;

function widest(text: string): number {
  return Math.max(
    ...stripVTControlCharacters(text)
      .split('\n')
      .map((line) => [...line].length),
  );
}

describe('a terminal', () => {
  test.each([
    ['the answer', DEMO],
    ['the whole answer', [...DEMO, '--full']],
    ['a finding explained', ['explain', 'sands-through']],
    ['a notice explained', ['explain', 'size-assumed']],
    ['the woods', ['list', 'woods']],
    ['the notices', ['list', 'notices']],
  ])('of 40 columns wraps %s there, and loses no word', async (_, argv) => {
    const narrow = await shown(argv, { columns: 40, env: { NO_COLOR: '1' } });
    const wide = await shown(argv, { columns: 100, env: { NO_COLOR: '1' } });
    expect(widest(narrow)).toBeLessThanOrEqual(40);
    expect(widest(wide)).toBeGreaterThan(40);
    if (argv.length > 3 || argv[0] !== 'vet') {
      const words = (text: string): string[] => text.split(/[\s:]+/u).filter((word) => word !== '');
      expect(words(narrow).toSorted()).toEqual(words(wide).toSorted());
    }
  });

  test.each([40, 60, 80])(
    'of %i columns wraps the help there but for the examples, which can be pasted',
    async (columns) => {
      const help = await shown(['--help'], { columns });
      const [told = '', examples = ''] = help.split('Examples:\n');
      expect(widest(told)).toBeLessThanOrEqual(columns);
      expect(
        examples
          .trim()
          .split('\n')
          .every((line) => line.trim().startsWith('pourproof vet ')),
      ).toBe(true);
      const words = (text: string): string[] => text.split(/\s+/u).filter((word) => word !== '');
      expect(words(help).toSorted()).toEqual(words(await shown(['--help'], { columns: 200 })).toSorted());
      // each flag begins a line, so that the eye finds it
      for (const flag of ['--bit KIND:SIZE', '--depth LENGTH', '--seen-to CODE', '--full']) {
        expect(told).toContain(`\n  ${flag}`);
      }
    },
  );

  test('that is narrow still leads with the verdict and has every finding by its code', async () => {
    const narrow = await shown(DEMO, { columns: 40, env: { NO_COLOR: '1' } });
    expect(narrow).toMatch(/^STOP {2}board\.svg/u);
    for (const code of ['bit-cannot-enter', 'high-bleed-wall', 'short-grain-will-break']) {
      expect(narrow).toContain(`[${code}]`);
    }
  });

  test.each([
    ['does not know its width', { columns: 0 }],
    ['says nothing of its width', {}],
  ])('that %s is taken for 80 columns', async (_, screen) => {
    const env = { NO_COLOR: '1' };
    expect(await shown(DEMO, { ...screen, env })).toBe((await captured([...DEMO])).out);
  });

  test('that is dumb gets no colour', async () => {
    expect(await shown(DEMO, { env: {} })).toContain('\u001b[');
    expect(await shown(DEMO, { env: { TERM: 'dumb' } })).not.toContain('\u001b[');
  });
});

describe('standard input', () => {
  const folder = folderWithSquare();
  const square = new TextEncoder().encode(SQUARE);
  const job = { schema: 'pourproof/job@1', artwork: 'square.svg', depth: '2mm' };
  const bytesOf = (data: object): Uint8Array => new TextEncoder().encode(JSON.stringify(data));
  const piped = (bytes: Uint8Array): Partial<Io> => ({
    cwd: folder(),
    readStdin: () => Promise.resolve(bytes),
    isStdinTerminal: false,
  });

  test('is the artwork where - is named', async () => {
    const { out, err, code } = await captured(['vet', '-', '--depth', '2mm'], piped(square));
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect(out).toMatch(/^STOP {2}standard input: /u);
    const named = await captured(['vet', 'square.svg', '--depth', '2mm', '--json'], { cwd: folder() });
    const read = await captured(['vet', '-', '--depth', '2mm', '--json'], piped(square));
    const [a, b] = [named, read].map((answer) => JSON.parse(answer.out));
    expect({ ...b, artwork: { ...b.artwork, file: '' } }).toEqual({
      ...a,
      artwork: { ...a.artwork, file: '' },
    });
  });

  test('is the job, whose files lie where the command is typed', async () => {
    const { out, err } = await captured(['vet', '--job', '-'], piped(bytesOf(job)));
    expect(err).toBe('');
    writeFileSync(join(folder(), 'job.json'), JSON.stringify(job));
    expect(out).toBe((await captured(['vet', '--job', join(folder(), 'job.json')])).out);
    expect(out).toMatch(/^STOP {2}square\.svg: /u);
  });

  test('is the coupons', async () => {
    const coupons = bytesOf({ schema: 'pourproof/coupons@1', coupons: [{ slots: ['1.2mm', '1.4mm'] }] });
    const argv = ['vet', 'square.svg', '--depth', '2mm', '--coupons', '-', '--full'];
    const { out, err } = await captured(argv, piped(coupons));
    expect(err).toBe('');
    expect(out.replaceAll(/\s+/gu, ' ')).toContain('calibrated with 1 coupon, 2 slots');
  });

  test('that nobody pipes into, or that is wanted twice, is refused', async () => {
    const terminal = { readStdin: () => Promise.reject(new Error('read')), isStdinTerminal: true };
    expect(await captured(['vet', '-'], terminal)).toEqual({
      code: 2,
      out: '',
      err: 'pourproof: artwork: - stands for the standard input, but nothing is piped into it.\n  What to do: Pipe a file into pourproof, as in: cat sign.svg | pourproof vet -\n',
    });
    expect((await captured(['vet', '-', '--job', '-'], piped(square))).err).toBe(
      'pourproof: - and --job - are all the standard input, which can be read once.\n  What to do: Give the others as files.\n',
    );
  });
});
