import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ArtworkError, readDxf } from '@pourproof/artwork';
import { describe, expect, test } from 'vitest';
import { binaryDxf } from '../../support/dxf/binary-text.ts';
import { dxfText, MM } from '../../support/dxf/dxf-text.ts';

const folder = join(import.meta.dirname, '../../../fixtures/dxf');
const names = readdirSync(folder).filter((file) => file.endsWith('.dxf'));
// damage of text files has no like in binary: numbers there are always numbers
const binaryNames = names.filter(
  (name) => !['unreadable-numbers.dxf', 'file-with-a-broken-pair.dxf'].includes(name),
);

describe.each(binaryNames)('%s in binary', (name) => {
  const text = readFileSync(join(folder, name), 'utf8');
  test.each([true, false])('gives the same shapes with wide codes: %s', (wide) => {
    const fromText = readDxf(new TextEncoder().encode(text));
    const fromBinary = readDxf(binaryDxf(text, wide));
    expect(fromBinary.shapes.map((s) => s.region)).toEqual(fromText.shapes.map((s) => s.region));
    expect(fromBinary.notices.map((n) => n.code)).toEqual(fromText.notices.map((n) => n.code));
    expect(fromBinary.scaleSource).toEqual(fromText.scaleSource);
  });
});

const circleOn = (layer: string) => dxfText([0, 'CIRCLE', 8, layer, 10, 0, 20, 0, 40, 1], { header: MM });

function withHeader(pairs: (string | number)[], layer: string): string {
  return dxfText([0, 'CIRCLE', 8, layer, 10, 0, 20, 0, 40, 1], { header: [...pairs, ...MM] });
}

function bytes(text: string, replace: Record<string, number[]> = {}): Uint8Array {
  return Uint8Array.from([...text].flatMap((c) => replace[c] ?? [c.charCodeAt(0)]));
}

describe('encodings', () => {
  test.each([
    ['ANSI_1251', [0xd8, 0xee, 0xe2], 'Шов'],
    ['ansi_1252', [0xc4, 0x72, 0xdf], 'Ärß'],
    ['ANSI_932', [0x8a, 0x4f], '外'],
    ['ANSI_936', [0xcd, 0xe2], '外'],
    ['ANSI_949', [0xbf, 0xdc], '외'],
    ['ANSI_950', [0xa5, 0x7e], '外'],
  ])('a layer name in code page %s', (page, raw, name) => {
    const source = bytes(withHeader([9, '$ACADVER', 1, 'AC1015', 9, '$DWGCODEPAGE', 3, page], '@'), {
      '@': raw,
    });
    const drawing = readDxf(source);
    expect(drawing.shapes[0].layer).toBe(name);
    expect(drawing.notices).toEqual([]);
  });

  test('versions from AC1021 on are UTF-8 whatever code page they name', () => {
    const text = withHeader([9, '$ACADVER', 1, 'AC1032', 9, '$DWGCODEPAGE', 3, 'ANSI_1252'], 'Füllung');
    expect(readDxf(new TextEncoder().encode(text)).shapes[0].layer).toBe('Füllung');
  });

  test('a byte order mark decides', () => {
    const text = circleOn('Füllung');
    const wide = [...`\ufeff${text}`];
    const le = Uint8Array.from(wide.flatMap((c) => [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8]));
    const be = Uint8Array.from(wide.flatMap((c) => [c.charCodeAt(0) >> 8, c.charCodeAt(0) & 255]));
    for (const source of [le, be, new TextEncoder().encode(`\ufeff${text}`)]) {
      expect(readDxf(source).shapes[0].layer).toBe('Füllung');
    }
  });

  test('characters by code point are read in names', () => {
    expect(readDxf(circleOn('F\\U+00FCllung')).shapes[0].layer).toBe('Füllung');
  });

  test('an unknown code page is told, and the shapes are there', () => {
    const drawing = readDxf(bytes(withHeader([9, '$DWGCODEPAGE', 3, 'DOS861'], 'A')));
    expect(drawing.notices.map((n) => n.code)).toEqual(['unknown-encoding']);
    expect(drawing.shapes).toHaveLength(1);
  });
});

