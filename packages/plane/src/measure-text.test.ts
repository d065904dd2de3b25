import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatArea,
  formatLength,
  formatVolume,
  MeasureError,
  parseLengthMm,
  parseMeasure,
  type Quantity,
} from './measure-text.ts';

describe('lengths are read as makers type them', () => {
  test.each([
    ['1/8in', 3.175],
    ['3/16"', 4.7625],
    ['.125in', 3.175],
    ['1-1/2in', 38.1],
    ['1 1/2 in', 38.1],
    ['3.2mm', 3.2],
    ['3.2 MM', 3.2],
    ['3,2mm', 3.2],
    [',5in', 12.7],
    ['0,125in', 3.175],
    ['2cm', 20],
    ['-1/4in', -6.35],
    ['12pt', 12 * (25.4 / 72)],
    ['1pc', 25.4 / 6],
    ['5 thou', 0.127],
    ['1e-2mm', 0.01],
    ['0', 0],
  ])('%s is %d mm', (text, mm) => {
    expect(parseLengthMm(text)).toBeCloseTo(mm, 12);
  });
});

test.each([
  ['80in/min', 'speed', 2032],
  ['2 fl oz', 'volume', 59.147059125],
  ['12.5 g', 'mass', 12.5],
  ['1/2oz', 'mass', 14.1747615625],
  ['70F', 'temperature', 190 / 9],
  ['90min', 'time', 1.5],
  ['30°', 'angle', 30],
] as const)('%s as %s is %d', (text, quantity, value) => {
  expect(parseMeasure(text, quantity).value).toBeCloseTo(value, 12);
});

const SIZES: Readonly<Record<Exclude<Quantity, 'temperature'>, Readonly<Record<string, number>>>> = {
  length: {
    ...{ mm: 1, cm: 10, m: 1000, um: 0.001, µm: 0.001 },
    ...{ in: 25.4, inch: 25.4, inches: 25.4, '"': 25.4, '″': 25.4, '”': 25.4 },
    ...{ thou: 0.0254, mil: 0.0254, ft: 304.8, pt: 25.4 / 72, pc: 25.4 / 6 },
  },
  angle: { deg: 1, '°': 1, rad: 180 / Math.PI },
  volume: { ml: 1, l: 1000, cm3: 1, mm3: 0.001, 'fl oz': 29.5735295625, floz: 29.5735295625 },
  mass: { g: 1, mg: 0.001, kg: 1000, oz: 28.349523125, lb: 453.59237 },
  speed: { 'mm/min': 1, 'mm/s': 60, 'in/min': 25.4, ipm: 25.4 },
  time: { h: 1, hr: 1, hour: 1, hours: 1, min: 1 / 60, s: 1 / 3600, d: 24, day: 24, days: 24 },
};

test.each(Object.keys(SIZES) as (keyof typeof SIZES)[])('every unit of a %s has its size', (quantity) => {
  for (const [unit, size] of Object.entries(SIZES[quantity])) {
    expect(parseMeasure(`2.125${unit}`, quantity).value, unit).toBeCloseTo(2.125 * size, 9);
  }
});

test.each([
  ['0C', 0, 'C'],
  ['32F', 0, 'F'],
  ['21.5 °C', 21.5, 'C'],
  ['-40°F', -40, 'F'],
] as const)('%s is %d °C, typed in %s', (text, value, unit) => {
  const read = parseMeasure(text, 'temperature');
  expect(read.value).toBeCloseTo(value, 12);
  expect(read.unit).toBe(unit);
});

test.each([
  ['length', '7mm or 7in'],
  ['angle', '7deg or 7rad'],
  ['volume', '7ml or 7 fl oz'],
  ['mass', '7g or 7oz'],
  ['speed', '7mm/min or 7in/min'],
  ['time', '7h or 7min'],
  ['temperature', '7C or 7F'],
] as const)('a %s without a unit may be %s', (quantity, readings) => {
  expect(() => parseMeasure('7', quantity)).toThrow(`"7" has no unit. Did you mean ${readings}?`);
});

describe('what can be misread is refused with what to type', () => {
  test('a bare number is answered with its two readings', () => {
    expect(() => parseLengthMm('3')).toThrow('"3" has no unit. Did you mean 3mm or 3in?');
    expect(() => parseMeasure('1/2in', 'angle')).toThrow('"1/2in" is not an angle');
    expect(() => parseMeasure('30deg', 'length')).toThrow('"30deg" is not a length');
  });

  test('a comma that may as well part thousands is answered with its two readings', () => {
    expect(() => parseLengthMm('1,250mm')).toThrow('Did you mean 1.250mm or 1250mm?');
    expect(() => parseLengthMm('12,500 mm')).toThrow('Did you mean 12.500 mm or 12500 mm?');
  });

  test.each([
    '',
    'in',
    '3 apples',
    '1/0in',
    '1//8in',
    '--3mm',
    '3,,2mm',
    '3,2,1mm',
    '1.2,5mm',
    'NaNmm',
    'Infinitymm',
    '1e400mm',
    '1e308m',
  ])('%j is refused', (text) => {
    expect(() => parseLengthMm(text)).toThrow(MeasureError);
  });

  test('a number beyond all numbers is called that, whether typed so or made so by its unit', () => {
    for (const text of ['1/0in', '1e400mm', '1e308m']) {
      expect(() => parseLengthMm(text)).toThrow(`"${text}" is not a length: the number is not finite.`);
    }
  });
});

test('a printed length reads back to what was printed', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 2000, noNaN: true }), fc.constantFrom('mm', 'in'), (mm, unit) => {
      const half = unit === 'mm' ? 0.005 : 0.0005 * 25.4;
      expect(Math.abs(parseLengthMm(formatLength(mm, unit)) - mm)).toBeLessThanOrEqual(half * (1 + 1e-9));
    }),
  );
});

test('a half of the last digit goes up, as by hand', () => {
  expect([1.575, 2.675, 0.125, 1.005].map((mm) => formatLength(mm, 'mm'))).toEqual([
    '1.58 mm',
    '2.68 mm',
    '0.13 mm',
    '1.01 mm',
  ]);
});

test('areas and volumes print in the unit asked for', () => {
  expect(formatArea(645.16, 'in')).toBe('1.000 in²');
  expect(formatArea(77.83676, 'mm')).toBe('77.8 mm²');
  expect(formatVolume(8510, 'mm')).toBe('8.51 ml');
  expect(formatVolume(29573.5295625, 'in')).toBe('1.000 fl oz');
  expect(formatLength(-1e-9, 'mm')).toBe('0.00 mm');
});
