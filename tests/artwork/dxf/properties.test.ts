import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ArtworkError, type DxfUnit, readDxf } from '@pourproof/artwork';
import { type Drawing, MM_PER_INCH } from '@pourproof/plane';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { binaryDxf } from '../../support/dxf/binary-text.ts';
import { drawingArea } from '../../support/dxf/drawing-area.ts';
import { dxfText, MM } from '../../support/dxf/dxf-text.ts';
import { cases } from '../../support/lane.ts';

type Segment = [x0: number, y0: number, x1: number, y1: number];

const folder = join(import.meta.dirname, '../../../fixtures/dxf');
const fixtures = readdirSync(folder)
  .filter((file) => file.endsWith('.dxf'))
  .map((file) => readFileSync(join(folder, file), 'utf8'));

/** Star-shaped outlines with distinct corners, side by side. */
const outlines = fc
  .array(fc.array(fc.integer({ min: 20, max: 45 }), { minLength: 3, maxLength: 12 }), {
    minLength: 1,
    maxLength: 6,
  })
  .map((stars) =>
    stars.map((radii, s) =>
      radii.map((r, k): [number, number] => {
        const a = (2 * Math.PI * k) / radii.length;
        return [100 * s + r * Math.cos(a), r * Math.sin(a)];
      }),
    ),
  );

function segmentsOf(ring: readonly (readonly [number, number])[]): Segment[] {
  return ring.map(([x, y], k) => [x, y, ...ring[(k + 1) % ring.length]]);
}

function shoelace(ring: readonly (readonly [number, number])[]): number {
  return Math.abs(
    ring.reduce(
      (sum, [x, y], k) => sum + x * ring[(k + 1) % ring.length][1] - ring[(k + 1) % ring.length][0] * y,
      0,
    ) / 2,
  );
}

function lines(segments: readonly Segment[]): string {
  return dxfText(
    segments.flatMap(([x0, y0, x1, y1]) => [0, 'LINE', 8, 'A', 10, x0, 20, y0, 11, x1, 21, y1]),
    { header: MM },
  );
}

