import { expect, test } from 'vitest';
import { SETTING_KEYS } from '../settings/table.ts';
import { JobError } from './job-error.ts';
import type { JobErrorCode, JobFaults } from './job-faults.ts';

const FORM = { shown: 'xx' };
const BIT = { shown: 'flat:xx', value: 3, limit: 2 };
const SHAPE = {
  file: null,
  schema: 'pourproof/job@1',
  issues: [{ code: 'wrong-type', place: 'sealHours', words: 'must be text between quotes' }],
} as const;

/** One fault of every kind: the types ask for what is missing. */
const FAULTS: {
  readonly [Code in JobErrorCode]: readonly [key: string | null, parameters: JobFaults[Code]];
} = {
  'unknown-key': ['sealHours', SHAPE],
  'wrong-type': ['sealHours', SHAPE],
  'wrong-value': ['sealHours', SHAPE],
  'empty-list': ['sealHours', SHAPE],
  missing: ['sealHours', SHAPE],
  'not-a-measure': ['depth', { quantity: 'length', reason: '"3" has no unit. Type 3mm or 3in.' }],
  'out-of-range': ['sealHours', { shown: '-1 h', range: 'above 0', why: '', example: '24h' }],
  'unknown-material': ['wood', { id: 'mapel', known: ['maple'], near: ['maple'] }],
  'not-a-time': ['start', FORM],
  'not-an-arc': ['arc', FORM],
  'arc-without-radius': ['arc', FORM],
  'arc-too-wide': ['arc', { ...FORM, limitM: 1000 }],
  'not-an-axis': ['axis', FORM],
  'not-a-place': ['place', FORM],
  'not-a-reading': ['readings', FORM],
  'not-an-obstacle': ['obstacles', FORM],
  'not-a-block': ['block', FORM],
  'block-dive': ['block', FORM],
  'board-pattern': ['board', { pattern: 'x', known: ['plain'] }],
  'board-size': ['board', FORM],
  'board-length': ['board', { name: 'width', shown: '0 mm' }],
  'board-part': ['board', { word: 'hart', wood: 'maple' }],
  'board-without-wood': ['board', FORM],
  'board-blocks': ['board', { count: 9999, max: 500 }],
  'board-stripe-width': ['board', { wood: 'maple' }],
  'board-stripe-room': ['board', { wood: 'maple' }],
  'board-needs-length': ['board', { name: 'square', example: 'square:40mm' }],
  'board-stray-length': ['board', { name: 'square', pattern: 'plain' }],
  'board-stray-wood': ['board', { wood: 'maple' }],
  'board-and-key': ['thickness', { isThickness: true }],
  'needs-board': ['block', {}],
  'needs-block': ['board', {}],
  'block-without-polygons': ['block', {}],
  'deeper-than-board': ['depth', { depth: '30 mm', thickness: '20 mm' }],
  'bit-without-kind': ['bit', { ...FORM, meant: ['flat:3mm'] }],
  'bit-kind': ['bit', { ...FORM, kind: 'x', kinds: ['flat'] }],
  'bit-incomplete': ['bit', FORM],
  'bit-parts': ['bit', FORM],
  'bit-word': ['bit', { ...FORM, part: 'x', word: 'length', example: 'length 2mm' }],
  'bit-size': ['bit', { ...BIT, least: 0.05, most: 300 }],
  'bit-below-zero': ['bit', { ...BIT, word: 'tip' }],
  'bit-angle': ['bit', BIT],
  'bit-corner': ['bit', BIT],
  'bit-tip': ['bit', BIT],
  'bit-two-tips': ['bit', FORM],
  'bit-tip-radius': ['bit', BIT],
  'bit-taper': ['bit', BIT],
  'bit-length': ['bit', BIT],
  'profile-pair': ['bit', { ...FORM, pair: '3mm' }],
  'profile-points': ['bit', FORM],
  'profile-falls': ['bit', { ...FORM, diameterMm: 1, heightMm: 2 }],
  'profile-empty': ['bit', FORM],
  'profile-needle': ['bit', { ...FORM, heightMm: 2 }],
  'not-colour-pairs': ['colourOf', { ...FORM, known: ['black'] }],
  'not-rounds': ['rounds', FORM],
  'round-twice': ['rounds', { name: 'red' }],
  'colour-not-drawn': ['rounds', { name: 'red', known: ['blue'], near: null }],
  'two-sizes': [null, { keys: ['width', 'scale'] }],
  'two-artworks': [null, { file: null }],
  'two-coupons': ['coupons', {}],
  'text-empty': ['text', {}],
  'text-for-file': ['text', {}],
  'artwork-for-text': ['artwork', {}],
  'lettering-size': ['scale', { scale: 2, instead: '30mm' }],
  'lettering-two-sizes': ['capHeight', {}],
  'lettering-without-size': ['capHeight', {}],
  'lettering-without-font': ['font', {}],
  'font-and-single-line': ['font', {}],
  'not-for-drawing': ['fileUnit', {}],
  'coupon-wood': ['coupons, row 2', { row: 2 }],
  'coupon-hours': ['coupons, row 2', { row: 2, shown: '-1h' }],
  'coupon-reading': ['coupons, row 2, slot 1', { shown: 'x', classes: ['none'] }],
  'coupon-none': ['coupons, row 2, slot 1', FORM],
  'coupon-zero': ['coupons, row 2, slot 1', {}],
  'coupon-ends': ['coupons, row 2, slot 1', { from: '2mm', to: '1mm' }],
  'coupon-rule': ['coupons, row 2', { ...FORM, maxMm: 5 }],
  'coupon-length': ['coupons, row 2, slot 1', { ...FORM, maxMm: 500 }],
  'bit-too-short': [null, { depth: '9 mm', bit: '3 mm flat', length: '6 mm' }],
  'calendar-without-start': ['start', {}],
  'unknown-finding': ['seenTo', { typed: 'x', near: 'oil-in-wood' }],
  'not-to-be-seen-to': [
    'seenTo',
    { finding: 'sands-through', settings: ['depth'], isDrawn: true, isTested: false },
  ],
  'not-json': [null, { file: 'job.json', reason: 'line 3' }],
  'unknown-file': [null, { file: 'x.json' }],
  'two-files': [null, { kind: 'job files' }],
  'materials-entry': [
    null,
    { file: 'materials.json', reason: 'woods.x is a new id.', remedy: 'Add "like".' },
  ],
  'shop-entry': [
    null,
    { file: 'shop.json', reason: 'bits, row 2: "x" is no bit.', remedy: 'Write it like "flat:1/8in".' },
  ],
};

