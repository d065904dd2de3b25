import { readDxf } from '@pourproof/artwork';
import { type JobInput, typedJob } from '@pourproof/job';
import { applyFix } from '@pourproof/proof';
import { findingEntries } from '@pourproof/wording';
import fc from 'fast-check';
import { vet } from 'pourproof';
import { describe, expect, test } from 'vitest';
import { drawingArea } from '../support/dxf/drawing-area.ts';
import { dxfText, MM } from '../support/dxf/dxf-text.ts';
import { cases } from '../support/lane.ts';

type Pairs = readonly (string | number)[];

const INCHES: Pairs = [9, '$INSUNITS', 70, 1];
const JOB: JobInput = { bit: ['flat:2mm'], depth: '3mm', wood: 'maple', seal: 'epoxy', sealHours: '24h' };

const line = (x0: number, y0: number, x1: number, y1: number): Pairs => [
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
/** Counter-clockwise from one angle to the other, degrees. */
const arc = (x: number, y: number, r: number, from: number, to: number): Pairs => [
  0,
  'ARC',
  8,
  'CARVE',
  10,
  x,
  20,
  y,
  40,
  r,
  50,
  from,
  51,
  to,
];
const circle = (x: number, y: number, r: number): Pairs => [0, 'CIRCLE', 8, 'CARVE', 10, x, 20, y, 40, r];
/** A closed disc far from all else, so that something is always cut. */
const DISC = circle(500, 0, 10);

/** A rectangle of four lines; each ends short of its corner by its gap. */
function box(x: number, y: number, w: number, h: number, gaps: readonly number[]): Pairs {
  const [a = 0, b = 0, c = 0, d = 0] = gaps;
  return [
    ...line(x, y, x + w - a, y),
    ...line(x + w, y, x + w, y + h - b),
    ...line(x + w, y + h, x + c, y + h),
    ...line(x, y + h, x, y + d),
  ];
}

const file = (entities: Pairs, header: Pairs = MM, blocks?: Pairs) => ({
  kind: 'file' as const,
  name: 'sign.dxf',
  bytes: new TextEncoder().encode(dxfText(entities, { header, ...(blocks === undefined ? {} : { blocks }) })),
});

/** Vets a drawing, takes the way out by the joining tolerance, and vets it again. */
async function joined(source: ReturnType<typeof file>, job: JobInput = JOB) {
  const before = await vet(source, job);
  const finding = before.report.findings.find(({ code }) => code === 'outline-open');
  const fix = finding?.fix.options.find((option) => option.do === 'join-ends');
  const fixed = fix === undefined ? null : applyFix(job, fix);
  const after = fixed === null ? null : await vet(source, fixed);
  return { before, finding, fix, fixed, after };
}

const opensIn = (vetted: Awaited<ReturnType<typeof vet>> | null) =>
  vetted?.report.findings.find(({ code }) => code === 'outline-open');

describe('an outline that is left open and left out', () => {
  test('is a stop at any width of gap, and the least tolerance closes it', async () => {
    const width = fc.integer({ min: 6, max: 500 }).map((hundredths) => hundredths / 100);
    await fc.assert(
      fc.asyncProperty(
        fc.array(width, { minLength: 4, maxLength: 4 }),
        fc.integer({ min: 1, max: 4 }),
        async (widths, count) => {
          const gaps = widths.map((each, k) => (k < count ? each : 0));
          const { finding, fix, after } = await joined(file([...box(0, 0, 60, 30, gaps), ...DISC]));
          expect(finding?.severity).toBe('stop');
          expect(finding?.where.map(({ lengthMm }) => lengthMm).toSorted((a = 0, b = 0) => a - b)).toEqual(
            gaps
              .filter((gap) => gap > 0)
              .toSorted((a, b) => a - b)
              .map((gap) => expect.closeTo(gap, 9)),
          );
          // the corners stay, so that closing by straight lines loses nothing of the rectangle
          expect(finding?.measured.value).toBeCloseTo(1800, 6);
          expect(fix).toMatchObject({ closes: 1, clears: true });
          expect(fix?.toleranceMm).toBeCloseTo(Math.max(...gaps), 9);
          expect(opensIn(after)).toBeUndefined();
          expect(after?.report.artwork.areaMm2).toBeCloseTo(1800 + 100 * Math.PI, 3);
        },
      ),
      cases(12),
    );
  });

  test.each([0.01, 0.05])('is no finding at a gap of %d mm, which every reading closes', async (gap) => {
    const { report } = await vet(file([...box(0, 0, 60, 30, [gap]), ...DISC]), JOB);
    expect(report.findings.map(({ code }) => code)).not.toContain('outline-open');
    expect(report.artwork.notices.map(({ code }) => code)).toEqual(['gap-closed']);
  });

  test('counts with its arcs', async () => {
    // a slot of two lines and two half circles, one of which begins 0.4 mm late
    const late = (Math.asin(0.2 / 5) * 360) / Math.PI;
    const slot = [
      ...line(0, 0, 40, 0),
      ...arc(40, 5, 5, 270 + late, 90),
      ...line(40, 10, 0, 10),
      ...arc(0, 5, 5, 90, 270),
    ];
    const { finding, fix, after } = await joined(file([...slot, ...DISC]));
    expect(finding?.where[0]?.lengthMm).toBeCloseTo(0.4, 6);
    const cutOff = 12.5 * ((late * Math.PI) / 180 - Math.sin((late * Math.PI) / 180));
    expect(finding?.measured.value).toBeCloseTo(400 + 25 * Math.PI - cutOff, 2);
    expect(fix?.toleranceMm).toBe(0.4);
    expect(opensIn(after)).toBeUndefined();
  });

  test('is found in a block that is mirrored, stretched and turned, its gap as it lies on the artwork', async () => {
    const blocks: Pairs = [
      ...[0, 'BLOCK', 8, 0, 2, 'SIGN', 70, 0, 10, 0, 20, 0],
      ...box(0, 0, 60, 30, [0.2]),
      ...[0, 'ENDBLK'],
    ];
    const insert: Pairs = [0, 'INSERT', 8, 'CARVE', 2, 'SIGN', 10, 5, 20, 5, 41, -2, 42, 1, 50, 30];
    const { finding, fix, after } = await joined(file([...insert, ...DISC], MM, blocks));
    expect(finding?.where[0]?.lengthMm).toBeCloseTo(0.4, 9);
    expect(finding?.measured.value).toBeCloseTo(3600, 6);
    expect(fix?.toleranceMm).toBe(0.4);
    expect(opensIn(after)).toBeUndefined();
  });

  test('in inches is told in inches, and the tolerance typed in inches is enough', async () => {
    const job: JobInput = { ...JOB, units: 'in' };
    const source = file([...box(0, 0, 3, 2, [0.0123]), ...circle(20, 0, 0.5)], INCHES);
    const { before, fixed, after } = await joined(source, job);
    const entry = findingEntries(before.report, before.job).find(({ code }) => code === 'outline-open');
    for (const text of [entry?.headline, entry?.measured, ...(entry?.fixes ?? []).map((fix) => fix.text)]) {
      expect(text).toMatch(/ in[²\s).:,]|in²$/u);
      expect(text).not.toMatch(/mm/u);
    }
    expect(typedJob(fixed ?? {}).join).toMatch(/^0\.01\d+in$/u);
    expect(opensIn(after)).toBeUndefined();
  });

  test('around wood that is to stand tells the wood that is lost', async () => {
    const { finding, after } = await joined(file([...circle(30, 15, 60), ...box(10, 5, 40, 20, [0.5])]));
    expect(finding?.openOutlines).toEqual({ count: 1, cutMm2: 0, woodMm2: expect.closeTo(800, 6) });
    expect(after?.report.artwork.areaMm2).toBeCloseTo(3600 * Math.PI - 800, 2);
  });

  test('with a missing side is a stop that no tolerance cures', async () => {
    const { finding, fix } = await joined(
      file([...line(0, 0, 40, 0), ...line(40, 0, 40, 40), ...line(40, 40, 0, 40), ...DISC]),
    );
    expect(finding).toMatchObject({ severity: 'stop', measured: { value: 1600 } });
    expect(fix).toBeUndefined();
  });

  test('of several the least tolerance closes as many as any does', async () => {
    const three = [
      ...box(0, 0, 30, 20, [0.2]),
      ...box(100, 0, 30, 20, [0.7]),
      ...box(200, 0, 30, 20, [3, 0.1]),
    ];
    const { finding, fix, after } = await joined(file([...three, ...DISC]));
    expect(finding?.openOutlines?.count).toBe(3);
    expect(fix).toMatchObject({ toleranceMm: 3, closes: 3, areaMm2: expect.closeTo(1800, 6) });
    expect(opensIn(after)).toBeUndefined();
  });

  test('is not joined across lines that are none of it', async () => {
    // two short lines 3 mm apart: closing the gap of 4 mm would tie them into a square
    const centres = [...line(200, 0, 203, 0), ...line(200, 3, 203, 3)];
    const { fix, after } = await joined(
      file([...box(0, 0, 30, 20, [0.5]), ...box(100, 0, 30, 20, [4]), ...centres, ...DISC]),
    );
    expect(fix).toMatchObject({ toleranceMm: 0.5, closes: 1, clears: false });
    expect(opensIn(after)?.openOutlines?.count).toBe(1);
  });
});