describe('lines joined into outlines', () => {
  test('order, direction, splitting and doubling of lines do not matter', () => {
    fc.assert(
      fc.property(outlines, fc.infiniteStream(fc.nat({ max: 1000 })), (rings, stream) => {
        const next = (n: number): number => (stream.next().value as number) % n;
        const area = rings.reduce((sum, ring) => sum + shoelace(ring), 0);
        const segments: Segment[] = [];
        for (const [x0, y0, x1, y1] of rings.flatMap(segmentsOf)) {
          const turned: Segment = next(2) === 0 ? [x0, y0, x1, y1] : [x1, y1, x0, y0];
          const [a, b, c, d] = turned;
          const t = (1 + next(8)) / 10;
          const mid: [number, number] = [a + t * (c - a), b + t * (d - b)];
          const whole = next(3);
          if (whole !== 1) {
            segments.splice(next(segments.length + 1), 0, turned);
          }
          if (whole !== 0) {
            // drawn in two parts, on top of the whole line in one case of three
            segments.splice(next(segments.length + 1), 0, [a, b, ...mid], [c, d, ...mid]);
          }
        }
        const drawing = readDxf(lines(segments));
        expect(drawing.notices.map((n) => n.code).filter((code) => code !== 'doubled-line')).toEqual([]);
        expect(drawingArea(drawing)).toBeCloseTo(area, 6);
      }),
      cases(150),
    );
  });

  test('gaps up to the tolerance are closed and the largest is told; wider ones are not', () => {
    fc.assert(
      fc.property(outlines, fc.double({ min: 0.002, max: 0.2, noNaN: true }), (rings, gap) => {
        const cut = rings.flatMap((ring) => {
          const [first, ...rest] = segmentsOf(ring);
          const length = Math.hypot(first[2] - first[0], first[3] - first[1]);
          const t = gap / length;
          return [
            [
              first[0] + t * (first[2] - first[0]),
              first[1] + t * (first[3] - first[1]),
              first[2],
              first[3],
            ] as Segment,
            ...rest,
          ];
        });
        const area = rings.reduce((sum, ring) => sum + shoelace(ring), 0);
        const closed = readDxf(lines(cut), { joinToleranceMm: gap * 1.01 });
        expect(drawingArea(closed)).toBeCloseTo(area, 6);
        const notice = closed.notices.find((n) => n.code === 'gap-closed');
        expect((notice!.params!.largestMm as number) / gap).toBeCloseTo(1, 6);
        expect(notice!.text.mm).toContain(
          `${Number((notice!.params!.largestMm as number).toPrecision(3))} mm`,
        );
        expect(notice!.where[0]!.gapMm! / gap).toBeCloseTo(1, 6);
        const open = readDxf(lines(cut), { joinToleranceMm: gap * 0.99 });
        expect(open.shapes).toEqual([]);
        expect(open.notices.map((n) => n.code)).toEqual(['open-outline']);
        expect(open.notices[0].where.map((place) => place.gapMm! / gap)).toEqual(
          rings.map(() => expect.closeTo(1, 6)),
        );
      }),
      cases(60),
    );
  });

  test('a rectangle cut into rooms by any walls across it is filled as a whole', () => {
    const across = fc.uniqueArray(fc.integer({ min: 1, max: 9 }), { maxLength: 5 });
    fc.assert(
      fc.property(across, across, (inX, inY) => {
        const xs = [0, ...inX.sort((a, b) => a - b), 10];
        const ys = [0, ...inY.sort((a, b) => a - b), 10];
        const steps = (list: number[]): [number, number][] => list.slice(1).map((to, k) => [list[k], to]);
        const walls: Segment[] = [
          ...ys.flatMap((y) => steps(xs).map(([a, b]): Segment => [a, y, b, y])),
          ...xs.flatMap((x) => steps(ys).map(([a, b]): Segment => [x, b, x, a])),
        ];
        const drawing = readDxf(lines(walls));
        expect(drawingArea(drawing)).toBeCloseTo(100, 9);
        // each wall meets the outline in two points with three lines
        const codes = inX.length + inY.length > 0 ? ['branching-outline'] : [];
        expect(drawing.notices.map((n) => n.code)).toEqual(codes);
      }),
      cases(60),
    );
  });
});

describe('size', () => {
  const units: readonly (readonly [DxfUnit, number])[] = [
    ['mm', 1],
    ['cm', 10],
    ['m', 1000],
    ['in', MM_PER_INCH],
    ['ft', 12 * MM_PER_INCH],
  ];
  const ellipse = dxfText([0, 'ELLIPSE', 8, 'A', 10, 1, 20, 2, 11, 0.3, 21, 0.4, 40, 0.6], {});

  test.each(units)('area goes with the square of the unit %s', (unit, mm) => {
    expect(drawingArea(readDxf(ellipse, { unit })) / (Math.PI * 0.5 * 0.3 * mm * mm)).toBeCloseTo(1, 9);
  });

  test('a width, a height, a box or a factor sets the size', () => {
    const rect = dxfText(
      [0, 'LWPOLYLINE', 8, 'A', 70, 1, 10, 5, 20, 5, 10, 25, 20, 5, 10, 25, 20, 15, 10, 5, 20, 15],
      {},
    );
    expect(drawingArea(readDxf(rect, { widthMm: 80 }))).toBeCloseTo(80 * 40, 9);
    expect(drawingArea(readDxf(rect, { heightMm: 5 }))).toBeCloseTo(50, 9);
    expect(drawingArea(readDxf(rect, { widthMm: 80, heightMm: 5 }))).toBeCloseTo(50, 9);
    expect(drawingArea(readDxf(rect, { scale: 1.5 }))).toBeCloseTo(450, 9);
    expect(readDxf(rect, { widthMm: 80 }).notices).toEqual([]);
    expect(readDxf(rect, { scale: 1.5 }).notices.map((n) => n.code)).toEqual(['unit-missing']);
  });

  test('a size that is no size is refused', () => {
    for (const options of [
      { widthMm: 0 },
      { heightMm: -1 },
      { scale: Number.NaN },
      { toleranceMm: 0 },
      { joinToleranceMm: -1 },
    ]) {
      expect(() => readDxf(ellipse, options)).toThrow(RangeError);
    }
  });

  test('area is that of the curve at every tolerance', () => {
    const text = dxfText(
      [
        0,
        'CIRCLE',
        8,
        'A',
        10,
        0,
        20,
        0,
        40,
        20,
        0,
        'LWPOLYLINE',
        8,
        'A',
        70,
        1,
        10,
        40,
        20,
        0,
        42,
        1.7,
        10,
        60,
        20,
        0,
        42,
        0.4,
      ],
      { header: MM },
    );
    const segment = (b: number): number => {
      const angle = 4 * Math.atan(b);
      const r = (20 * (1 + b * b)) / (4 * b);
      return (r * r * (angle - Math.sin(angle))) / 2;
    };
    const area = Math.PI * 400 + segment(1.7) + segment(0.4);
    for (const toleranceMm of [1, 0.1, 0.005, 0.0001]) {
      expect(drawingArea(readDxf(text, { toleranceMm })) / area).toBeCloseTo(1, 9);
    }
  });
});

