import { NOTICE_CODES, type Notice, textInUnits } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { type AssumedUnit, DXF_NOTICES, type DxfSingleParams, dxfNotice } from './dxf/dxf-notices.ts';
import { dxfRefusal } from './dxf/dxf-refusals.ts';
import { fileRefusal } from './file-refusals.ts';
import { type LetteringNoticeParams, letteringNotice } from './lettering/lettering-notices.ts';
import { letteringRefusal } from './lettering/lettering-refusals.ts';
import type { Tally } from './notice-book.ts';
import { makeNotice, type NoticeKind } from './notice-kind.ts';
import { SVG_NOTICES, type SvgSingleParams, svgNotice } from './svg/svg-notices.ts';

const TALLY: Tally = { count: 3, details: ['a', 'b'], counts: [2, 1], minMm: 0.0625, maxMm: 25.4 };
const SIZE = { widthMm: 50.8, heightMm: 25.4 };
const UNIT: AssumedUnit = {
  ...SIZE,
  insertUnits: '',
  hasHeader: 'no',
  widthIfInchMm: 1290.32,
  heightIfInchMm: 645.16,
  used: 'mm',
};
const SVG_SINGLES: SvgSingleParams = {
  'artwork-huge': SIZE,
  'artwork-tiny': SIZE,
  'encoding-differs': { declared: 'latin1', read: 'UTF-8' },
  'size-assumed': {
    ...SIZE,
    source: 'width="200"',
    pxPerInch: 96,
    scale: 1,
    ratesPxPerInch: [72, 96],
    widthsMm: [67.7, 50.8],
    heightsMm: [33.9, 25.4],
  },
  'size-differs': { ...SIZE, askedWidthMm: 50.8, askedHeightMm: 50.8 },
};
const DXF_SINGLES: DxfSingleParams = {
  'far-from-origin': { rightMm: -25400, downMm: 12700 },
  'file-damaged': { line: 7 },
  'gap-closed': { count: 2, largestMm: 0.0127, toleranceMm: 0.0254 },
  'loose-line': { count: 1 },
  'missing-end': {},
  'open-outline': { count: 1, toleranceMm: 0.0254, smallestGapMm: 0.254 },
  'unit-missing': UNIT,
  'unit-unknown': UNIT,
  unitless: { ...UNIT, used: 'inches' },
  'unknown-encoding': { codePage: '' },
};
const LETTERING: LetteringNoticeParams = {
  'lettering-cap-height': { ratio: 1.05 },
  'lettering-first-face': { faces: 2 },
  'lettering-invisible': { count: 1 },
  'lettering-joins-apart': { count: 1 },
  'lettering-loose-mark': { count: 1 },
  'lettering-no-shaping': { scripts: ['Arabic'] },
  'lettering-tab': {},
};

function tallied(kinds: Readonly<Record<string, NoticeKind<Tally>>>): Notice[] {
  return Object.entries(kinds).map(([code, kind]) => makeNotice(code, kind, TALLY));
}

const keysOf = <T extends object>(params: T): (keyof T & string)[] =>
  Object.keys(params) as (keyof T & string)[];

const all: readonly Notice[] = [
  ...tallied(SVG_NOTICES),
  ...tallied(DXF_NOTICES),
  ...keysOf(SVG_SINGLES).map((code) => svgNotice(code, SVG_SINGLES[code])),
  ...keysOf(DXF_SINGLES).map((code) => dxfNotice(code, DXF_SINGLES[code])),
  ...keysOf(LETTERING).map((code) => letteringNotice(code, LETTERING[code])),
];

describe('every notice of the readers', () => {
  test.each(all.map((notice) => [notice.code, notice] as const))(
    '%s is said in the unit of the maker',
    (_, { text }) => {
      expect(text.in).not.toMatch(/\d ?mm\b| mm\b|mm²/u);
      expect(text.mm).not.toMatch(/\d ?in\b|in²/u);
      // the same sentence but for its lengths
      const words = (each: string): string => each.replaceAll(/[\d.e-]+|\b(?:mm|in)(?=[\s.,;:)²]|$)/gu, '');
      expect(words(text.in)).toBe(words(text.mm));
    },
  );

  test('that tells a length has it among its parameters', () => {
    // what these compare with is a limit of the reader, the same for every file
    const limits = ['fine-detail', 'nearly-doubled-outline', 'speck'];
    const told = all.filter(({ text, code }) => text.in !== text.mm && !limits.includes(code));
    expect(told.length).toBeGreaterThan(12);
    expect(told.filter(({ params = {} }) => !keysOf(params).some((key) => key.endsWith('Mm')))).toEqual([]);
  });

  test('is listed among all codes', () => {
    const beside = [
      'colour-without-round',
      'setting-without-effect',
      ...['narrowing-kept-whole', 'too-narrow-to-round', 'widening-kept-apart'],
    ];
    expect([...new Set([...all.map(({ code }) => code), ...beside])].toSorted()).toEqual([...NOTICE_CODES]);
  });
});

const REFUSALS = [
  fileRefusal('size-of-no-board', {
    name: 'sign.svg',
    widthMm: 254_000,
    heightMm: 127_000,
    scaleSource: textInUnits('width="10000in"'),
    limitMm: 10_000,
  }),
  fileRefusal('size-of-no-board', {
    name: 'sign.svg',
    widthMm: 0.0254,
    heightMm: 0.0127,
    scaleSource: textInUnits('width="0.001in"'),
    limitMm: 0.1,
  }),
  fileRefusal('nothing-to-cut', {
    name: 'sign.dxf',
    format: 'dxf',
    noticed: [dxfNotice('open-outline', DXF_SINGLES['open-outline']).text],
  }),
  dxfRefusal('too-much-detail', { mostPoints: 1_000_000, toleranceMm: 0.00254 }),
  letteringRefusal('lettering-arc-length', { line: 1, lengthMm: 508, radiusMm: 25.4, enoughMm: 101.6 }),
  letteringRefusal('lettering-arc-radius', { line: 2, radiusMm: 12.7 }),
  letteringRefusal('lettering-size', { cause: 'tracking', widthMm: 254 }),
  letteringRefusal('lettering-stroke', { strokeMm: 6.35, tallMm: 25.4 }),
];

test.each(REFUSALS.map((error) => [error.code, error] as const))(
  'the refusal %s is said in the unit of the maker',
  (_, error) => {
    const { what, remedy } = error.wordsIn('in');
    expect(`${what} ${remedy}`).not.toMatch(/\d ?mm\b/u);
    expect(`${error.message} ${error.remedy}`).toMatch(/\d mm\b/u);
    const inInches = error.inUnit('in');
    expect([inInches.code, inInches.message, inInches.remedy]).toEqual([error.code, what, remedy]);
    expect(error.inUnit('mm')).toBe(error);
  },
);
