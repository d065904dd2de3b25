import { readdirSync, readFileSync } from 'node:fs';
import { zlibSync } from 'fflate';
import { expect, test } from 'vitest';
import { compress, decompress } from 'woff2-encoder';
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

/** Tables of a plain font file by their tags. */
function tablesOf(font: Uint8Array): Map<string, Uint8Array> {
  const data = new DataView(font.buffer, font.byteOffset, font.byteLength);
  return new Map(
    Array.from({ length: data.getUint16(4) }, (_, k) => {
      const row = 12 + 16 * k;
      const at = data.getUint32(row + 8);
      return [
        String.fromCharCode(...font.subarray(row, row + 4)),
        font.subarray(at, at + data.getUint32(row + 12)),
      ];
    }),
  );
}

const PLAIN = readdirSync(fonts).filter((name) => /\.(?:ttf|otf)$/u.test(name));

test.each(PLAIN)('%s packed as WOFF2 has its tables and the outline of every glyph again', async (name) => {
  const plain = new Uint8Array(readFileSync(new URL(name, fonts)));
  const packed = await compress(plain);
  const [before, after] = [tablesOf(plain), tablesOf(await unpackFont(packed))];
  for (const [tag, table] of before) {
    // outlines are packed anew, with offsets of their own; the packer drops signatures and writes its own sum and flag into head
    if (!['glyf', 'loca', 'DSIG', 'head'].includes(tag)) {
      expect(after.get(tag), tag).toEqual(table);
    }
  }
  const [one, other] = [openedFont(await openFont(plain)), openedFont(await openFont(packed))];
  const glyphs = new DataView(before.get('maxp')!.buffer, before.get('maxp')!.byteOffset).getUint16(4);
  for (let glyph = 0; glyph < glyphs; glyph++) {
    const [a, b] = [one, other].map((font) => glyphRings(font, glyph, [100, 0, 0, -100, 0, 0], 0.01));
    expect(b).toEqual(a);
  }
});

test.each(readdirSync(fonts).filter((name) => name.endsWith('.woff2')))(
  '%s unpacks to the tables that the reference unpacker gives',
  async (name) => {
    const packed = new Uint8Array(readFileSync(new URL(name, fonts)));
    const [ours, theirs] = [tablesOf(await unpackFont(packed)), tablesOf(await decompress(packed))];
    expect([...ours.keys()].toSorted()).toEqual([...theirs.keys()].toSorted());
    for (const [tag, table] of theirs) {
      if (!['glyf', 'loca', 'head'].includes(tag)) {
        expect(ours.get(tag), tag).toEqual(table);
      }
    }
  },
);

test('a collection packed as WOFF2 keeps its faces', async () => {
  const two = collection([arvo, new Uint8Array(readFileSync(new URL('josefin-sans-400.ttf', fonts)))]);
  const packed = await compress(two);
  expect(faceCount(await unpackFont(packed))).toBe(2);
  expect((await openFont(packed, { faceIndex: 1 })).name).toBe('Josefin Sans Regular');
  const [one, other] = [
    openedFont(await openFont(packed, { faceIndex: 0 })),
    openedFont(await openFont(arvo)),
  ];
  expect(glyphRings(one, 40, [100, 0, 0, -100, 0, 0], 0.01)).toEqual(
    glyphRings(other, 40, [100, 0, 0, -100, 0, 0], 0.01),
  );
});

test('no byte of a packed font that is spoilt gives anything but a font or a refusal', async () => {
  const packed = new Uint8Array(await compress(arvo));
  let refused = 0;
  for (let at = 48; at < 700; at += 13) {
    const bytes = packed.slice();
    bytes[at] = (bytes[at] as number) ^ 0x55;
    await unpackFont(bytes).catch((error: unknown) => {
      expect(error).toMatchObject({ name: 'ArtworkError' });
      refused++;
    });
  }
  expect(refused).toBeGreaterThan(10);
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
