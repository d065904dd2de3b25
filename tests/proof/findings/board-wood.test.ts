import { type JobInput, settleJob } from '@pourproof/job';
import { applyFix, type Finding, type FindingCode, judgeDrawing } from '@pourproof/proof';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf, waysOut } from '../../support/fix-of.ts';

const CALM: JobInput = {
  bit: ['flat:2mm'],
  depth: '3mm',
  seal: 'epoxy',
  sealHours: '24h',
  boards: 10,
  units: 'mm',
};
const gravity = (finding: Finding | undefined): number =>
  finding === undefined ? 0 : { note: 1, caution: 2, stop: 3 }[finding.severity];
const find = (
  code: FindingCode,
  rings: readonly (readonly number[])[],
  job: JobInput,
  turnDeg = 0,
): Finding | undefined =>
  judgeDrawing(drawingOf(rings, { turnDeg }), 'test', settleJob({ ...CALM, ...job })).report.findings.find(
    (finding) => finding.code === code,
  );
const circle = (x: number, y: number, radius: number): number[] =>
  Array.from({ length: 96 }, (_, k) => (2 * Math.PI * k) / 96).flatMap((angle) => [
    x + radius * Math.cos(angle),
    y + radius * Math.sin(angle),
  ]);
const SQUARE = [rectangle(0, 0, 40, 40)];

