import { defaultMaterials } from '@pourproof/materials';
import type { Drawing } from '@pourproof/plane';
import { prove, settleJob } from '@pourproof/proof';
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

test.each([1, 2])('the seal that a real proof offers at %d coats becomes the job’s', (coats) => {
  const bar = { coords: Float64Array.of(0, 0, 30, 0, 30, 8, 0, 8), ringEnds: Uint32Array.of(4) };
  const drawing: Drawing = {
    format: 'svg',
    scaleSource: 'made by a test in mm',
    toleranceMm: 0.005,
    notices: [],
    shapes: [{ region: { ...bar, fillRule: 'nonzero' }, layer: '', colour: '#000000', source: 'bar' }],
  };
  const job = { wood: 'maple', seal: 'none', coats } as const;
  const { findings } = prove(drawing, 'bar', settleJob(job)).report;
  const option = findings
    .find((finding) => finding.code === 'high-bleed-wall')
    ?.fix.options.find((each) => each.do === 'change-seal');
  expect(option).toBeDefined();
  const part = change(option!, job);
  expect(part).toMatchObject({ coats });
  const after = prove(drawing, 'bar', settleJob(job, part!)).report.findings;
  expect(after.map((finding) => finding.code)).not.toContain('high-bleed-wall');
});

test('work on the drawing itself changes no job', () => {
  expect(change({ do: 'widen', value: 0.2, unit: 'mm', clears: true })).toBeUndefined();
  expect(
    change({ do: 'change-seal', value: 'two coats of honey', unit: 'seal', clears: true }),
  ).toBeUndefined();
});
