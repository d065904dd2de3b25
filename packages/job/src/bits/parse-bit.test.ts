import { describe, expect, it } from 'vitest';
import { JobError } from '../refusals/job-error.ts';
import { bitName, bitText } from './bit.ts';
import { BIT_FORMS } from './bit-forms.ts';
import { parseBit } from './parse-bit.ts';

describe('parseBit', () => {
  it.each([
    ['flat:1/8in', { kind: 'flat', diameterMm: 3.175, cuttingLengthMm: null }],
    ['flat:3mm:length 12mm', { kind: 'flat', diameterMm: 3, cuttingLengthMm: 12 }],
    ['ball:1/16in', { kind: 'ball', diameterMm: 1.5875, cuttingLengthMm: null }],
    ['bull:6mm:corner 1mm', { kind: 'bull', diameterMm: 6, cornerMm: 1, cuttingLengthMm: null }],
    [
      'vee:60deg:12mm',
      { kind: 'vee', angleDeg: 60, diameterMm: 12, tipMm: 0, tipRadiusMm: 0, cuttingLengthMm: null },
    ],
    [
      'vee:90deg:12mm:tip 0.2mm:length 5mm',
      { kind: 'vee', angleDeg: 90, diameterMm: 12, tipMm: 0.2, tipRadiusMm: 0, cuttingLengthMm: 5 },
    ],
    [
      'vee:90deg:12mm:tip radius 0.2mm',
      { kind: 'vee', angleDeg: 90, diameterMm: 12, tipMm: 0, tipRadiusMm: 0.2, cuttingLengthMm: null },
    ],
    [
      'taper:0.5mm:5deg:6mm',
      { kind: 'taper', tipDiameterMm: 0.5, sideDeg: 5, diameterMm: 6, cuttingLengthMm: null },
    ],
    [
      'profile: 1mm@0mm, 3mm@2mm, 3mm@10mm',
      {
        kind: 'profile',
        points: [
          { heightMm: 0, diameterMm: 1 },
          { heightMm: 2, diameterMm: 3 },
          { heightMm: 10, diameterMm: 3 },
        ],
        cuttingLengthMm: null,
      },
    ],
  ])('reads %s', (text, bit) => {
    expect(parseBit(text)).toEqual(bit);
  });

  it('reads every form that it offers in messages', () => {
    for (const form of BIT_FORMS) {
      expect(() => parseBit(form)).not.toThrow();
    }
  });

  it.each([
    ['drill:3mm', /no known kind: "drill".*kinds: flat, ball, bull, vee, taper, profile/u],
    ['3mm', /does not say its kind. Did you mean flat:3mm/u],
    ['flat', /not complete/u],
    ['flat:3mm:4mm', /more parts/u],
    ['flat:0mm', /Diameters lie between 0\.05 and 300 mm/u],
    ['ball:0.001mm', /has a size of 0\.001 mm/u],
    ['taper:1e-9mm:5deg:6mm', /Diameters lie/u],
    ['profile:0mm@0mm,1e9mm@2mm', /Diameters lie/u],
    ['bull:6mm:corner 4mm', /at most half its diameter, 3 mm/u],
    ['bull:6mm:1mm', /is not a corner/u],
    ['vee:180deg:12mm', /between 0 and 180/u],
    ['vee:60deg:12mm:tip 12mm', /as wide as the bit or wider/u],
    ['vee:60deg:12mm:tip radius 7mm', /no flank is left/u],
    ['vee:60deg:12mm:blunt', /is not a tip/u],
    ['taper:8mm:5deg:6mm', /wider than the bit itself/u],
    ['profile:1mm@0mm', /two points or more/u],
    ['profile:1mm@1mm,2mm@2mm', /first at height 0mm/u],
    ['profile:2mm@0mm,1mm@2mm', /falls back at 1 mm @ 2 mm/u],
    ['profile:2mm,1mm', /not a diameter at a height/u],
    ['profile:0mm@0mm,0mm@2mm', /has no body/u],
    ['profile:0mm@0mm,0mm@1mm,3mm@2mm', /no width up to 1 mm/u],
    ['flat:3mm:length 0mm', /cutting edge of 0 mm/u],
  ])('refuses %s with a way out', (text, message) => {
    expect(() => parseBit(text)).toThrow(JobError);
    expect(() => parseBit(text)).toThrow(message);
  });
});

describe('bitText', () => {
  it.each([
    ['flat:1/8in', 'in', '1/8 in flat bit'],
    ['ball:1.5mm', 'mm', '1.5 mm ball bit'],
    ['bull:6mm:corner 1mm', 'mm', '6 mm bull-nose bit, corner 1 mm'],
    ['vee:60deg:12mm:tip 0.1mm', 'mm', '60° vee bit, tip 0.1 mm'],
    ['vee:60deg:12mm:tip radius 0.2mm', 'mm', '60° vee bit, tip radius 0.2 mm'],
    ['taper:0.5mm:5deg:6mm', 'mm', '0.5 mm tapered bit'],
    ['profile:1mm@0mm,3mm@2mm', 'mm', '3 mm profile bit'],
  ] as const)('names %s', (text, unit, words) => {
    expect(bitText(parseBit(text), unit)).toBe(words);
    expect(bitName(parseBit(text), unit)).toBe(words.replace(' bit', ''));
  });
});

it.each(['toString', 'constructor:3mm', '__proto__:1/8in'])(
  '%s is no kind, though every object has it',
  (text) => {
    expect(() => parseBit(text)).toThrow(/is of no known kind: "\w+"\. Write it like flat:1\/8in/u);
  },
);

it('a length without its quotes says that it needs them', () => {
  expect(() => parseBit('flat:1/8in:length')).toThrow(
    'bit "flat:1/8in:length": "length" is not a length. Write it between quotes, with :length 12mm in it.',
  );
});
