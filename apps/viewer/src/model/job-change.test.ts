import { defaultMaterials } from '@pourproof/materials';
import { expect, test } from 'vitest';
import { jobChange } from './job-change.ts';

const change = (
  option: Parameters<typeof jobChange>[0],
  job: Parameters<typeof jobChange>[1] = {},
  grainDeg = 0,
) => jobChange(option, job, grainDeg, defaultMaterials)?.part;

test('a bit is added after those at hand', () => {
  const option = { do: 'use-bit', value: 1, unit: 'mm', clears: true } as const;
  expect(change(option, { bit: ['flat:1/8in'] })).toEqual({ bit: ['flat:1/8in', 'flat:1mm'] });
});

test('scaling multiplies with the scale that the artwork has', () => {
  const option = { do: 'scale', value: 1.2, unit: '×', clears: true } as const;
  expect(change(option, { scale: 1.5 })).toEqual({ scale: 1.8 });
});

test('turning the artwork counter-clockwise turns the fibres clockwise under it', () => {
  const option = { do: 'turn-grain', value: 30, unit: 'deg, 40 % less', clears: false } as const;
  expect(change(option, {}, 45)).toEqual({ grain: '15deg' });
  expect(change(option, {}, 10)).toEqual({ grain: '160deg' });
});

test('each seal is found by its words, with the coats of the job', () => {
  for (const [seal, { name, readyHours }] of Object.entries(defaultMaterials.sealers)) {
    const option = {
      do: 'change-seal',
      value: `2 coat of ${name}, left ${readyHours.high} h`,
      unit: 'seal',
      clears: true,
    } as const;
    expect(change(option, { coats: 2 })).toEqual({ seal, coats: 2, sealHours: `${readyHours.high}h` });
  }
});

test('work on the drawing itself changes no job', () => {
  expect(change({ do: 'widen', value: 0.2, unit: 'mm', clears: true })).toBeUndefined();
  expect(
    change({ do: 'change-seal', value: 'two coats of honey', unit: 'seal', clears: true }),
  ).toBeUndefined();
});
