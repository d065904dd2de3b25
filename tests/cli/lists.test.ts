import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { resins, sealers, spreadBetweenBoards, woods } from '@pourproof/materials';
import { FINDING_CODES } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { captured, ROOT } from '../support/cli/captured-run.ts';

const firstColumn = (text: string): string[] =>
  text
    .trimEnd()
    .split('\n')
    .map((line) => line.split(/\s{2,}/u)[0] ?? '');

test.each([
  ['woods', Object.keys(woods)],
  ['seals', Object.keys(sealers)],
  ['resins', Object.keys(resins)],
  ['findings', [...FINDING_CODES]],
])('list %s names what the flag takes', async (what, names) => {
  const { code, out, err } = await captured(['list', what]);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(firstColumn(out)).toEqual(names);
});

test('list priors states what is believed of colour travel before coupons, with its origin', async () => {
  const { code, out, err } = await captured(['list', 'priors']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(firstColumn(out).filter((name) => name !== '')).toEqual([
    'board-spread',
    'slot-spread',
    'surprise',
    'shares',
    'origin',
  ]);
  expect(out).toContain(`${spreadBetweenBoards.value}, or what --board-spread says`);
  expect(out).toContain('own-prior');
});

test('every flat bit of the list can be typed as it stands there', async () => {
  const { out } = await captured(['list', 'bits']);
  const flat = firstColumn(out).filter((bit) => bit.startsWith('flat:'));
  expect(flat.length).toBeGreaterThan(5);
  for (const bit of flat) {
    const { err } = await captured(['vet', '--bit', bit]);
    expect(err).toContain('there is nothing to vet');
  }
});

test.each(FINDING_CODES)('explain %s gives its page without markup', async (code) => {
  const answer = await captured(['explain', code]);
  expect({ code: answer.code, err: answer.err }).toEqual({ code: 0, err: '' });
  expect(answer.out).toContain(`(${code}, `);
  expect(answer.out).toMatch(/^Ways out|^What it tells/mu);
  expect(answer.out).not.toMatch(/\*\*|`|\]\(|^\||--- \|/mu);
  expect(Math.max(...answer.out.split('\n').map((line) => [...line].length))).toBeLessThanOrEqual(80);
});

test('list notices names codes with what each means', async () => {
  const { code, out, err } = await captured(['list', 'notices']);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  // what a code means goes on in the lines below it
  const lines = out.trimEnd().split('\n');
  const codes = firstColumn(lines.filter((line) => !line.startsWith(' ')).join('\n'));
  expect(codes.length).toBeGreaterThan(20);
  expect(codes).toEqual([...new Set(codes)].toSorted());
  expect(codes).toEqual(expect.arrayContaining(['text-not-outlined', 'open-outline', 'embedded-picture']));
  for (const line of lines) {
    expect(line).toMatch(/^(?:[a-z0-9-]+ {2,}| {4,})\S/u);
  }
});

test('--version is the version of the package', async () => {
  const { version } = JSON.parse(readFileSync(resolve(ROOT, 'apps/cli/package.json'), 'utf8'));
  expect(await captured(['--version'])).toEqual({ code: 0, out: `pourproof ${version}\n`, err: '' });
});

test('with a shop file a list has what the shop has, in words', async () => {
  const shop = ['--shop', 'fixtures/shops/shop.json'];
  const bits = await captured(['list', 'bits', ...shop]);
  expect(bits).toMatchObject({ code: 0, err: '' });
  expect(firstColumn(bits.out)).toEqual([
    'flat:1/8in:length 12mm',
    'flat:1/16in:length 6mm',
    'vee:60deg:1/2in',
    'flat:1mm:length 4mm',
  ]);
  expect(bits.out).toMatch(/^flat:1mm:length 4mm .*to buy, price 19\.00, 5 min to put in$/mu);
  const seals = await captured(['list', '--shop=fixtures/shops/shop.json', 'seals']);
  expect(seals.out).toMatch(/^shellac .*, 2 coats, 4h to wait, price 0\.02 a gram$/mu);
  expect((await captured(['list', 'resins', ...shop])).out).toContain('slow resin on the shelf');
  for (const [argv, says] of [
    [['list', 'findings', ...shop], 'a shop file has no findings.'],
    [['list', 'bits', '--shop'], '--shop needs a file.'],
    [['list', 'bits', '--shop', 'none.json'], 'there is no shop file at'],
    [['list', 'bits', 'woods', ...shop], 'list takes one name.'],
  ] as const) {
    expect(await captured(argv)).toMatchObject({ code: 2, err: expect.stringContaining(says) });
  }
});