describe('lines that bound nothing', () => {
  test.each([
    ['a straight line', line(0, 0, 30, 10)],
    ['a corner', [...line(0, 0, 30, 0), ...line(30, 0, 30, 30)]],
    ['half a circle', arc(0, 0, 20, 0, 180)],
    ['a wave', [...arc(0, 0, 5, 0, 180), ...arc(10, 0, 5, 180, 0)]],
    ['parallel lines', [0, 2, 4, 6].flatMap((y) => line(0, y, 60, y))],
    ['a tail on an outline', [...box(0, 0, 30, 30, []), ...line(30, 30, 60, 60)]],
  ])('%s is a caution and no open outline', async (_, pairs) => {
    const { report } = await vet(file([...pairs, ...DISC]), JOB);
    expect(report.findings.map(({ code }) => code)).not.toContain('outline-open');
    expect(
      report.artwork.notices.filter(({ effect }) => effect === 'left-out').map(({ code }) => code),
    ).toEqual(['loose-line']);
    expect(report.verdict).not.toBe('clear');
  });

  test('a drawing of centre lines alone is refused: nothing would be cut', async () => {
    const letters = [...line(0, 0, 0, 20), ...line(0, 10, 12, 10), ...line(12, 0, 12, 20)];
    await expect(vet(file(letters), JOB)).rejects.toMatchObject({ code: 'nothing-to-cut' });
  });
});

test('a hatch whose boundary does not close is a stop, with the area that it would fill', async () => {
  const edge = (x0: number, y0: number, x1: number, y1: number): Pairs => [
    72,
    1,
    10,
    x0,
    20,
    y0,
    11,
    x1,
    21,
    y1,
  ];
  const hatch: Pairs = [
    ...[0, 'HATCH', 8, 'CARVE', 70, 1, 71, 0, 91, 1, 92, 1, 93, 3],
    ...edge(0, 0, 30, 0),
    ...edge(30, 0, 30, 20),
    ...edge(30, 20, 0, 20),
    ...[97, 0, 75, 0, 76, 1, 98, 0],
  ];
  const { finding } = await joined(file([...hatch, ...DISC]));
  expect(finding).toMatchObject({ severity: 'stop', measured: { value: 600 } });
});

test('a wider joining tolerance does not swallow thin rings', () => {
  const ring = dxfText([...circle(0, 0, 20), ...circle(0, 0, 19)], { header: MM });
  expect(drawingArea(readDxf(ring, { joinToleranceMm: 3 }))).toBeCloseTo(39 * Math.PI, 3);
});
