import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const folder = fileURLToPath(new URL('../../apps/viewer/src/', import.meta.url));
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))
  .map((name) => ({ name: name.replaceAll('\\', '/'), text: readFileSync(folder + name, 'utf8') }));

/** What the page may take of each package when it runs; types are free. Nothing here measures, judges, or knows a limit. */
const MAY: Readonly<Record<string, RegExp>> = {
  '@pourproof/plane':
    /^(?:keepUnits|parseMeasure|formatLength|formatNumber|mmFromInches|ring(?:Start|Coords)|ringsBounds)$/u,
  '@pourproof/materials': /^defaultMaterials$/u,
  '@pourproof/proof': /^(?:applyFix|FIX_SETTINGS)$/u,
};
/** What the page asks of the front door; it proves in the worker alone. */
const DOOR = /^(?:settleJob|refusalOf|sourceName)$/u;

/** What a file takes of a package at run time. */
function taken(text: string): readonly (readonly [from: string, name: string])[] {
  const imports = text.matchAll(/^import (?!type )(?:\{([^}]*)\}|\* as \w+) from '([^']+)';/gmu);
  return [...imports].flatMap(([, names = '*', from = '']) =>
    names
      .split(',')
      .map((name) => name.trim().replace(/ as .*/u, ''))
      .filter((name) => name !== '' && !name.startsWith('type '))
      .map((name) => [from, name] as const),
  );
}

test('the page takes no geometry and no rules of the shop from any package: it settles, asks, and shows', () => {
  expect(files.length).toBeGreaterThan(90);
  const wrong = files.flatMap(({ name, text }) =>
    taken(text)
      .filter(([from, what]) => {
        if (from === 'pourproof') {
          return name !== 'proof-worker.ts' && !DOOR.test(what);
        }
        return (
          /^@pourproof\/(?:geometry|arrangement|cutting|artwork|redraw)/u.test(from) ||
          !(MAY[from]?.test(what) ?? true)
        );
      })
      .map(([from, what]) => `${name}: ${what} of ${from}`),
  );
  expect(wrong).toEqual([]);
});

test('outside the drawing of the picture no file reckons with points, angles or lengths', () => {
  const reckons =
    /Math\.(?:hypot|atan2?|sin|cos|tan|sqrt|PI)\b|\d\s*(?:\*|\/)\s*\w*Mm\b|\w*Mm\s*(?:\*|\/|\+|-)\s*\w/u;
  const found = files
    .filter(({ name }) => !name.startsWith('draw/') && !name.startsWith('gestures/sheet'))
    .filter(({ text }) => reckons.test(text.replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*|`[^`]*`/gu, '')))
    .map(({ name }) => name);
  expect(found).toEqual([]);
});

test('elements name no number of millimetres, degrees or hours: what is usual comes from the table of settings', () => {
  const typed = /['"`]\d+(?:\.\d+)?(?:mm|in|deg|h|g|C|F)['"`]/u;
  const found = files
    .filter(({ name }) => name.startsWith('elements/'))
    .filter(({ text }) => typed.test(text))
    .map(({ name }) => name);
  // what a field of nothing stands for, and where fibres lie that nobody turned
  expect(found).toEqual(['elements/grain-field.ts', 'elements/lettering-form.ts']);
});
