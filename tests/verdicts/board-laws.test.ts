import { type JobInput, settleJob } from '@pourproof/job';
import { judgeDrawing, type Report } from '@pourproof/proof';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../arbitraries.ts';
import { drawingOf } from '../support/drawing-of.ts';
import { cases } from '../support/lane.ts';

const GRAVITY: Readonly<Record<Report['verdict'], number>> = { clear: 0, caution: 1, stop: 2 };

/** Bars, discs and stars round the origin, up to 40 mm across. */
const part: fc.Arbitrary<number[]> = fc.oneof(
  fc.tuple(between(4, 40), between(1, 20)).map(([width, height]) => polar([width / 2, height / 2], 4, 45)),
  between(1, 20).map((radius) => polar([radius, radius], 48, 0)),
  between(5, 20).map(star),
);

/** A star with five points, one of which points to the right. */
function star(radius: number): number[] {
  return Array.from(
    { length: 10 },
    (_, k) => [(Math.PI * k) / 5, k % 2 === 0 ? radius : 0.45 * radius] as const,
  ).flatMap(([angle, r]) => [r * Math.cos(angle), r * Math.sin(angle)]);
}

/** Points of an ellipse; four of them at 45° are a rectangle's corners. */
function polar([a, b]: readonly [number, number], count: number, fromDeg: number): number[] {
  const grown = count === 4 ? Math.SQRT2 : 1;
  return Array.from(
    { length: count },
    (_, k) => (2 * Math.PI * k) / count + (Math.PI * fromDeg) / 180,
  ).flatMap((angle) => [a * grown * Math.cos(angle), b * grown * Math.sin(angle)]);
}

const onBoard: fc.Arbitrary<JobInput> = fc.record({
  bit: fc.constantFrom(['flat:1mm'], ['ball:3mm'], ['vee:60deg:1/2in'], ['vee:60deg:1/2in', 'flat:2mm']),
  depth: fc.constantFrom('2mm', '4mm'),
  board: fc.constantFrom('plain 200x120x25mm maple', 'stripes 200x120x25mm walnut:30mm maple:30mm'),
  turn: fc.constantFrom('0deg', '20deg', '90deg'),
  seal: fc.constant('epoxy'),
  boards: fc.constant(10),
});

const SHALLOW_VEE: JobInput = {
  bit: ['vee:60deg:1/2in'],
  depth: '2mm',
  board: 'plain 200x120x25mm maple',
  turn: '0deg',
  seal: 'epoxy',
  boards: 10,
};

const vetted = (ring: readonly number[], job: JobInput, turnDeg = 0): Report =>
  judgeDrawing(drawingOf([ring], { turnDeg }), 'law', settleJob(job)).report;
const gravityOf = ({ findings }: Report, code: string): number =>
  findings
    .filter((each) => each.code === code)
    .reduce((most, { severity }) => Math.max(most, ['note', 'caution', 'stop'].indexOf(severity)), -1);

const clamped = (job: JobInput, [x, y]: readonly [number, number], size: number): JobInput => ({
  ...job,
  keepClear: [`clamp ${x}mm,${y}mm ${size}x${size}mm`],
});

test('a closer clamp and a bigger clamp are never milder, and a clamp changes nothing else', () => {
  const clamp = fc.record({
    x: between(-10, 90),
    y: between(-10, 50),
    size: between(1, 60),
    share: between(0, 1),
    larger: between(1, 3),
  });
  fc.assert(
    fc.property(part, onBoard, clamp, (ring, job, { x, y, size, share, larger }) => {
      const at = vetted(ring, clamped(job, [x, y], size));
      const gravity = gravityOf(at, 'clamp-in-the-way');
      // half way to the middle of the artwork, which is that of the board
      const closer = vetted(ring, clamped(job, [x + share * (100 - x), y + share * (60 - y)], size));
      expect(gravityOf(closer, 'clamp-in-the-way')).toBeGreaterThanOrEqual(gravity);
      const bigger = vetted(ring, clamped(job, [x, y], larger * size));
      expect(gravityOf(bigger, 'clamp-in-the-way')).toBeGreaterThanOrEqual(gravity);
      expect(GRAVITY[bigger.verdict]).toBeGreaterThanOrEqual(GRAVITY[at.verdict]);
      const without = vetted(ring, job);
      expect(at.findings.filter(({ code }) => code !== 'clamp-in-the-way')).toEqual(without.findings);
    }),
    cases(12),
  );
});

test('the move that frees the bit does, and brings no stop of the board', () => {
  fc.assert(
    fc.property(part, onBoard, between(20, 180), between(10, 110), (ring, job, x, y) => {
      const at = clamped(job, [x, y], 20);
      const fix = vetted(ring, at)
        .findings.find(({ code }) => code === 'clamp-in-the-way')
        ?.fix.options.find((each) => each.do === 'move');
      if (fix?.do === 'move') {
        const [turn] = [Number.parseFloat(String(job.turn)) * (Math.PI / 180)];
        const [dx, dy] = [
          fix.rightMm * Math.cos(turn) + fix.downMm * Math.sin(turn),
          fix.downMm * Math.cos(turn) - fix.rightMm * Math.sin(turn),
        ];
        const moved = vetted(ring, { ...at, place: `${100 + dx}mm,${60 + dy}mm` });
        expect(gravityOf(moved, 'clamp-in-the-way')).toBeLessThan(2);
        expect(gravityOf(moved, 'off-the-board')).toBe(-1);
      }
    }),
    // random clamps may all miss
    { ...cases(20), examples: [[star(20), SHALLOW_VEE, 112, 60]] },
  );
});