const errors = Object.entries(FAULTS).map(
  ([code, [key, parameters]]) =>
    [code, new JobError(code as JobErrorCode, key, parameters as never)] as const,
);

test.each(errors)('%s says what is wrong, where, and what to do', (_, error) => {
  const { what, remedy } = error.wordsIn((key) => `⟦${key}⟧`);
  expect(`${what} ${remedy}`).not.toMatch(/undefined|NaN|\[object/u);
  expect(what).toMatch(/[.?:]$/u);
  expect(remedy).toMatch(/^[A-Z].*[.?]$/su);
  // the place is named, or the file that it is in
  const { key } = error;
  expect(what).toMatch(key === null ? /⟦|\.json|Two |job/u : /⟦|the job|lettering|pattern|calendar/u);
});

test.each(errors)('%s names settings only as its reader does', (_, error) => {
  const { what, remedy } = error.wordsIn((key) => `⟦${key}⟧`);
  const bare = `${what} ${remedy}`.replaceAll(/⟦\w+⟧/gu, '');
  for (const key of SETTING_KEYS) {
    // a name of two words is none of English; one of a single word is a setting where a value in quotes follows it
    const written = /[A-Z]/u.test(key) ? new RegExp(`\\b${key}\\b`, 'u') : new RegExp(`\\b${key} "`, 'u');
    expect(bare).not.toMatch(written);
  }
});