describe('floor-too-thin', () => {
  const floor = (thickness: number, depth: number) =>
    find('floor-too-thin', SQUARE, { board: `plain 100x100x${thickness}mm maple`, depth: `${depth}mm` });

  test('a stop below 1.5 mm, a caution below 3 mm or a third of the board, silence above', () => {
    expect(floor(9, 7.6)?.severity).toBe('stop');
    expect(floor(9, 7.5)?.severity).toBe('caution');
    expect(floor(9, 6)).toBeUndefined();
    expect(floor(15, 10.1)?.limit).toEqual({ value: 5, quantity: 'height', unit: 'mm' });
    expect(floor(15, 10)).toBeUndefined();
    expect(find('floor-too-thin', SQUARE, { wood: 'maple', depth: '8mm' })).toBeUndefined();
  });

  test('the shallower cut that it offers clears it, and so does the thicker board', () => {
    const job = { board: 'plain 100x100x10mm maple', depth: '7.5mm' };
    const finding = find('floor-too-thin', SQUARE, job);
    const fix = fixOf(finding, 'cut-shallower');
    expect(fix?.toMm).toBe(6.66);
    const changed = fix === undefined ? null : applyFix({ ...CALM, ...job }, fix);
    expect(find('floor-too-thin', SQUARE, changed ?? job)).toBeUndefined();
    const thick = fixOf(finding, 'thicker-board')?.thicknessMm ?? 0;
    expect(thick).toBe(11.25);
    expect(floor(thick, 7.5)).toBeUndefined();
    expect(floor(thick - 0.01, 7.5)).toBeDefined();
    expect(waysOut(finding, 'mm')).toEqual([
      'Cut no deeper than 6.66 mm.',
      'Use a board at least 11.25 mm thick.',
    ]);
  });

  test('a thinner board or a deeper cut never looks better', () => {
    const size = fc.integer({ min: 20, max: 120 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(size, size, size, (a, b, depth) => {
        const [thin, thick] = a < b ? [a, b] : [b, a];
        fc.pre(depth < thin);
        expect(gravity(floor(thin, depth))).toBeGreaterThanOrEqual(gravity(floor(thick, depth)));
      }),
      { numRuns: 25 },
    );
  });
});

describe('rim-too-thin', () => {
  const rim = (board: string, job: JobInput = {}, rings = SQUARE) =>
    find('rim-too-thin', rings, { board, ...job });

  test('at an end-grain edge twice the depth, at a long-grain edge the depth', () => {
    // fibres of a plain board run along x: left and right are end grain
    expect(rim('plain 52x100x20mm maple')?.severity).toBe('note');
    const end = rim('plain 51.8x100x20mm maple');
    expect(end?.severity).toBe('caution');
    expect(end?.measured.value).toBeCloseTo(5.9, 6);
    expect(end?.limit.value).toBe(6);
    expect(end?.acrossGrain).toBe(true);
    expect(end?.where).toHaveLength(2);
    expect(rim('plain 100x46x20mm maple')?.severity).toBe('note');
    const long = rim('plain 100x45.8x20mm maple');
    expect(long?.severity).toBe('caution');
    expect(long?.limit.value).toBe(3);
    expect(long?.acrossGrain).toBe(false);
  });

  test('enough for the depth but less than the habit is a note, and the habit is silent', () => {
    expect(rim('plain 59.8x100x20mm maple')?.limit.value).toBe(10);
    expect(rim('plain 60x100x20mm maple')).toBeUndefined();
    expect(rim('plain 100x49.8x20mm maple')).toMatchObject({ severity: 'note', limit: { value: 5 } });
    expect(rim('plain 100x50x20mm maple')).toBeUndefined();
  });

  test('a stop where the rim would break like a wall', () => {
    expect(rim('plain 42.8x100x20mm maple')?.severity).toBe('stop');
    expect(rim('plain 43x100x20mm maple')?.severity).toBe('caution');
    expect(rim('plain 100x41.8x20mm maple')?.severity).toBe('stop');
    expect(rim('plain 100x42x20mm maple')?.severity).toBe('caution');
  });

  test('the fibres are those of the block at the rim, and turning the artwork turns nothing', () => {
    for (const turn of [0, 90, 180, 33]) {
      const disc = [circle(0, 0, 20)];
      const turned = rim('plain 51.8x100x20mm maple', { turn: `${turn}deg` }, disc);
      expect(turned?.measured.value).toBeCloseTo(5.9, 1);
      expect(turned?.limit.value).toBe(6);
      expect(turned?.where).toHaveLength(2);
    }
    // fibres that end in the face: there is no long-grain edge
    expect(rim('end-grain-checkerboard 100x51.8x20mm maple maple square:120mm')?.limit.value).toBe(6);
  });

  test('beside a hole the limits of walls count, whichever side', () => {
    const beside = (at: string) => rim('plain 200x100x20mm maple', { keepClear: [`hole ${at} 8mm`] });
    // the square's right edge is at 120 mm, its lower at 70 mm
    expect(beside('125.4mm,50mm')?.measured.value).toBeCloseTo(1.4, 6);
    expect(beside('125.4mm,50mm')?.severity).toBe('caution');
    expect(beside('125.6mm,50mm')).toBeUndefined();
    expect(beside('100mm,74.9mm')?.limit.value).toBe(1);
    expect(beside('100mm,75.1mm')).toBeUndefined();
    expect(
      rim('plain 200x100x20mm maple', { keepClear: ['groove 124mm,0mm 124mm,100mm 6mm'] })?.measured.value,
    ).toBeCloseTo(1, 6);
  });

  test('a hole beside the cut is as near wherever the artwork has its origin', () => {
    const rims = [
      [0, 0],
      [500, -300],
      [-700, 900],
    ].map(([x = 0, y = 0]) =>
      rim('plain 200x100x20mm maple', { keepClear: ['hole 74.6mm,50mm 8mm'] }, [rectangle(x, y, 40, 40)]),
    );
    for (const each of rims) {
      expect(each?.measured.value).toBeCloseTo(1.4, 6);
      expect(each?.where).toHaveLength(1);
    }
  });

  test.each([0, 30, 90, 200])('the move that it offers clears it on a board turned by %s°', (turn) => {
    const job = { board: 'plain 120x120x20mm maple', place: '24.5mm,61mm', turn: `${turn}deg` };
    const disc = [circle(0, 0, 20)];
    const finding = find('rim-too-thin', disc, job);
    expect(finding?.severity).toBe('caution');
    const fix = fixOf(finding, 'move');
    expect(fix).toBeDefined();
    // from 4.5 mm to the 10 mm that shops leave
    expect(Math.hypot(fix?.rightMm ?? 0, fix?.downMm ?? 0)).toBeLessThan(5.6);
    const changed = fix === undefined ? null : applyFix({ ...CALM, ...job }, fix);
    expect(find('rim-too-thin', disc, changed ?? job)).toBeUndefined();
  });

  test('a hole in the back counts beside the pocket where it reaches higher than the floor', () => {
    const beside = (backMm: number) =>
      find('rim-too-thin', SQUARE, {
        board: 'plain 100x100x20mm maple',
        keepClear: [`hole 75mm,50mm 8mm back:${backMm}mm`],
      })?.measured.value;
    // the square ends at 70 mm, the hole begins at 71 mm; it ends 2 mm below the face, or 4 mm
    expect(beside(18)).toBeCloseTo(1, 6);
    expect(beside(16)).toBeUndefined();
  });

  test('no move is offered where the board is too small', () => {
    const finding = rim('plain 45x100x20mm maple');
    expect(finding?.fix.options).toEqual([]);
    expect(waysOut(finding, 'mm')[0]).toMatch(/smaller or the board larger/u);
  });

  test('a smaller board and a deeper cut never look better, and company never helps', () => {
    const gap = fc.integer({ min: 1, max: 80 }).map((tenths) => tenths / 10);
    const at = (leftMm: number, depth: number, rings = SQUARE) =>
      find('rim-too-thin', rings, {
        board: 'plain 300x200x30mm maple',
        depth: `${depth}mm`,
        place: `${20 + leftMm}mm,100mm`,
      });
    fc.assert(
      fc.property(gap, gap, fc.integer({ min: 2, max: 5 }), (a, b, depth) => {
        expect(gravity(at(Math.min(a, b), depth))).toBeGreaterThanOrEqual(gravity(at(Math.max(a, b), depth)));
        expect(gravity(at(a, depth + 1))).toBeGreaterThanOrEqual(gravity(at(a, depth)));
        const ring = [SQUARE[0] as number[], [6, 6, 6, 34, 34, 34, 34, 6]];
        const alone = at(a, depth, ring);
        const inCompany = at(a, depth, [...ring, rectangle(15, 15, 10, 10)]);
        expect(alone?.severity).toBe(inCompany?.severity);
        expect(alone?.where).toEqual(inCompany?.where);
      }),
      { numRuns: 20 },
    );
  });
});

describe('bleed-reaches-edge', () => {
  const BARE: JobInput = { seal: 'none', colour: 'black' };
  /** A square whose right side is this far from the right edge, across which the fibres of a plain board run. */
  const edge = (gapMm: number, job: JobInput = {}, wood = 'poplar') =>
    find('bleed-reaches-edge', SQUARE, {
      ...BARE,
      board: `plain 100x100x20mm ${wood}`,
      place: `${80 - gapMm}mm,50mm`,
      ...job,
    });
  const travel = judgeDrawing(
    drawingOf(SQUARE),
    'test',
    settleJob({ ...CALM, ...BARE, board: 'plain 100x100x20mm poplar' }),
  ).report.bleed.blocks[0]?.travelMm ?? { low: 0, median: 0, high: 0 };

  test('a stop where even the low end of the travel reaches the edge, a caution where the median does', () => {
    expect(travel.median).toBeGreaterThan(1);
    expect(edge(travel.low * 0.98)?.severity).toBe('stop');
    expect(edge(travel.low * 1.02)?.severity).toBe('caution');
    expect(edge(travel.median * 0.98)?.severity).toBe('caution');
    expect(edge(travel.median * 1.02)).toBeUndefined();
    const finding = edge(travel.median * 0.9);
    expect(finding?.measured.value).toBeCloseTo(travel.median * 0.9, 9);
    expect(finding?.limit.value).toBeCloseTo(travel.median, 9);
    expect(finding?.where).toHaveLength(1);
  });

  test('the seal that it offers clears it', () => {
    const fix = fixOf(edge(travel.median * 0.5), 'change-seal');
    expect(fix).toBeDefined();
    const sealed = { seal: fix?.seal, coats: fix?.coats, sealHours: `${fix?.hours}h` };
    expect(edge(travel.median * 0.5, sealed)).toBeUndefined();
  });

  test('under a seal that has not hardened, so does the wait that it offers', () => {
    const fresh: JobInput = { seal: 'epoxy', sealHours: '1h' };
    const finding = edge(0.6, fresh);
    const hours = fixOf(finding, 'wait')?.hours ?? Number.NaN;
    expect(hours).toBeGreaterThan(0);
    expect(edge(0.6, { ...fresh, sealHours: `${1 + hours}h` })).toBeUndefined();
    // the shortest wait is told for the worst end, and clears all of them
    expect(fixOf(edge(0.3, fresh), 'wait')?.hours).toBeGreaterThan(hours);
  });

  test('is silent at a long-grain edge, and turning the artwork turns nothing', () => {
    expect(edge(0, { place: '50mm,79.5mm' })).toBeUndefined();
    expect(edge(0.5, { turn: '90deg' })?.severity).toBe('stop');
  });

  test('a glue line between pocket and edge stops it', () => {
    const glued = {
      board: 'polygons 100x100x20mm',
      block: [
        'poplar 0mm,0mm 99.8mm,0mm 99.8mm,100mm 0mm,100mm',
        'poplar 99.8mm,0mm 100mm,0mm 100mm,100mm 99.8mm,100mm',
      ],
    };
    const solid = { ...glued, block: ['poplar 0mm,0mm 100mm,0mm 100mm,100mm 0mm,100mm'] };
    expect(edge(0.5, solid)).toBeDefined();
    expect(edge(0.5, glued)).toBeUndefined();
  });

  test('more travel and less wood never look better', () => {
    const gap = fc.integer({ min: 1, max: 60 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(gap, gap, (a, b) => {
        expect(gravity(edge(Math.min(a, b)))).toBeGreaterThanOrEqual(gravity(edge(Math.max(a, b))));
        expect(gravity(edge(a))).toBeGreaterThanOrEqual(gravity(edge(a, { seal: 'shellac' })));
        expect(gravity(edge(a))).toBeGreaterThanOrEqual(gravity(edge(a, {}, 'maple')));
      }),
      { numRuns: 15 },
    );
  });
});
