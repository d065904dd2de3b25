import { settleJob, type TypedJob } from '@pourproof/job';
import { defaultMaterials } from '@pourproof/materials';
import type { Drawing } from '@pourproof/plane';
import { vetDrawing } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { changedJob } from './changed-job.ts';
import { jobChange } from './job-change.ts';

const change = (option: Parameters<typeof jobChange>[0], job: TypedJob = {}, grainDeg = 0) =>
  jobChange(option, {
    job,
    grainDeg,
    materials: defaultMaterials,
    isLettering: false,
  })?.part;

test('a bit is added after those at hand', () => {
  const option = { do: 'use-bit', kind: 'flat', diameterMm: 1, clears: true } as const;
  expect(change(option, { bit: ['flat:1/8in'] })).toEqual({ bit: ['flat:1/8in', 'flat:1mm'] });
});

test('scaling multiplies with the scale that the artwork has', () => {
  const option = { do: 'scale', factor: 1.2, clears: true } as const;
  expect(change(option, { scale: 1.5 })).toEqual({ scale: 1.8 });
});

test('scaling keeps the key and the unit that the size was typed in', () => {
  const option = { do: 'scale', factor: 1.2, clears: true } as const;
  expect(change(option, { width: '100mm' })).toEqual({ width: '120mm' });
  expect(change(option, { height: '1-1/2in' })).toEqual({ height: '1.8in' });
});

test('lettering is scaled by its capitals, the only size besides a width that it has', () => {
  const option = { do: 'scale', factor: 1.2, clears: true } as const;
  const on = (job: TypedJob) =>
    jobChange(option, {
      job,
      grainDeg: 0,
      materials: defaultMaterials,
      isLettering: true,
    })?.part;
  expect(on({ capHeight: '20mm' })).toEqual({ capHeight: '24mm' });
  expect(on({})).toEqual({ capHeight: '18mm' });
  expect(on({ width: '4in' })).toEqual({ width: '4.8in' });
});

test('on a described board the artwork is turned, because the board keeps its fibres', () => {
  const option = { do: 'turn', deg: 30, sparedPct: 40, clears: false } as const;
  const board = 'plain 300x180x20mm walnut';
  expect(change(option, { board, turn: '-10deg' }, 10)).toEqual({ turn: '20deg' });
  expect(change(option, { board }, 0)).toEqual({ turn: '30deg' });
});

test('turning the artwork counter-clockwise turns the fibres clockwise under it', () => {
  const option = { do: 'turn', deg: 30, sparedPct: 40, clears: false } as const;
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
  const { findings } = vetDrawing(drawing, 'bar', settleJob(job)).report;
  const option = findings
    .find((finding) => finding.code === 'high-bleed-wall')
    ?.fix.options.find((each) => each.do === 'change-seal');
  expect(option).toBeDefined();
  const part = change(option!, job);
  expect(part).toMatchObject({ coats });
  const after = vetDrawing(drawing, 'bar', settleJob(changedJob(job, part!))).report.findings;
  expect(after.map((finding) => finding.code)).not.toContain('high-bleed-wall');
});

/** A pocket of 40 × 20 mm, or a stroke as long and of another width. */
function pocket(widthMm: number): Drawing {
  const ring = { coords: Float64Array.of(0, 0, 40, 0, 40, widthMm, 0, widthMm), ringEnds: Uint32Array.of(4) };
  const shape = {
    region: { ...ring, fillRule: 'nonzero' as const },
    layer: '',
    colour: '#000000',
    source: 'x',
  };
  return {
    format: 'svg',
    scaleSource: 'made by a test in mm',
    toleranceMm: 0.005,
    notices: [],
    shapes: [shape],
  };
}

const CALM: TypedJob = {
  bit: ['flat:0.5mm'],
  wood: 'walnut',
  seal: 'epoxy',
  coats: 1,
  sealHours: '24h',
  boards: 10,
};
test.each<readonly [doing: string, code: string, widthMm: number, job: TypedJob]>([
  ['wait', 'seal-not-cured', 20, { sealHours: '1h' }],
  ['level-less', 'sands-through', 20, { depth: '1.5mm', level: '1mm' }],
  ['deepen', 'sands-through', 20, { depth: '1.5mm', level: '1mm' }],
  ['fewer-coats', 'ghost-stroke', 1.45, { depth: '3mm', coats: 3 }],
  ['use-scale', 'batch-too-small', 15, { boards: 1, weigh: 'tenth' }],
  ['use-resin', 'pour-too-deep', 20, { depth: '12mm', level: '0.2mm' }],
])('pressing "%s" clears a real finding of %s', (doing, code, widthMm, over) => {
  const job = { ...CALM, ...over };
  const { findings } = vetDrawing(pocket(widthMm), 'x', settleJob(job)).report;
  const finding = findings.find((each) => each.code === code);
  const option = finding?.fix.options.find((each) => each.do === doing);
  expect(option?.clears).toBe(true);
  const thing = { job, grainDeg: 0, materials: defaultMaterials, isLettering: false };
  const part = jobChange(option!, thing)?.part;
  const after = vetDrawing(pocket(widthMm), 'x', settleJob(changedJob(job, part!))).report.findings;
  expect(after.map((each) => each.code)).not.toContain(code);
});

test('another V in the place of the one at hand is left to the maker', () => {
  expect(change({ do: 'use-vee', angleDeg: 60, diameterMm: 14, clears: true })).toBeUndefined();
  expect(change({ do: 'use-tip', tipMm: 0.1, clears: true })).toBeUndefined();
});

test('work on the drawing itself changes no job', () => {
  expect(change({ do: 'widen', what: 'stroke', byMm: 0.2, clears: true })).toBeUndefined();
});
