import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { resolveRegions } from '@pourproof/arrangement';
import { ArtworkError, readArtwork, readSvg } from '@pourproof/artwork';
import { signedArea } from '@pourproof/plane';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cases } from '../../support/lane.ts';

const svg = (body: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${body}</svg>`;
const nested = (depth: number): string =>
  `${'<g>'.repeat(depth)}<rect width="9" height="9"/>${'</g>'.repeat(depth)}`;
const laughs = (n: number): string =>
  `<!DOCTYPE svg [<!ENTITY a0 "ha">${Array.from({ length: n }, (_, i) => `<!ENTITY a${i + 1} "${`&a${i};`.repeat(10)}">`).join('')}]>`;
const doubling = (n: number): string =>
  `<defs><rect id="u0" width="1" height="1"/>${Array.from({ length: n }, (_, i) => `<g id="u${i + 1}"><use href="#u${i}"/><use href="#u${i}"/></g>`).join('')}</defs><use href="#u${n}"/>`;

describe('files that cannot be read', () => {
  const cases: Record<string, [string | Uint8Array, string]> = {
    'an empty file': ['', 'svg-empty'],
    'white space only': [' \n ', 'svg-empty'],
    words: ['not a drawing', 'svg-not-well-formed'],
    'another root': ['<html/>', 'svg-not-svg'],
    'another namespace': ['<svg xmlns="http://example.org/x"/>', 'svg-not-svg'],
    'a file cut short': [svg('<rect width="9"').slice(0, -6), 'svg-not-well-formed'],
    'an unknown entity': [svg('&gone;'), 'svg-not-well-formed'],
    'wrong nesting': [svg('<g><rect></g></rect>'), 'svg-not-well-formed'],
    'an entity of itself': [
      `<!DOCTYPE svg [<!ENTITY a "&b;"><!ENTITY b "&a;">]>${svg('&a;')}`,
      'svg-entity-loop',
    ],
    'entities that multiply': [`${laughs(9)}${svg('<text>&a9;</text>')}`, 'svg-entities-too-large'],
    'a large entity used often': [
      `<!DOCTYPE svg [<!ENTITY a "${'x'.repeat(100_000)}">]>${svg(`<text>${'&a;'.repeat(1000)}</text>`)}`,
      'svg-entities-too-large',
    ],
    'parts that double one another': [svg(doubling(40)), 'svg-reuse-too-large'],
    'a thousand groups in one another': [svg(nested(1200)), 'svg-nested-too-deeply'],
    'broken compression': [new Uint8Array([0x1f, 0x8b, 8, 0, 1, 2, 3, 4, 5, 6, 7, 8]), 'svg-packed-broken'],
    'an unpacked size beyond all use': [gzipSync(Buffer.alloc(300 * 1024 * 1024)), 'svg-packed-too-large'],
    'an unknown encoding': [
      Buffer.from(`<?xml version="1.0" encoding="klingon"?>${svg('')}`),
      'svg-encoding-unknown',
    ],
    'bytes that are not UTF-8': [Buffer.from([0x3c, 0x73, 0xff, 0xfe, 0xfd]), 'svg-encoding-broken'],
  };

  test.each(Object.entries(cases))('%s', (_, [source, code]) => {
    let caught: unknown;
    try {
      readSvg(source);
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(ArtworkError);
    const { code: given, message, remedy } = caught as ArtworkError;
    expect(given).toBe(code);
    expect(message).toMatch(/^[A-Z].*\.$/s);
    expect(remedy).toMatch(/^[A-Z].*\.$/s);
  });

  test('the place of an error is the line and column where the file goes wrong', () => {
    expect(() => readSvg(svg('\n  <g>\n  <rect></g>'))).toThrow(
      expect.objectContaining({ code: 'svg-not-well-formed', line: 3 }),
    );
  });

  test('other formats are told by their content', () => {
    const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]);
    expect(() => readArtwork(png, 'name.svg')).toThrow(/name\.svg is a PNG picture/);
    expect(() => readArtwork(new Uint8Array(), 'a.svg')).toThrow(
      expect.objectContaining({ code: 'artwork-empty' }),
    );
    expect(() => readArtwork(Buffer.from('words'), 'a.txt')).toThrow(
      expect.objectContaining({ code: 'artwork-unknown' }),
    );
    expect(readArtwork(Buffer.from(svg('<rect width="1" height="1"/>')), 'drawing').format).toBe('svg');
  });
});

describe('files that are odd', () => {
  test('900 groups inside one another are read', () => {
    expect(readSvg(svg(nested(900))).shapes).toHaveLength(1);
  });

  test('many attributes and a huge style sheet are read', () => {
    const attributes = Array.from({ length: 5000 }, (_, i) => `a${i}="${i}"`).join(' ');
    const rules = Array.from({ length: 5000 }, (_, i) => `.c${i} g > .d${i} { fill: #123 }`).join('\n');
    const body = `<style>${rules}</style><rect class="c1 c2 d3" ${attributes} width="9" height="9"/>`;
    expect(readSvg(svg(body)).shapes[0]).toMatchObject({ colour: '#000000' });
  });

  test.each(['toleranceMm', 'widthMm', 'heightMm', 'scale', 'pxPerInch'])('%s must be above 0', (name) => {
    for (const value of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(() => readSvg(svg(''), { [name]: value })).toThrow(RangeError);
    }
  });

  test('numbers without sense never become part of the artwork', () => {
    const odd = ['1e999', '-1e999', 'NaN', 'Infinity', '1e308', '-1e308', '1e-320', '--1', '1e', '', ' '];
    for (const value of odd) {
      const body = `<rect x="${value}" width="9" height="9" rx="${value}"/><circle r="${value}" cx="${value}"/>
        <path d="M${value} 1L9 9H${value}z" stroke="red" stroke-width="${value}" stroke-dasharray="${value} 1" stroke-miterlimit="${value}"/>
        <g transform="scale(${value}) rotate(${value})"><path d="M0 0A${value} 9 0 0 1 9 9"/></g>`;
      for (const { region } of readSvg(svg(body)).shapes) {
        expect(region.coords.every(Number.isFinite), value).toBe(true);
      }
    }
  });
});