describe('bad input', () => {
  const junk = fc.oneof(
    fc.constantFrom(
      '',
      '0',
      '-1',
      '1e400',
      'NaN',
      'oops',
      '999',
      '1000',
      '102',
      '{',
      '}',
      'EOF',
      'ENDSEC',
      'SECTION',
      'SEQEND',
      'INSERT',
      'BLOCK',
      'ENDBLK',
      'VERTEX',
      'HATCH',
      'SPLINE',
      '70',
      '91',
      '92',
      '1e-320',
      '9007199254740993',
    ),
    fc.integer({ min: -100, max: 1100 }).map(String),
    fc.double().map(String),
    fc.string({ maxLength: 6 }),
  );
  const damage = fc.array(fc.tuple(fc.constantFrom('replace', 'delete', 'insert', 'swap'), fc.nat(), junk), {
    minLength: 1,
    maxLength: 8,
  });

  function damaged(text: string, changes: readonly (readonly [string, number, string])[]): string {
    const parts = text.split('\n');
    for (const [kind, at, value] of changes) {
      const i = at % parts.length;
      if (kind === 'swap') {
        const j = (7 * at + 3) % parts.length;
        [parts[i], parts[j]] = [parts[j], parts[i]];
      } else {
        parts.splice(i, kind === 'insert' ? 0 : 1, ...(kind === 'delete' ? [] : [value]));
      }
    }
    return parts.join('\n');
  }

  function expectSound(source: string | Uint8Array): void {
    let drawing: Drawing;
    try {
      drawing = readDxf(source);
    } catch (error) {
      expect(error).toBeInstanceOf(ArtworkError);
      return;
    }
    for (const { region } of drawing.shapes) {
      expect(region.coords.every(Number.isFinite)).toBe(true);
      expect(region.ringEnds.at(-1)).toBe(region.coords.length / 2);
    }
    for (const notice of drawing.notices) {
      // names out of the file may be anything
      expect(notice.text.mm.replace(/"[^"]*"|layer \S+/g, '')).not.toMatch(/NaN|undefined|Infinity|\[object/);
    }
  }

  test('damaged files give shapes and notices, or one error with a remedy', () => {
    fc.assert(
      fc.property(fc.constantFrom(...fixtures), damage, (text, changes) =>
        expectSound(damaged(text, changes)),
      ),
      cases(1500),
    );
  });

  test('so do damaged binary files', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...fixtures),
        fc.array(fc.tuple(fc.nat(), fc.nat({ max: 255 })), { minLength: 1, maxLength: 6 }),
        fc.boolean(),
        fc.nat(),
        (text, changes, wide, cut) => {
          const bytes = binaryDxf(text, wide);
          for (const [at, value] of changes) {
            bytes[22 + (at % (bytes.length - 22))] = value;
          }
          expectSound(cut % 3 === 0 ? bytes.subarray(0, 22 + (cut % (bytes.length - 22))) : bytes);
        },
      ),
      cases(1000),
    );
  });

  test('so do any bytes and any text', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 200 }), expectSound), cases(500));
    fc.assert(fc.property(fc.string({ maxLength: 200 }), expectSound), cases(500));
  });
});
