import { JobError, type JobInput, settleJob, typedJob } from '@pourproof/job';
import { expect, test } from 'vitest';

const board = 'plain 300x180x20mm maple';

test('a board of polygons takes its blocks one by one', () => {
  const job = settleJob({
    board: 'polygons 300x180x20mm',
    block: [
      'maple 0mm,0mm 150mm,0mm 150mm,180mm 0mm,180mm',
      'walnut/heart grain:45deg dive:10deg 150mm,0mm 300mm,0mm 300mm,180mm',
    ],
  });
  expect(job.board?.blocks).toMatchObject([
    { wood: 'maple', grainDeg: 0, diveDeg: 0, part: null },
    { wood: 'walnut', grainDeg: 45, diveDeg: 10, part: 'heart' },
  ]);
});

test('a board has its thickness from its size, or alone', () => {
  expect(settleJob({ board }).thicknessMm).toBe(20);
  expect(settleJob({ thickness: '3/4in' }).thicknessMm).toBeCloseTo(19.05, 12);
  expect(settleJob({}).thicknessMm).toBeNull();
});

test('clamps and hold-downs are read with their middle and size', () => {
  const { obstacles } = settleJob({
    board,
    keepClear: ['clamp 0mm,90mm 40x25mm', 'hold-down 1in,2in 1.25in'],
  });
  expect(obstacles).toEqual([
    { kind: 'clamp', atMm: [0, 90], sizeMm: [40, 25] },
    { kind: 'hold-down', atMm: [25.4, 50.8], diameterMm: 31.75 },
  ]);
});

test('a hole or groove may be only so deep from the back', () => {
  const typed = ['hole 20mm,30mm 8mm back:12mm', 'groove 0mm,10mm 50mm,10mm 6mm back:1/4in'];
  const { obstacles } = settleJob({ board, keepClear: typed });
  expect(obstacles).toEqual([
    { kind: 'hole', atMm: [20, 30], diameterMm: 8, fromBackMm: 12 },
    { kind: 'groove', fromMm: [0, 10], toMm: [50, 10], widthMm: 6, fromBackMm: 6.35 },
  ]);
  expect(settleJob({ board, keepClear: obstacles }).obstacles).toEqual(obstacles);
  expect(typedJob({ keepClear: obstacles }).keepClear).toEqual([
    'hole 20mm,30mm 8mm back:12mm',
    'groove 0mm,10mm 50mm,10mm 6mm back:6.35mm',
  ]);
  expect(() => settleJob({ board, keepClear: ['hole 20mm,30mm 8mm back:0mm'] })).toThrow('above 0');
  expect(() => settleJob({ board, keepClear: ['clamp 20mm,30mm 8x8mm back:2mm'] })).toThrow();
});

test.each<[JobInput, string]>([
  [{ board, wood: 'maple' }, 'may disagree'],
  [{ board, grain: '0deg' }, 'leave grain out. To turn the artwork'],
  [{ board, block: ['maple 0mm,0mm 1mm,0mm 1mm,1mm'] }, 'polygons'],
  [{ board: 'polygons 300x180x20mm' }, 'at least one block'],
  [{ board: 'plain 300x180x20mm mapel' }, 'mapel'],
  [{ board, depth: '20mm' }, 'only 20 mm thick'],
  [{ margin: '10mm' }, 'needs a board'],
  [
    { reading: ['0mm,0mm 20mm', '1mm,1mm 20mm', '2mm,2mm 20mm', '3mm,3mm 20mm', '4mm,4mm 20mm'] },
    'needs a board',
  ],
  [{ board, reading: ['0mm,0mm 20mm'] }, '5 to 9'],
  [{ board, reading: ['0mm,0mm', '1mm,1mm', '2mm,2mm', '3mm,3mm', '4mm,4mm'] }, 'a place and a height'],
  [{ board, keepClear: ['hole 20mm 8mm'] }, 'place'],
  [{ board, keepClear: ['knot 20mm,30mm 8mm'] }, 'hole 20mm,30mm 8mm'],
  [{ board, keepClear: ['clamp 20mm,90mm 40mm'] }, 'clamp 20mm,90mm 40x25mm'],
  [{ board, keepClear: ['clamp 20mm,90mm 0x25mm'] }, 'above 0'],
  [{ board, thickness: '20mm' }, 'leave thickness out'],
  [{ thickness: '3mm', depth: '3mm' }, 'only 3 mm thick'],
  [{ thickness: '0mm' }, 'above 0'],
  [{ board, place: '20mm' }, 'place'],
])('%j is refused with the way out', (job, part) => {
  expect(() => settleJob(job)).toThrow(JobError);
  expect(() => settleJob(job)).toThrow(part);
});
