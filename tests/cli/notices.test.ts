import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { captured, ROOT } from '../support/cli/captured-run.ts';

/** What settings, rounds and changes of outlines tell; the code that gives them names them. */
const CODES_BESIDE_READERS = [
  ...['colour-without-round', 'setting-without-effect'],
  ...['narrowing-kept-whole', 'too-narrow-to-round', 'widening-kept-apart'],
];

/** The codes that readers and settings give, from the tables that their words stand in. */
function codesOfSources(): string[] {
  const files = ['svg/svg-notices.ts', 'dxf/dxf-notices.ts', 'lettering/lettering-notices.ts'];
  const codes = files.flatMap((file) => {
    const text = readFileSync(resolve(ROOT, 'packages/artwork/src', file), 'utf8');
    return [...text.matchAll(/^ {2}'?([a-z-]+)'?: (?:note|caution|leftOut|changed|assumed)\(/gmu)].map(
      ([, code]) => code ?? '',
    );
  });
  return [...new Set([...codes, ...CODES_BESIDE_READERS])].toSorted();
}

async function listed(): Promise<string[]> {
  const { out } = await captured(['list', 'notices']);
  return [...out.matchAll(/^([a-z][a-z-]+) {2}/gmu)].map(([, code]) => code ?? '');
}

test('every notice that a reader gives is in the table, and no other', async () => {
  expect(codesOfSources().length).toBeGreaterThan(70);
  expect(await listed()).toEqual(codesOfSources());
});

test('what the page on unsupported parts names is in the table', async () => {
  const codes = await listed();
  const page = readFileSync(resolve(ROOT, 'docs/unsupported.md'), 'utf8');
  // the last column of some tables names a fixture
  const columns = page.matchAll(/^\| [^|]+ \| (?:[^|`]+ \| )?`([a-z-]+)` \|/gmu);
  const refusals = page.slice(page.indexOf('### SVG files that are refused'), page.indexOf('## Settings'));
  const named = [...columns].map(([, code = '']) => code).filter((code) => !refusals.includes(`\`${code}\``));
  expect(named.length).toBeGreaterThan(50);
  expect(codes).toEqual(expect.arrayContaining(named));
});

test('explain says of every notice what it means and what to do', async () => {
  for (const code of await listed()) {
    const { code: status, out, err } = await captured(['explain', code]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(
      /^Notice [a-z-]+, from reading the artwork\n\n[A-Z].*\.\n\nWhat to do: [A-Z].*\.\n$/su,
    );
  }
});

test('flags that the table names are flags', async () => {
  const { out } = await captured(['--help']);
  const page = readFileSync(resolve(ROOT, 'docs/notices.md'), 'utf8');
  for (const [flag] of page.matchAll(/--[a-z][a-z-]+/gu)) {
    expect(out).toContain(`  ${flag} `);
  }
});

test('a code may be pasted as it stands in an answer, and a slip is mended', async () => {
  expect((await captured(['explain', '[text-not-outlined]'])).out).toContain('no font was given');
  expect((await captured(['explain', 'Bit-Cannot-Enter'])).code).toBe(0);
  expect((await captured(['explain', 'open-outlin'])).err).toContain('Did you mean open-outline?');
});

test('every notice of the fixtures can be explained', async () => {
  const codes = new Set(await listed());
  for (const folder of ['svg', 'dxf']) {
    const names = readdirSync(resolve(ROOT, 'fixtures', folder)).filter((name) => name.endsWith('.json'));
    for (const name of names) {
      const { notices = [] } = JSON.parse(readFileSync(resolve(ROOT, 'fixtures', folder, name), 'utf8')) as {
        notices?: readonly (string | { readonly code: string })[];
      };
      for (const notice of notices) {
        expect(codes).toContain(typeof notice === 'string' ? notice : notice.code);
      }
    }
  }
});