test('a thickness alone is judged as that of a board, and a thinner one is never milder', () => {
  fc.assert(
    fc.property(
      part,
      onBoard,
      between(5, 30),
      between(0.2, 1),
      (ring, { board: _, turn: __, ...job }, mm, share) => {
        const of = (thickness: number): Report =>
          vetted(ring, { ...job, wood: 'maple', thickness: `${thickness}mm` });
        const thinner = Math.max(4.5, share * mm);
        expect(gravityOf(of(thinner), 'floor-too-thin')).toBeGreaterThanOrEqual(
          gravityOf(of(mm), 'floor-too-thin'),
        );
        const described = vetted(ring, { ...job, board: `plain 400x400x${mm}mm maple` });
        expect(gravityOf(described, 'floor-too-thin')).toBe(gravityOf(of(mm), 'floor-too-thin'));
      },
    ),
    cases(12),
  );
});

test('turning the artwork and the fibres together changes no finding, and end grain knows no azimuth', () => {
  const plain: fc.Arbitrary<JobInput> = fc.record({
    bit: fc.constantFrom(['flat:1mm'], ['vee:60deg:1/2in']),
    depth: fc.constantFrom('2mm', '4mm'),
    wood: fc.constantFrom('poplar', 'maple'),
    seal: fc.constantFrom('none', 'shellac', 'epoxy'),
    dive: fc.constantFrom('0deg', '30deg', '90deg'),
    boards: fc.constant(10),
  });
  const told = ({ findings }: Report): readonly string[] =>
    findings.map(({ code, severity, where }) => `${code} ${severity} ${where.length}`).toSorted();
  fc.assert(
    fc.property(
      part,
      part,
      plain,
      between(0.5, 3),
      fc.integer({ min: 1, max: 17 }),
      (one, other, job, gap, k) => {
        const right = Math.max(...one.filter((_, i) => i % 2 === 0));
        const left = Math.min(...other.filter((_, i) => i % 2 === 0));
        const beside = other.map((value, i) => (i % 2 === 0 ? value - left + right + gap : value));
        const of = (turnDeg: number, grainDeg: number): readonly string[] =>
          told(
            judgeDrawing(
              drawingOf([one, beside], { turnDeg }),
              'law',
              settleJob({ ...job, grain: `${grainDeg}deg` }),
            ).report,
          );
        // counter-clockwise as seen is against the turn of the drawing, whose y runs down
        expect(of(10 * k, 180 - 10 * k)).toEqual(of(0, 0));
        if (job.dive === '90deg') {
          expect(of(0, 10 * k)).toEqual(of(0, 0));
        }
      },
    ),
    cases(10),
  );
});

test('nearer to the edge a rim is never milder', () => {
  fc.assert(
    fc.property(part, onBoard, between(0, 60), between(0, 20), (ring, { turn: _, ...job }, mm, nearer) => {
      const at = (x: number): number =>
        gravityOf(vetted(ring, { ...job, place: `${x}mm,60mm` }), 'rim-too-thin');
      // the middle of its box lies at the place
      const xs = ring.filter((_v, i) => i % 2 === 0);
      const left = (Math.max(...xs) - Math.min(...xs)) / 2;
      // off the board has a finding of its own
      const near = Math.max(left + 0.2, left + mm - nearer);
      expect(at(near)).toBeGreaterThanOrEqual(at(left + 0.2 + mm));
    }),
    { ...cases(10), examples: [[star(5), SHALLOW_VEE, 0.28, 0]] },
  );
});

test('a deeper hole in the back, a wider one, a deeper cut and a further hole are never milder', () => {
  const hole = fc.record({
    x: between(60, 140),
    y: between(30, 90),
    size: between(2, 20),
    back: between(2, 24),
  });
  const deeper = fc.record({ by: between(0, 8), wider: between(0, 10) });
  const typed = ({ x, y, size, back }: { x: number; y: number; size: number; back: number }): string =>
    `hole ${x}mm,${y}mm ${size}mm back:${back}mm`;
  fc.assert(
    fc.property(part, onBoard, hole, hole, deeper, (ring, job, one, other, { by, wider }) => {
      const of = (keepClear: readonly string[], depth = job.depth): number =>
        gravityOf(vetted(ring, { ...job, depth, keepClear: [...keepClear] }), 'hole-under-pocket');
      const alone = of([typed(one)]);
      // as deep as the board is thick, it is off the board
      expect(of([typed({ ...one, back: Math.min(24.9, one.back + by) })])).toBeGreaterThanOrEqual(
        // beside the pocket and deeper than its floor it is a rim
        one.back + by > 21 ? -1 : alone,
      );
      expect(of([typed({ ...one, size: one.size + wider })])).toBeGreaterThanOrEqual(alone);
      expect(of([typed(one), typed(other)])).toBeGreaterThanOrEqual(alone);
      if (job.depth === '2mm' && one.back <= 21) {
        expect(of([typed(one)], '4mm')).toBeGreaterThanOrEqual(alone);
      }
    }),
    cases(10),
  );
});
