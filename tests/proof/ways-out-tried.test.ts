import { type JobInput, settleJob, typedJob } from '@pourproof/job';
import { type Drawing, scaling, transformRings } from '@pourproof/plane';
import { applyFix, type Finding, type Fix, judgeDrawing, type Report, vetDrawing } from '@pourproof/proof';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { between } from '../arbitraries.ts';
import { drawingOf, rectangle } from '../support/drawing-of.ts';
import { fixOf, waysOut } from '../support/fix-of.ts';
import { cases } from '../support/lane.ts';

const CALM: JobInput = {
  bit: ['flat:2mm'],
  depth: '3mm',
  wood: 'maple',
  seal: 'epoxy',
  sealHours: '24h',
  level: '0.5mm',
  weigh: 'fine',
  boards: 10,
};
const GRAVITY = { note: 1, caution: 2, stop: 3 } as const;

const vetted = (drawing: Drawing, job: JobInput): Report =>
  vetDrawing(drawing, 'tried', settleJob(job)).report;
const judged = (drawing: Drawing, job: JobInput): Report =>
  judgeDrawing(drawing, 'tried', settleJob(job)).report;
const find = ({ findings }: Report, code: string): Finding | undefined =>
  findings.find((finding) => finding.code === code);

/** The drawing and the job as a maker has them who follows a way out: everything typed, the artwork in its new size. */
function followed(drawing: Drawing, job: JobInput, fix: Fix): [Drawing, JobInput] | null {
  const changed = applyFix(job, fix);
  if (changed === null) {
    return null;
  }
  const { scale = 1, ...typed } = typedJob(changed);
  const shapes = drawing.shapes.map((shape) => ({
    ...shape,
    region: { ...transformRings(scaling(scale), shape.region), fillRule: shape.region.fillRule },
  }));
  return [{ ...drawing, shapes }, typed as JobInput];
}

/** What is wrong with a way out; empty where it holds what it says. */
function broken(drawing: Drawing, job: JobInput, before: Report, finding: Finding, fix: Fix): string[] {
  const made = followed(drawing, job, fix);
  if (made === null) {
    return [];
  }
  const after = judged(...made);
  const left = find(after, finding.code);
  const asGrave = after.findings.filter(
    ({ code, severity }) =>
      code !== finding.code &&
      GRAVITY[severity] >= GRAVITY[finding.severity] &&
      GRAVITY[severity] >
        Math.max(
          0,
          ...before.findings.filter((each) => each.code === code).map((each) => GRAVITY[each.severity]),
        ),
  );
  const what = `${finding.code}: ${JSON.stringify(fix)}`;
  return [
    ...(fix.clears && left !== undefined ? [`${what} does not clear it`] : []),
    ...(!fix.clears && left !== undefined && left.severity !== fix.leaves?.severity
      ? [`${what} leaves a ${left.severity}`]
      : []),
    ...asGrave
      .filter(({ code }) => fix.brings?.includes(code) !== true)
      .map(({ code }) => `${what} brings ${code}`),
  ];
}

/** Bars, squares and stars some 10 to 40 mm across. */
const part: fc.Arbitrary<number[]> = fc.oneof(
  fc.tuple(between(8, 40), between(0.3, 8)).map(([length, width]) => rectangle(0, 0, length, width)),
  fc
    .tuple(between(6, 15), between(0.2, 0.6), fc.integer({ min: 4, max: 7 }))
    .map(([radius, inner, tips]) =>
      Array.from({ length: 2 * tips }, (_, k) => (k % 2 === 0 ? radius : radius * inner)).flatMap((r, k) => [
        r * Math.cos((Math.PI * k) / tips),
        r * Math.sin((Math.PI * k) / tips),
      ]),
    ),
);

const job: fc.Arbitrary<JobInput> = fc.record({
  bit: fc.constantFrom(
    ['flat:1mm'],
    ['flat:3mm'],
    ['ball:2mm'],
    ['vee:60deg:1/2in'],
    ['vee:60deg:6mm:tip 0.5mm'],
  ),
  depth: fc.constantFrom('1.5mm', '3mm', '1/4in', '12mm'),
  wood: fc.constantFrom('poplar', 'maple', 'walnut', 'red-oak'),
  grain: fc.constantFrom('0deg', '30deg', '90deg'),
  seal: fc.constantFrom('none', 'shellac', 'epoxy'),
  sealHours: fc.constantFrom('1h', '24h'),
  level: fc.constantFrom('0.3mm', '1mm', '2mm'),
  weigh: fc.constantFrom('kitchen', 'tenth', 'fine'),
  boards: fc.constantFrom(1, 10),
  shopTemp: fc.constantFrom('12C', '21C', '32C'),
});

test('every way out of any job, followed as typed, holds what it says and changes something', () => {
  fc.assert(
    fc.property(fc.array(part, { minLength: 1, maxLength: 2 }), job, (parts, drawn) => {
      const rings = parts.map((ring, k) => ring.map((v, i) => (i % 2 === 0 ? v + 60 * k : v)));
      const input = drawn.seal === 'none' ? { ...drawn, sealHours: undefined } : drawn;
      const drawing = drawingOf(rings);
      const before = vetted(drawing, input);
      for (const finding of before.findings) {
        for (const fix of finding.fix.options) {
          expect(broken(drawing, input, before, finding, fix)).toEqual([]);
          const made = applyFix(input, fix);
          if (made !== null) {
            expect(typedJob(made)).not.toEqual(typedJob(input));
          }
        }
      }
    }),
    cases(12),
  );
});