test.each([
  'M0 90C1e308 1e308 -1e308 3 30 90',
  'M0 90C1e200 1e200 -1e200 3 30 90',
  'M0 90Q1e308 3 30 90',
  'M0 0A1e200 1e160 0 0 0 30 30L30 0',
  'M0 90L1e308 1e308 30 90',
])('a curve beyond range is told, not only left out: %s', (d) => {
  const { shapes, notices } = readSvg(svg(`<rect width="20" height="10"/><path id="far" d="${d}"/>`));
  expect(shapes).toHaveLength(1);
  expect(notices).toMatchObject([{ code: 'number-too-large', where: [{ element: 'path#far' }] }]);
});

test.each(['<line x1="1" y1="1" x2="9" y2="9"/>', '<rect width="9" height="9" fill="none"/>'])(
  'a stroke wider than any number of millimetres is told: %s',
  (shape) => {
    const { shapes, notices } = readSvg(svg(shape.replace('/>', ' stroke="black" stroke-width="1e308"/>')));
    expect(shapes).toEqual([]);
    expect(notices.map(({ code }) => code)).toContain('number-too-large');
  },
);

test('a dash longer than any path leaves the stroke whole', () => {
  const line = (dashes: string): string =>
    svg(`<path d="M1 1H90" stroke="black" stroke-dasharray="${dashes}"/>`);
  expect(readSvg(line('1e308')).shapes).toEqual(readSvg(line('1e9')).shapes);
});

test.each(['x', 'height', 'rx'])('an empty %s is told', (name) => {
  const { notices } = readSvg(svg(`<rect width="9" ${name}=""/><rect width="9" height="9"/>`));
  expect(notices).toMatchObject([{ code: 'length-unreadable', params: { details: [`rect ${name}=""`] } }]);
});

