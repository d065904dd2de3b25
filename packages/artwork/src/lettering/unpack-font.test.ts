import { readFileSync } from 'node:fs';
import { zlibSync } from 'fflate';
import { expect, test } from 'vitest';
import { compress } from 'woff2-encoder';
import { glyphRings } from './glyph-outline.ts';
import { openFont } from './open-font.ts';
import { openedFont } from './opened-font.ts';
import { faceCount, unpackFont } from './unpack-font.ts';

const fonts = new URL('../../../../fixtures/fonts/', import.meta.url);
const arvo = new Uint8Array(readFileSync(new URL('arvo-400.ttf', fonts)));

/** Packs a plain font as WOFF 1.0, tables compressed where that is shorter. */
function packWoff(font: Uint8Array): Uint8Array {
  const from = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const count = from.getUint16(4);
  const parts: Uint8Array[] = [];
  const head = new Uint8Array(44 + 20 * count);
  const to = new DataView(head.buffer);
  to.setUint32(0, 0x774f4646);
  to.setUint32(4, from.getUint32(0));
  to.setUint16(12, count);
  to.setUint32(16, font.length);
  let at = head.length;
  for (let i = 0; i < count; i++) {
    const row = 12 + 16 * i;
    const table = font.subarray(from.getUint32(row + 8), from.getUint32(row + 8) + from.getUint32(row + 12));
    const packed = zlibSync(table);
    const part = packed.length < table.length ? packed : table;
    to.setUint32(44 + 20 * i, from.getUint32(row));
    to.setUint32(48 + 20 * i, at);
    to.setUint32(52 + 20 * i, part.length);
    to.setUint32(56 + 20 * i, table.length);
    to.setUint32(60 + 20 * i, from.getUint32(row + 4));
    const padded = new Uint8Array((part.length + 3) & ~3);
    padded.set(part);
    parts.push(padded);
    at += padded.length;
  }
  to.setUint32(8, at);
  return Uint8Array.from([head, ...parts].flatMap((p) => [...p]));
}

async function outlines(font: Uint8Array): Promise<number[][][]> {
  const open = openedFont(await openFont(font));
  return [...'AgR&8é'].map((c) =>
    glyphRings(open, open.shaped.nominalGlyph(c.codePointAt(0)!)!, [100, 0, 0, -100, 0, 0], 0.01),
  );
}

test('a WOFF file unpacks to the very tables of the plain font', async () => {
  const woff = packWoff(arvo);
  expect(woff.length).toBeLessThan(arvo.length);
  expect(await outlines(await unpackFont(woff))).toEqual(await outlines(arvo));
});

test('a WOFF2 file gives the outlines of the plain font', async () => {
  const woff2 = await compress(arvo);
  expect(woff2.length).toBeLessThan(arvo.length);
  expect(await outlines(woff2)).toEqual(await outlines(arvo));
});

test('a plain font is returned as it is', async () => {
  expect(await unpackFont(arvo)).toBe(arvo);
  expect(faceCount(arvo)).toBe(1);
});

test('faces of a collection are told apart and can be chosen', async () => {
  const two = collection([arvo, new Uint8Array(readFileSync(new URL('josefin-sans-400.ttf', fonts)))]);
  expect(faceCount(two)).toBe(2);
  const first = await openFont(two);
  expect(first.name).toBe('Arvo Regular');
  expect(first.notices.map((n) => n.code)).toEqual(['lettering-first-face']);
  expect((await openFont(two, { faceIndex: 1 })).name).toBe('Josefin Sans Regular');
  await expect(openFont(two, { faceIndex: 2 })).rejects.toMatchObject({ code: 'font-face-missing' });
});

test('a collection whose second face alone is cut short is refused', async () => {
  const whole = collection([arvo, arvo.slice()]);
  await expect(openFont(whole.subarray(0, whole.length - 2000))).rejects.toMatchObject({
    code: 'font-truncated',
  });
  expect((await openFont(whole)).name).toBe('Arvo Regular');
});

test.each([
  ['nothing', new Uint8Array(0), 'font-unreadable'],
  ['a text', new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"/>'), 'font-unreadable'],
  ['half a font', arvo.subarray(0, 20_000), 'font-truncated'],
  ['the first bytes of a font', arvo.subarray(0, 40), 'font-truncated'],
  ['half a WOFF', packWoff(arvo).subarray(0, 15_000), 'font-truncated'],
  ['a WOFF with spoilt data', spoilt(packWoff(arvo)), 'font-unreadable'],
  ['a WOFF2 head alone', new TextEncoder().encode('wOF2aaaaaaaa'), 'font-truncated'],
])('%s is refused with a remedy', async (_, bytes, code) => {
  await expect(openFont(bytes)).rejects.toMatchObject({ name: 'ArtworkError', code, remedy: /./ });
});

test('a spoilt WOFF2 file is refused with a remedy', async () => {
  const woff2 = new Uint8Array(await compress(arvo));
  woff2.fill(0xa5, 200, 5000);
  await expect(openFont(woff2)).rejects.toMatchObject({ code: 'font-unreadable', remedy: /./ });
});

function spoilt(woff: Uint8Array): Uint8Array {
  return woff.map((byte, i) => (i > 2000 && i < 9000 ? byte ^ 0x5a : byte));
}

/** A font collection of plain fonts, their table offsets moved to where they come to lie. */
function collection(parts: readonly Uint8Array[]): Uint8Array {
  let at = 12 + 4 * parts.length;
  const starts = parts.map((part) => {
    const start = at;
    at += (part.length + 3) & ~3;
    return start;
  });
  const out = new Uint8Array(at);
  const to = new DataView(out.buffer);
  to.setUint32(0, 0x74746366);
  to.setUint32(4, 0x00010000);
  to.setUint32(8, parts.length);
  parts.forEach((part, k) => {
    to.setUint32(12 + 4 * k, starts[k]!);
    out.set(part, starts[k]!);
    for (let i = 0; i < to.getUint16(starts[k]! + 4); i++) {
      const field = starts[k]! + 12 + 16 * i + 8;
      to.setUint32(field, to.getUint32(field) + starts[k]!);
    }
  });
  return out;
}
