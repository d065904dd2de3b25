import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readDxf } from '@pourproof/artwork';
import { describe, expect, test } from 'vitest';
import { dxfText, MM } from '../../support/dxf/dxf-text.ts';

const root = join(import.meta.dirname, '../../..');
const section = readFileSync(join(root, 'docs/unsupported.md'), 'utf8')
  .split(/^## /m)
  .find((part) => part.startsWith('DXF'))!;
const [, entityPart, partPart] = section.split(/^### /m);

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

const entities = rows(entityPart).flatMap(([names, , code]) => names.split(', ').map((name) => [name, code]));
const partly = rows(partPart).filter(([, , fixture]) => fixture !== '');

describe('the list of what DXF reading does not take', () => {
  test.each(entities)('%s gives %s, which names or counts it', (name, code) => {
    const drawing = readDxf(
      dxfText([0, name, 8, 'A', 10, 0, 20, 0, 11, 1, 21, 1, 40, 1, 1, 'words'], { header: MM }),
    );
    expect(drawing.shapes).toEqual([]);
    expect(drawing.notices.map((n) => n.code)).toEqual([code]);
    expect(drawing.notices[0].where[0].element).toContain(name);
    expect(drawing.notices[0].where[0].line).toBeGreaterThan(1);
  });

  test.each(partly)('%s: %s by fixture %s', (_, code, fixture) => {
    const drawing = readDxf(readFileSync(join(root, 'fixtures/dxf', `${fixture}.dxf`)));
    const notice = drawing.notices.find((n) => n.code === code);
    expect(notice!.text.mm).toMatch(/^[A-Z0-9].+\.$/s);
  });

  test('every notice of the fixtures is on the page, and so is every code that the reader can give', () => {
    const folder = join(root, 'packages/artwork/src/dxf');
    const sources = readdirSync(folder).filter((file) => !file.endsWith('.test.ts'));
    const given = sources.flatMap((file) => {
      const text = readFileSync(join(folder, file), 'utf8');
      const codes = [
        ...text.matchAll(/^ {2}'([a-z]+(?:-[a-z]+)+)': \(.*=>/gm),
        ...text.matchAll(/^ {2}'?([a-z]+(?:-[a-z]+)*)'?: (?:caution|note|leftOut|assumed|changed)\(/gm),
      ].map((m) => m[1]);
      return codes;
    });
    expect(given.length).toBeGreaterThan(30);
    expect([...new Set(given)].filter((code) => !section.includes(`\`${code}\``))).toEqual([]);
  });
});
