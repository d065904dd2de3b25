import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { ROOT } from '../support/cli/captured-run.ts';

// the page as `npm run build:viewer` left it
const FOLDER = join(ROOT, 'apps/viewer/dist/assets');
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.js'));

/** A file of the page by the name of its entry, with all that it imports at once. */
function loadedWith(name: string, seen: Set<string> = new Set()): Set<string> {
  if (!seen.has(name)) {
    seen.add(name);
    const text = readFileSync(join(FOLDER, name), 'utf8');
    for (const [, next = ''] of text.matchAll(/(?:from|import)\s*["'`]\.\/([^"'`]+\.js)["'`]/gu)) {
      loadedWith(next, seen);
    }
  }
  return seen;
}

function only(entry: string): string {
  const [first = '', ...more] = files.filter((name) =>
    new RegExp(`^${entry}-[\\w-]{8}\\.js$`, 'u').test(name),
  );
  expect([first !== '', more], entry).toEqual([true, []]);
  return first;
}

const gzippedKb = (names: Iterable<string>): number =>
  [...names].reduce(
    (sum, name) => sum + gzipSync(readFileSync(join(FOLDER, name)), { level: 9 }).length / 1000,
    0,
  );

test('the page weighs no more than it did when it starts, gzipped', () => {
  // 86 kB, of which the job's table of settings with its schemas has 40 and the shop's 3, and what keeps jobs in the browser 4; the aim is 90
  expect(gzippedKb(loadedWith(only('index')))).toBeLessThan(90);
});

test('with what shows a proof it weighs no more than it did, gzipped', () => {
  // 153 kB: the drawing library has 27, words of findings and facts 25
  const names = new Set([...loadedWith(only('index')), ...loadedWith(only('paper'))]);
  expect(gzippedKb(names)).toBeLessThan(157);
});

test('the page starts without readers, the calendar library and what proves', () => {
  const names = [...loadedWith(only('index'))];
  for (const entry of ['paper', 'svg', 'dxf', 'lettering', 'load-shaper', 'read-woff2', 'proof-worker']) {
    expect(names).not.toContain(only(entry));
  }
  expect(names.some((name) => readFileSync(join(FOLDER, name), 'utf8').includes('BEGIN:VCALENDAR'))).toBe(
    false,
  );
});

test('what the worker loads to vet an SVG weighs no more than it did, gzipped', () => {
  // 298 kB; the aim is 200. The reader has 90, half of it the libraries that read style sheets, colours and XML; settings and materials 45; the rest measures
  // and judges
  const names = new Set([...loadedWith(only('proof-worker')), ...loadedWith(only('svg'))]);
  expect(gzippedKb(names)).toBeLessThan(302);
  expect([...names]).not.toContain(only('load-shaper'));
});