describe('damaged files', () => {
  const folder = new URL('../../../fixtures/svg/', import.meta.url);
  const texts = readdirSync(folder)
    .filter(
      (file) =>
        file.endsWith('.svg') && !/^(?:xml-utf|xml-latin|xml-comp|page-fine|stroke-dashes-too)/.test(file),
    )
    .map((file) => readFileSync(new URL(file, folder), 'utf8'));
  const scraps = [
    '"',
    '<',
    '>',
    '&',
    '/',
    '9e99',
    '-',
    'z',
    'A',
    'url(#c)',
    '\u0000',
    '%',
    'none',
    '{',
    '}',
    '<use href="#c"/>',
    '0',
    ' ',
  ];
  const damage = fc.record({
    text: fc.constantFrom(...texts),
    cuts: fc.array(
      fc.record({
        at: fc.double({ min: 0, max: 1, noNaN: true }),
        drop: fc.nat(12),
        put: fc.oneof(fc.constantFrom(...scraps), fc.string({ maxLength: 4 })),
      }),
      { minLength: 1, maxLength: 6 },
    ),
  });

  test('are read or refused with a code, and never give a number that is none', () => {
    fc.assert(
      fc.property(damage, ({ text, cuts }) => {
        let damaged = text;
        for (const { at, drop, put } of cuts) {
          const i = Math.floor(at * damaged.length);
          damaged = damaged.slice(0, i) + put + damaged.slice(i + drop);
        }
        try {
          const drawing = readSvg(damaged);
          for (const { region } of drawing.shapes) {
            expect(region.coords.every(Number.isFinite)).toBe(true);
          }
          for (const { text } of drawing.notices) {
            expect(text.mm).not.toMatch(/undefined|NaN/);
          }
        } catch (error) {
          expect(error).toBeInstanceOf(ArtworkError);
        }
      }),
      cases(300),
    );
  });

  test('that do not match their checksum or their length are told, sound ones are not', () => {
    const sound = gzipSync(svg('<rect width="20" height="20"/>'));
    const codes = (bytes: Uint8Array): readonly string[] => readSvg(bytes).notices.map(({ code }) => code);
    expect(codes(sound)).not.toContain('packed-damaged');
    for (const back of [1, 4, 5, 8]) {
      const damaged = Uint8Array.from(sound);
      damaged[damaged.length - back] = (damaged[damaged.length - back] ?? 0) ^ 0x10;
      expect(codes(damaged)).toContain('packed-damaged');
    }
  });

  test('cut anywhere, compressed or not, are refused or read', () => {
    const bytes = gzipSync(texts[0]);
    for (let n = 1; n < bytes.length; n++) {
      try {
        readSvg(bytes.subarray(0, n));
      } catch (error) {
        expect(error).toBeInstanceOf(ArtworkError);
      }
    }
  });
});

describe('what must not matter', () => {
  const areaOf = (body: string): number =>
    signedArea(resolveRegions(readSvg(svg(body)).shapes.map((s) => s.region)).region);
  const coordinate = fc.integer({ min: 5, max: 95 });
  const point = fc.tuple(coordinate, coordinate);
  const cubics = fc.tuple(point, fc.array(fc.tuple(point, point, point), { minLength: 1, maxLength: 4 }));

  test('the direction of a path and the order of shapes', () => {
    fc.assert(
      fc.property(cubics, cubics, fc.boolean(), (a, b, stroked) => {
        const style = stroked ? 'fill="none" stroke="black" stroke-width="7" stroke-linejoin="round"' : '';
        const forward = (c: typeof a): string =>
          `<path ${style} d="M${c[0]}${c[1].map((s) => `C${s}`).join('')}z"/>`;
        const backward = (c: typeof a): string => {
          const points = [c[0], ...c[1].flat()].reverse();
          return `<path ${style} d="M${points[0]}${c[1].map((_, i) => `C${points.slice(3 * i + 1, 3 * i + 4)}`).join('')}z"/>`;
        };
        const area = areaOf(forward(a) + forward(b));
        // both directions are sampled alike; overlaps move by no more than the tolerance along the outlines
        expect(Math.abs(areaOf(backward(b) + backward(a)) - area)).toBeLessThan(0.02 + 1e-4 * area);
      }),
      cases(30),
    );
  });

  test('the unit: areas scale with its square', () => {
    fc.assert(
      fc.property(cubics, fc.double({ min: 0.2, max: 5, noNaN: true }), ([start, rest], factor) => {
        const source = svg(
          `<path stroke="red" stroke-width="3" d="M${start}${rest.map((s) => `C${s}`).join('')}"/>`,
        );
        const at = (scale: number): number =>
          signedArea(resolveRegions(readSvg(source, { scale }).shapes.map((s) => s.region)).region);
        const area = at(1);
        expect(Math.abs(at(factor) / factor ** 2 - area)).toBeLessThan(
          (0.05 + 1e-4 * area) * Math.max(1, 1 / factor ** 2),
        );
      }),
      cases(20),
    );
  });
});