test('what is vetted and what is judged have the same findings: only the ways out differ', () => {
  const drawing = drawingOf([rectangle(0, 0, 44, 1.5), rectangle(0, 10, 44, 6)]);
  const bare = ({ findings, verdict }: Report) => [
    verdict,
    findings.map(({ fix: _, ...finding }) => finding),
  ];
  expect(bare(vetted(drawing, CALM))).toEqual(bare(judged(drawing, CALM)));
});

describe('a way out is dropped, completed or told with what it brings', () => {
  const square = drawingOf([rectangle(0, 0, 40, 40)]);
  const onBoard = { ...CALM, wood: undefined };

  test('a shallower cut that levelling would sand through takes less levelling with it', () => {
    const thin = { ...onBoard, board: 'plain 100x100x5mm maple' };
    expect(fixOf(find(vetted(square, thin), 'floor-too-thin'), 'cut-shallower')?.also).toBeUndefined();
    const sanded = find(vetted(square, { ...thin, level: '1.5mm' }), 'floor-too-thin');
    const shallower = fixOf(sanded, 'cut-shallower');
    expect(shallower?.also?.map((step) => step.do)).toEqual(['level-less']);
    expect(waysOut(sanded, 'mm').join(' ')).toMatch(/It also takes this: Take \d/u);
  });

  test('a deeper cut takes a thicker board with it where the board is too thin for it', () => {
    const job = { ...onBoard, board: 'plain 100x100x6mm maple', level: '2mm' };
    const before = vetted(square, job);
    const finding = find(before, 'sands-through');
    const deepen = fixOf(finding, 'deepen');
    expect(deepen?.also?.map((step) => step.do)).toEqual(['thicker-board']);
    expect(broken(square, job, before, finding as Finding, deepen as Fix)).toEqual([]);
  });

  test('a bit much deeper than wide is asked for with the length of its edge', () => {
    const slot = drawingOf([rectangle(0, 0, 40, 1.5), rectangle(0, 10, 40, 6)]);
    const finding = find(vetted(slot, { ...CALM, depth: '5mm' }), 'bit-cannot-enter');
    const bit = fixOf(finding, 'use-bit');
    expect(bit?.edgeMm).toBe(5);
    expect(applyFix(CALM, bit as Fix)?.bit?.at(-1)).toBe(`flat:${bit?.diameterMm}mm:length 5mm`);
    expect(
      fixOf(find(vetted(slot, { ...CALM, depth: '2mm' }), 'bit-cannot-enter'), 'use-bit')?.edgeMm,
    ).toBeUndefined();
  });

  test('where none holds, the finding says what was tried and what binds', () => {
    const finding: Finding = {
      code: 'sands-through',
      severity: 'caution',
      where: [],
      measured: { value: 0.4, quantity: 'depth', unit: 'mm' },
      limit: { value: 1, quantity: 'depth', unit: 'mm' },
      because: ['own-inference'],
      fix: {
        options: [],
        dropped: [{ fix: { do: 'deepen', byMm: 0.6, clears: true }, brings: ['pour-too-deep'] }],
      },
    };
    expect(waysOut(finding, 'mm')[0]).toMatch(/^Tried, but it brings “.+”: Cut 0\.60 mm deeper\.$/u);
  });
});

describe('coupons that name no seal were cut with that of the job', () => {
  const slots = ['3mm', '4mm', '5mm'];
  const bare: JobInput = { ...CALM, wood: 'cherry', seal: 'none', sealHours: undefined };
  const bar = drawingOf([rectangle(0, 0, 6, 40)]);

  test('so that another seal is offered with what has to be written into them', () => {
    const job = { ...bare, coupons: [{ slots }, { seal: 'none', coats: 1, sealHours: '24h', slots }] };
    const before = vetted(bar, job);
    const finding = find(before, 'high-bleed-wall');
    const seal = fixOf(finding, 'change-seal');
    expect(seal?.couponRows).toEqual([1]);
    expect(waysOut(finding, 'mm').join(' ')).toContain(
      'Before that, write into row 1 of the coupons what the job says now, for it was cut with it.',
    );
    expect(broken(bar, job, before, finding as Finding, seal as Fix)).toEqual([]);
    const [first, second] = applyFix(job, seal as Fix)?.coupons ?? [];
    expect(first).toEqual({ seal: 'none', coats: 1, sealHours: '24h', slots });
    expect(second).toEqual(job.coupons[1]);
  });

  test('and without that they would be taken for coupons of the new seal', () => {
    const coupons = [{ slots }];
    const before = vetted(bar, { ...bare, coupons });
    const finding = find(before, 'high-bleed-wall');
    const seal = fixOf(finding, 'change-seal');
    expect(seal?.clears).toBe(true);
    const beside = applyFix(bare, seal as Fix, { coupons });
    expect(beside?.coupons).toEqual([{ seal: 'none', coats: 1, sealHours: '24h', slots }]);
    expect(find(judged(bar, beside ?? {}), 'high-bleed-wall')).toBeUndefined();
    expect(find(judged(bar, { ...beside, coupons }), 'high-bleed-wall')).toBeDefined();
  });
});
