import { type JobInput, settleJob } from '@pourproof/job';
import { type Drawing, packRings } from '@pourproof/plane';
import { applyFix, type Finding, type Fix, judgeDrawing } from '@pourproof/proof';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf, waysOut } from '../../support/fix-of.ts';

const CALM: JobInput = {
  bit: ['flat:2mm'],
  depth: '3mm',
  wood: 'walnut',
  seal: 'epoxy',
  sealHours: '24h',
  boards: 10,
  units: 'mm',
};
type Painted = readonly [colour: string, ...rings: readonly (readonly number[])[]];

function painted(shapes: readonly Painted[], turnDeg = 0): Drawing {
  const parts = shapes.map(([colour, ...rings]) => {
    const { shapes: each } = drawingOf(rings, { turnDeg });
    const regions = each.map(({ region }) => region);
    const coords = regions.flatMap((region) => [Array.from(region.coords)]);
    return { ...each[0], region: { ...packRings(coords), fillRule: 'evenodd' as const }, colour };
  });
  return { ...drawingOf([]), shapes: parts as unknown as Drawing['shapes'] };
}

const touch = (shapes: readonly Painted[], turnDeg = 0, job: JobInput = {}): Finding | undefined =>
  judgeDrawing(painted(shapes, turnDeg), 'test', settleJob({ ...CALM, ...job })).report.findings.find(
    ({ code }) => code === 'colours-touch',
  );
const BLACK = '#000000';
const RED = '#ff0000';
const square = (x: number, y = 0): number[] => rectangle(x, y, 20, 20);

describe('colours-touch', () => {
  test('squares that meet in a corner alone have no length in common', () => {
    expect(
      touch([
        [BLACK, square(0)],
        [RED, square(20, 20)],
      ]),
    ).toBeUndefined();
    expect(
      touch([
        [BLACK, square(0)],
        [RED, square(20, 19.9)],
      ]),
    ).toBeUndefined();
    expect(
      touch([
        [BLACK, square(0)],
        [RED, square(20, 15)],
      ]),
    ).toBeDefined();
  });

  test('a contact that is shorter than rounding is none, where a V cuts into the corners', () => {
    const meeting = (byMm: number) =>
      touch(
        [
          [BLACK, square(0)],
          [RED, square(20, 20 - byMm)],
        ],
        0,
        { bit: ['vee:60deg:1/2in'] },
      );
    expect(meeting(0.005)).toBeUndefined();
    expect(meeting(0.05)?.where.map(({ lengthMm }) => lengthMm)).toEqual([expect.closeTo(0.05, 9)]);
  });

  test.each([0, 17, 90])('side by side, overlapping and within each other, turned by %s°', (turnDeg) => {
    const side = touch(
      [
        [BLACK, square(0)],
        [RED, square(20)],
      ],
      turnDeg,
    );
    expect(side?.severity).toBe('stop');
    expect(side?.where).toHaveLength(1);
    expect(
      touch(
        [
          [BLACK, square(0)],
          [RED, square(15, 10)],
        ],
        turnDeg,
      )?.severity,
    ).toBe('stop');
    expect(
      touch(
        [
          [BLACK, rectangle(0, 0, 40, 40)],
          [RED, square(10, 10)],
        ],
        turnDeg,
      )?.severity,
    ).toBe('stop');
    // a red square fills the hole of a black frame
    expect(
      touch(
        [
          [BLACK, rectangle(0, 0, 40, 40), square(10, 10)],
          [RED, square(10, 10)],
        ],
        turnDeg,
      )?.severity,
    ).toBe('stop');
    // wood too thin to stand is none
    expect(
      touch(
        [
          [BLACK, square(0)],
          [RED, square(20.15)],
        ],
        turnDeg,
      )?.severity,
    ).toBe('stop');
  });

  test('is silent on one colour, on colours with wood between and on corners that no bit enters', () => {
    expect(
      touch([
        [BLACK, square(0)],
        [BLACK, square(20)],
      ]),
    ).toBeUndefined();
    expect(
      touch([
        [BLACK, square(0)],
        [RED, square(20.25)],
      ]),
    ).toBeUndefined();
    expect(
      touch([
        [BLACK, square(0)],
        [RED, square(20, 20)],
      ]),
    ).toBeUndefined();
    expect(
      touch([
        [BLACK, rectangle(0, 0, 40, 40), square(10, 10)],
        [RED, rectangle(12, 12, 16, 16)],
      ]),
    ).toBeUndefined();
  });

  test('the wall that it asks for clears it and stands', () => {
    const finding = touch(
      [
        [BLACK, square(0)],
        [RED, square(20)],
      ],
      0,
      { depth: '4mm' },
    );
    const wall = fixOf(finding, 'part-by-wall')?.widthMm ?? 0;
    expect(wall).toBe(2);
    const { report } = judgeDrawing(
      painted([
        [BLACK, square(0)],
        [RED, square(20 + wall)],
      ]),
      'test',
      settleJob({ ...CALM, depth: '4mm' }),
    );
    const codes = report.findings.map(({ code }) => code);
    expect(codes).not.toContain('colours-touch');
    expect(codes).not.toContain('short-grain-will-break');
    expect(fixOf(finding, 'pour-in-rounds')?.rounds).toEqual([['black'], ['red']]);
    expect(waysOut(finding, 'mm')).toHaveLength(2);
  });

  test('the rounds that it asks for clear it, what is painted below first, and colours apart share one', () => {
    const shapes: readonly Painted[] = [
      [BLACK, rectangle(0, 0, 40, 40)],
      [RED, square(10, 10)],
      ['#0000ff', square(60)],
    ];
    const job: JobInput = { ...CALM, depth: '4mm' };
    const fix = fixOf(touch(shapes, 0, job), 'pour-in-rounds');
    expect(fix?.rounds).toEqual([['black', 'blue'], ['red']]);
    const changed = applyFix(job, fix as Fix);
    expect(changed).toEqual({ ...job, rounds: 'black+blue, red' });
    const { report } = judgeDrawing(painted(shapes), 'test', settleJob(changed as JobInput));
    expect(report.verdict).toBe('clear');
  });

  test('neither the order of shapes nor company matters', () => {
    const coord = fc.integer({ min: 0, max: 60 });
    const shape = fc
      .tuple(fc.constantFrom(BLACK, RED, '#0000ff'), coord, coord)
      .map(([colour, x, y]): Painted => [colour, square(x, y)]);
    fc.assert(
      fc.property(fc.array(shape, { minLength: 2, maxLength: 4 }), shape, (shapes, more) => {
        const finding = touch(shapes);
        const reversed = touch(shapes.toReversed());
        // outlines may start elsewhere, and rounds go from the bottom up
        const told = (each: Finding | undefined) =>
          each && { ...each, where: each.where.length, fix: fixOf(each, 'part-by-wall') };
        expect(told(reversed)).toEqual(told(finding));
        if (finding !== undefined) {
          expect(touch([...shapes, more])).toBeDefined();
        }
      }),
      { numRuns: 25 },
    );
  });
});