describe('files that are damaged or no DXF', () => {
  test.each([
    ['an empty file', '', 'empty-file'],
    ['white space', ' \n\n ', 'empty-file'],
    ['an SVG', '<svg xmlns="http://www.w3.org/2000/svg"/>', 'not-dxf'],
    ['a DWG', 'AC1032\0\0\0', 'not-dxf'],
    ['numbers', '1\n2\n3\n4\n', 'not-dxf'],
  ])('%s is refused with a remedy', (_, source, code) => {
    for (const form of [source, new TextEncoder().encode(source)]) {
      const error = thrownBy(() => readDxf(form));
      expect(error).toBeInstanceOf(ArtworkError);
      expect((error as ArtworkError).code).toBe(code);
      expect((error as ArtworkError).remedy).not.toBe('');
    }
  });

  test('a file that stops early is read as far as it goes, and says so', () => {
    const whole = dxfText(
      [0, 'CIRCLE', 8, 'A', 10, 0, 20, 0, 40, 1, 0, 'CIRCLE', 8, 'A', 10, 9, 20, 0, 40, 1],
      { header: MM },
    );
    const cut = whole.slice(0, whole.indexOf('0\nENDSEC\n0\nEOF'));
    const drawing = readDxf(cut);
    expect(drawing.notices.map((n) => n.code)).toEqual(['missing-end']);
    expect(drawing.shapes[0].region.ringEnds).toHaveLength(2);
  });

  test('a broken pair is told with its line, what came before is read', () => {
    const whole = dxfText([0, 'CIRCLE', 8, 'A', 10, 0, 20, 0, 40, 1, 0, 'CIRCLE', 8, 'A'], { header: MM });
    const drawing = readDxf(whole.replace('0\nENDSEC\n0\nEOF', 'oops\n1\n0\nENDSEC\n0\nEOF'));
    expect(drawing.notices[0].code).toBe('file-damaged');
    expect(drawing.notices[0].where[0].line).toBe(
      whole.slice(0, whole.indexOf('0\nENDSEC\n0\nEOF')).split('\n').length,
    );
    expect(drawing.shapes[0].region.ringEnds).toHaveLength(1);
  });

  test('binary data that stops within a value is told', () => {
    const whole = binaryDxf(circleOn('A'), true);
    const drawing = readDxf(whole.subarray(0, whole.length - 40));
    expect(drawing.notices.map((n) => n.code)).toContain('file-damaged');
  });

  test('names that mean something to programs are only names', () => {
    for (const name of ['__proto__', 'constructor', 'toString']) {
      const block = [
        0,
        'BLOCK',
        8,
        '0',
        2,
        name,
        10,
        0,
        20,
        0,
        0,
        'CIRCLE',
        8,
        '0',
        10,
        0,
        20,
        0,
        40,
        1,
        0,
        'ENDBLK',
      ];
      const drawing = readDxf(
        dxfText([0, 'INSERT', 8, name, 2, name, 10, 0, 20, 0, 0, name, 8, name], {
          header: MM,
          blocks: block,
        }),
      );
      expect(drawing.shapes[0].layer).toBe(name);
      expect(drawing.notices.map((n) => n.code)).toEqual(['entity-not-taken']);
    }
  });

  test('blocks that multiply without end are refused', () => {
    const blocks: (string | number)[] = [
      0,
      'BLOCK',
      2,
      'B0',
      10,
      0,
      20,
      0,
      0,
      'CIRCLE',
      8,
      '0',
      10,
      0,
      20,
      0,
      40,
      1,
      0,
      'ENDBLK',
    ];
    for (let k = 1; k < 12; k++) {
      blocks.push(0, 'BLOCK', 2, `B${k}`, 10, 0, 20, 0);
      blocks.push(0, 'INSERT', 8, '0', 2, `B${k - 1}`, 10, 0, 20, 0, 70, 30000, 71, 30000, 44, 1, 45, 1);
      blocks.push(0, 'ENDBLK');
    }
    const text = dxfText([0, 'INSERT', 8, '0', 2, 'B11', 10, 0, 20, 0], { header: MM, blocks });
    expect((thrownBy(() => readDxf(text)) as ArtworkError).code).toBe('too-many-copies');
  });
});

function thrownBy(act: () => unknown): unknown {
  try {
    act();
  } catch (error) {
    return error;
  }
  return undefined;
}
