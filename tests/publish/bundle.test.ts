import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { captured, ROOT } from '../support/cli/captured-run.ts';
import { asBuilt } from '../support/front-door/ways-in.ts';

const FOLDER = join(ROOT, 'apps/cli/dist/bundle');
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.js'));
const textOf = (name: string): string => readFileSync(join(FOLDER, name), 'utf8');

/** What is loaded with a file of the bundle: itself and all that it imports at once, over any number of steps. */
function loadedWith(name: string, seen: Set<string> = new Set()): Set<string> {
  if (!seen.has(name)) {
    seen.add(name);
    for (const [, next = ''] of textOf(name).matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/gu)) {
      loadedWith(next, seen);
    }
  }
  return seen;
}

/** Files that are loaded when they are asked for. */
const lazy = new Set(
  files.flatMap((file) =>
    [...textOf(file).matchAll(/import\([`'"]\.\/([^`'"]+)[`'"]\)/gu)].map(([, name = '']) => name),
  ),
);

const chunk = (name: string): string => {
  const [only = '', ...more] = [...lazy].filter((file) =>
    new RegExp(`^${name}-[\\w-]{8}\\.js$`, 'u').test(file),
  );
  expect(more, name).toEqual([]);
  expect(only, name).not.toBe('');
  return only;
};
const bytes = (names: Iterable<string>): number =>
  [...names].reduce((sum, name) => sum + textOf(name).length, 0);

test.each(['help', 'list', 'explain'])('%s loads next to nothing of what vets', (name) => {
  // 44 kB when this was written: tables, and words of refusals; what vets has 600 kB
  expect(bytes(loadedWith('pourproof.js', loadedWith(chunk(name))))).toBeLessThan(60_000);
});

test.each(['svg', 'dxf', 'lettering', 'sheet', 'calendar', 'json', 'read-woff2'])(
  'what vets does not load %s before it is needed',
  (name) => {
    expect([...loadedWith(chunk('vet'))]).not.toContain(chunk(name));
  },
);

test.each([[['--help']], [['list', 'bits']], [['list', 'findings']], [['explain', 'size-assumed']]])(
  'the bundle answers %j as the source does, its tables included',
  async (argv) => {
    expect(asBuilt(argv, ROOT)).toEqual(await captured(argv));
  },
);

test('the licence of every library inside stands beside the bundle', () => {
  const licences = readFileSync(join(FOLDER, 'LICENSES.txt'), 'utf8');
  for (const name of ['zod', 'harfbuzzjs', 'css-tree', 'culori', 'ics', 'saxes']) {
    expect(licences).toMatch(new RegExp(`^${name} \\d+\\.\\d+\\.\\d+\\n\\n\\S`, 'mu'));
  }
});
