import type { JobInput } from '@pourproof/job';
import { sheetHtml } from '@pourproof/wording';
import fc from 'fast-check';
import { type Source, vet } from 'pourproof';
import { describe, expect, test } from 'vitest';
import { dxfText, MM } from '../support/dxf/dxf-text.ts';
import { cases } from '../support/lane.ts';

const JOB: JobInput = {
  bit: ['flat:2mm'],
  depth: '3mm',
  wood: 'maple',
  seal: 'epoxy',
  coats: 1,
  sealHours: '24h',
  level: '0.5mm',
  weigh: 'fine',
  boards: 6,
  colour: 'blue',
};
const RANK = { clear: 0, caution: 1, stop: 2 } as const;

const svg = (content: string): Source => ({
  kind: 'file',
  name: 'sign.svg',
  bytes: new TextEncoder().encode(
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="400mm" height="400mm" viewBox="0 0 400 400">${content}</svg>`,
  ),
});
const dxf = (entities: readonly (string | number)[]): Source => ({
  kind: 'file',
  name: 'sign.dxf',
  bytes: new TextEncoder().encode(dxfText(entities, { header: MM })),
});

/** Artwork that is sound, sound but tight, and too narrow for the bit. */
const SVG_SHAPES = [
  '<rect x="10" y="10" width="60" height="6"/>',
  '<rect x="10" y="40" width="44" height="2.05"/>',
  '<rect x="10" y="60" width="44" height="1.2"/>',
];

/** What the SVG reader cannot take, with the code that it tells. */
const SVG_UNREAD: readonly (readonly [code: string, content: string])[] = [
  ['text-not-outlined', '<text x="100" y="100" font-size="20">Elm</text>'],
  ['embedded-picture', '<image x="100" y="100" width="9" height="9" href="data:image/png;base64,AA=="/>'],
  ['foreign-content', '<foreignObject x="100" y="100" width="9" height="9"><p>Elm</p></foreignObject>'],
  ['length-unreadable', '<rect x="100" y="100" width="12,5" height="9"/>'],
  ['broken-reference', '<use href="#nothing"/>'],
  ['external-reference', '<use href="other.svg#sign"/>'],
  ['unknown-element', '<meshgradient/>'],
  ['path-data-error', '<path d="M100,100 h9 v9 h-9 z M120,100 L oops"/>'],
  ['number-too-large', '<rect x="1e12" y="0" width="9" height="9"/>'],
  ['reference-cycle', '<g id="me"><use href="#me"/></g>'],
  [
    'filter-ignored',
    '<filter id="f"><feGaussianBlur stdDeviation="9"/></filter><rect x="100" y="100" width="20" height="20" filter="url(#f)"/>',
  ],
  [
    'mask-ignored',
    '<mask id="m"><rect x="100" y="100" width="20" height="20" fill="#777"/></mask><rect x="100" y="100" width="20" height="20" mask="url(#m)"/>',
  ],
  ['style-not-taken', '<style>@layer late { rect { display: none } }</style>'],
  ['value-unreadable', '<rect x="100" y="100" width="20" height="20" fill="bleu"/>'],
  ['transform-ignored', '<rect x="100" y="100" width="20" height="20" transform="turn(9)"/>'],
];

const line = (x0: number, y0: number, x1: number, y1: number): readonly (string | number)[] => [
  0,
  'LINE',
  8,
  'CARVE',
  10,
  x0,
  20,
  y0,
  11,
  x1,
  21,
  y1,
];
const box = (x: number, y: number, w: number, h: number): readonly (string | number)[] => [
  ...line(x, y, x + w, y),
  ...line(x + w, y, x + w, y + h),
  ...line(x + w, y + h, x, y + h),
  ...line(x, y + h, x, y),
];
const DXF_SHAPES = [box(10, 10, 60, 6), box(10, 40, 44, 2.05), box(10, 60, 44, 1.2)];
const DXF_UNREAD: readonly (readonly [code: string, entities: readonly (string | number)[]])[] = [
  ['text-not-outlined', [0, 'TEXT', 8, 'CARVE', 10, 100, 20, 100, 40, 20, 1, 'Elm']],
  ['entity-not-taken', [0, '3DFACE', 8, 'CARVE', 10, 100, 20, 100, 11, 120, 21, 100, 12, 120, 22, 120]],
  ['missing-block', [0, 'INSERT', 8, 'CARVE', 2, 'NAMEPLATE', 10, 100, 20, 100]],
  ['broken-spline', [0, 'SPLINE', 8, 'CARVE', 70, 0, 71, 3, 40, 0, 10, 100, 20, 100]],
  ['bad-number', [0, 'CIRCLE', 8, 'CARVE', 10, 1e12, 20, 0, 40, 5]],
  ['loose-line', line(200, 100, 220, 110)],
  ['open-outline', [...line(100, 100, 120, 100), ...line(120, 100, 120, 120), ...line(120, 120, 100, 120)]],
];

async function answer(source: Source) {
  return (await vet(source, JOB)).report;
}

/** Shapes with parts that cannot be read are judged no milder than without them, and never clear. */
async function expectNoMilder(
  drawing: (shapes: readonly number[], unread: readonly number[]) => Source,
  codes: readonly string[],
  shapes: readonly number[],
  unread: readonly number[],
) {
  const whole = await answer(drawing(shapes, unread));
  const without = await answer(drawing(shapes, []));
  expect(RANK[whole.verdict]).toBeGreaterThanOrEqual(RANK[without.verdict]);
  const told = whole.artwork.notices.filter(({ effect }) => effect !== undefined).map(({ code }) => code);
  expect(told.toSorted()).toEqual([...new Set(unread.map((k) => codes[k]))].toSorted());
  if (unread.length > 0) {
    expect(whole.verdict).not.toBe('clear');
  }
}

describe('a drawing of which part cannot be read is never judged milder for it', () => {
  const some = (count: number, least: number) =>
    fc.subarray(
      Array.from({ length: count }, (_, k) => k),
      { minLength: least },
    );

  test('as SVG', async () => {
    const drawing = (shapes: readonly number[], unread: readonly number[]): Source =>
      svg([...shapes.map((k) => SVG_SHAPES[k]), ...unread.map((k) => SVG_UNREAD[k]?.[1])].join(''));
    await fc.assert(
      fc.asyncProperty(some(SVG_SHAPES.length, 1), some(SVG_UNREAD.length, 0), (shapes, unread) =>
        expectNoMilder(
          drawing,
          SVG_UNREAD.map(([code]) => code),
          shapes,
          unread,
        ),
      ),
      cases(15),
    );
    for (let k = 0; k < SVG_UNREAD.length; k++) {
      await expectNoMilder(
        drawing,
        SVG_UNREAD.map(([code]) => code),
        [0],
        [k],
      );
    }
  });

  test('as DXF', async () => {
    const drawing = (shapes: readonly number[], unread: readonly number[]): Source =>
      dxf([
        ...shapes.flatMap((k) => DXF_SHAPES[k] ?? []),
        ...unread.flatMap((k) => DXF_UNREAD[k]?.[1] ?? []),
      ]);
    await fc.assert(
      fc.asyncProperty(some(DXF_SHAPES.length, 1), some(DXF_UNREAD.length, 0), (shapes, unread) =>
        expectNoMilder(
          drawing,
          DXF_UNREAD.map(([code]) => code),
          shapes,
          unread,
        ),
      ),
      cases(15),
    );
    for (let k = 0; k < DXF_UNREAD.length; k++) {
      await expectNoMilder(
        drawing,
        DXF_UNREAD.map(([code]) => code),
        [0],
        [k],
      );
    }
  });
});

test('what is left out, guessed or changed stands right under the verdict of the sheet, in this order', async () => {
  const source = {
    ...svg(''),
    bytes: new TextEncoder().encode(
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 90"><rect width="60" height="6"/><rect y="50" width="9" height="9" transform="turn(9)"/><text y="80">Elm</text></svg>',
    ),
  };
  const html = sheetHtml([await vet(source, JOB)], '0');
  const block = /<\/header>\n<section class="not-drawn"><h2>Not as drawn<\/h2><ul>(.*?)<\/ul>/u.exec(
    html,
  )?.[1];
  const items = [...(block ?? '').matchAll(/<li>(.*?)<\/li>/gu)].map(([, text]) => text);
  expect(items).toHaveLength(3);
  expect(items[0]).toContain('text is not part of the artwork');
  expect(items[1]).toContain('does not state its size');
  expect(items[2]).toContain('transform could not be read');
});
