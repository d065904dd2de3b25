import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readSvg, type SvgOptions } from '@pourproof/artwork';
import { describe, expect, test } from 'vitest';

const root = join(import.meta.dirname, '../../..');
const section = readFileSync(join(root, 'docs/unsupported.md'), 'utf8')
  .split(/^## /m)
  .find((part) => part.startsWith('SVG'));
const [, elementPart = '', partPart = '', errorPart = ''] = (section ?? '').split(/^### /m);

/** Cells of the table rows of a part of the page, without backticks. */
function rows(part: string): string[][] {
  const lines = part.split('\n').filter((line) => line.startsWith('| '));
  return lines.slice(2).map((line) =>
    line
      .slice(1, -1)
      .split('|')
      .map((cell) => cell.replaceAll('`', '').trim()),
  );
}

const elements = rows(elementPart).flatMap(([names, , code]) =>
  names.split(', ').map((name) => [name, code]),
);
const partly = rows(partPart);
const page = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm" viewBox="0 0 9 9">${body}</svg>`;

describe('the list of what SVG reading does not take', () => {
  test.each(elements)('%s gives %s with its place', (name, code) => {
    const drawing = readSvg(page(`\n<${name}>words</${name}>`));
    const notice = drawing.notices.find((n) => n.code === code);
    expect(notice?.where[0]).toMatchObject({ line: 2, element: name });
    expect(drawing.shapes).toEqual([]);
  });

  test.each(partly.filter(([, , fixture]) => fixture !== ''))('%s: %s by fixture %s', (_, code, fixture) => {
    const file = join(root, 'fixtures/svg', fixture);
    const { options } = JSON.parse(readFileSync(`${file}.expected.json`, 'utf8')) as { options?: SvgOptions };
    const notice = readSvg(readFileSync(`${file}.svg`), options).notices.find((n) => n.code === code);
    expect(notice?.text.mm).toMatch(/^[A-Z0-9].+\.$/s);
  });

  test('every notice and every error that the reader can give is on the page', () => {
    const folder = join(root, 'packages/artwork/src/svg');
    const read = (file: string): string => readFileSync(join(folder, file), 'utf8');
    const notices = [
      ...read('svg-notices.ts').matchAll(/^ {2}'?([a-z-]+)'?: (?:caution|note|leftOut|assumed|changed)\(/gm),
    ].map((m) => m[1]);
    const errors = [...read('svg-refusals.ts').matchAll(/^ {2}'([a-z0-9-]+)': \(/gm)].map((m) => m[1]);
    expect(notices.length).toBeGreaterThan(40);
    expect(notices.filter((code) => !partPart.includes(`\`${code}\``))).toEqual([]);
    expect(errors.length).toBeGreaterThan(9);
    expect(errors.filter((code) => !errorPart.includes(`\`${code}\``))).toEqual([]);
  });
});
