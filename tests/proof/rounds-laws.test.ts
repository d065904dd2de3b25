import type { JobInput } from '@pourproof/job';
import { type Report, reportSchema } from '@pourproof/proof';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '../support/drawing-of.ts';
import { cases } from '../support/lane.ts';
import type { Painted } from '../support/painted.ts';
import { apart, BLACK, BLUE, RED, vettedRounds, within } from '../support/rounds-job.ts';

const coord = fc.integer({ min: 0, max: 50 });
const size = fc.integer({ min: 6, max: 30 });
const shapes: fc.Arbitrary<readonly Painted[]> = fc
  .array(
    fc
      .tuple(fc.constantFrom(BLACK, RED, BLUE), coord, coord, size, size)
      .map(([colour, x, y, width, height]): Painted => [colour, rectangle(x, y, width, height)]),
    { minLength: 2, maxLength: 5 },
  )
  .filter((all) => new Set(all.map(([colour]) => colour)).size > 1);
const bits = fc.constantFrom<JobInput>(
  { bit: ['flat:2mm'] },
  { bit: ['flat:3mm', 'flat:1mm'] },
  { bit: ['vee:60deg:1/2in'] },
);
/** Bits of its own for a round, or those of the job. */
const own = fc.constantFrom('', ' with flat:1.5mm', ' with vee:60deg:1/2in+flat:2mm', ' with ball:3mm');
const names = (all: readonly Painted[]): readonly string[] => [
  ...new Set(all.map(([colour]) => String(colour))),
];

describe('laws of rounds', () => {
  test('a job of one colour is the same with rounds and without', () => {
    const one: readonly Painted[] = [[BLACK, rectangle(0, 0, 40, 20)]];
    const { rounds, ...report } = vettedRounds(one, { rounds: 'black' });
    expect(rounds).toBeUndefined();
    expect(report).toEqual(vettedRounds(one));
    expect(vettedRounds(one, { rounds: 'black:2mm' }).cut).toEqual(vettedRounds(one, { depth: '2mm' }).cut);
  });

  test('wood that is gone is what all rounds remove less what they take out of cured resin', () => {
    fc.assert(
      fc.property(shapes, bits, fc.constantFrom('0mm', '0.3mm', '1mm'), (all, bit, level) => {
        const { cut, rounds = [] } = vettedRounds(all, { ...bit, level, rounds: names(all).join(', ') });
        const wood = rounds.reduce((sum, { volumeMm3, resinMm3 }) => sum + volumeMm3 - resinMm3, 0);
        expect(cut.volumeMm3).toBeCloseTo(wood, 4);
        for (const { resinMm3, volumeMm3 } of rounds) {
          expect(resinMm3).toBeLessThanOrEqual(volumeMm3);
        }
        // without levelling between, the same wood is gone as in one cut, whatever the order; where several shapes meet, one cut reaches
        // corners that none of the rounds does
        if (level === '0mm') {
          const once = vettedRounds(all, bit).cut;
          expect(cut.areaMm2).toBeLessThanOrEqual(once.areaMm2 * (1 + 1e-4));
          expect(cut.volumeMm3).toBeLessThanOrEqual(once.volumeMm3 * (1 + 1e-4));
        }
      }),
      cases(12),
    );
  });

  test('any job of rounds gives a report of its schema, and more levelling never a milder verdict', () => {
    const board = fc.constantFrom<JobInput>(
      {},
      { wood: undefined, grain: undefined, board: 'stripes 300x180x20mm maple:60mm walnut:20mm' },
      {
        wood: undefined,
        grain: undefined,
        board: 'end-grain-checkerboard 320x320x12mm maple walnut square:40mm',
        turn: '20deg',
      },
    );
    const any = fc.constantFrom<JobInput>(
      { bit: ['flat:3mm', 'flat:1mm'] },
      { bit: ['ball:3mm'] },
      { bit: ['vee:60deg:1/2in', 'flat:2mm'] },
      { bit: ['taper:1mm:10deg:6mm'] },
    );
    const seal = fc.constantFrom('none', 'shellac', 'epoxy');
    const gravity = { clear: 0, caution: 1, stop: 2 };
    fc.assert(
      fc.property(shapes, board, any, seal, fc.boolean(), own, (all, on, bit, coat, isDeep, bits) => {
        const rounds = names(all)
          .map((name, k) => (isDeep && k > 0 ? `${name}:4mm${bits}` : name))
          .join(', ');
        const job = { ...on, ...bit, seal: coat, rounds };
        const [less, more] = ['0.3mm', '1mm'].map((level) => vettedRounds(all, { ...job, level }));
        expect(reportSchema.safeParse(less).error).toBeUndefined();
        expect(gravity[more?.verdict ?? 'clear']).toBeGreaterThanOrEqual(gravity[less?.verdict ?? 'clear']);
      }),
      cases(8),
    );
  });

  test('colours apart are cut, filled and weighed in rounds as at once, in any order', () => {
    const once = vettedRounds(apart);
    for (const rounds of ['black, red', 'red, black']) {
      const report = vettedRounds(apart, { rounds });
      expect(report.cut.areaMm2).toBeCloseTo(once.cut.areaMm2, 9);
      expect(report.cut.volumeMm3).toBeCloseTo(once.cut.volumeMm3, 9);
      expect(report.cut.wallLengthMm).toBeCloseTo(once.cut.wallLengthMm, 9);
      expect(report.rounds?.map(({ resinMm3 }) => resinMm3)).toEqual([0, 0]);
      const grams = ({ pour }: Report) =>
        Object.fromEntries(pour.colours.map(({ name, massG }) => [name, massG]));
      expect(grams(report)).toEqual(grams(once));
      expect(report.verdict).toBe('clear');
    }
  });

  test('the face ends as it is drawn, whatever the order of the rounds', () => {
    fc.assert(
      fc.property(shapes, fc.boolean(), (all, isReversed) => {
        const order = isReversed ? names(all).toReversed() : names(all);
        const report = vettedRounds(all, { bit: ['flat:0.5mm'], rounds: order.join(', ') });
        // what a round cuts is all of it poured; in the end later ones have taken what they cover
        const poured = (report.rounds ?? []).reduce((sum, { cutAreaMm2 }) => sum + cutAreaMm2, 0);
        expect(poured).toBeGreaterThanOrEqual(report.cut.areaMm2 - 1e-6);
        const last = report.rounds?.at(-1);
        const seen = vettedRounds(all, { bit: ['flat:0.5mm'], overpour: '0mm', wastePct: 0, boards: 1 }).pour
          .colours;
        const ofLast = seen.find(({ name }) => name === last?.colours[0]);
        // the last round cuts just what is seen of its colour, less the corners that its bit leaves
        const share = (ofLast?.volumeMl ?? 0) / seen.reduce((sum, { volumeMl }) => sum + volumeMl, 0);
        expect(last?.cutAreaMm2).toBeGreaterThan(share * report.artwork.areaMm2 * 0.9 - 6);
        expect(last?.cutAreaMm2).toBeLessThan(share * report.artwork.areaMm2 * 1.1 + 6);
      }),
      cases(12),
    );
  });

  test('the last round finds of a shape apart what it finds of it alone', () => {
    const thin: Painted = [RED, rectangle(60, 0, 44, 1.5)];
    const alone = vettedRounds([thin]);
    const last = vettedRounds([[BLACK, rectangle(0, 0, 40, 40)], thin], { rounds: 'black, red' });
    const found = last.findings.find(({ code }) => code === 'bit-cannot-enter');
    const { fix: _, round, ...rest } = found ?? {};
    expect(round).toBe(2);
    const { fix: __, ...ofAlone } = alone.findings.find(({ code }) => code === 'bit-cannot-enter') ?? {};
    expect(rest).toEqual(ofAlone);
  });

  test('what was poured first loses every levelling, and more levelling never makes it milder', () => {
    const levelled = vettedRounds(within, { rounds: 'black, red' }).rounds?.map(
      ({ levelledMm }) => levelledMm,
    );
    expect(levelled).toEqual([1, 0.5]);
    const gravity = { clear: 0, caution: 1, stop: 2 };
    const verdicts = ['0.2mm', '0.5mm', '1mm', '1.3mm', '1.5mm', '2.5mm'].map(
      (level) => gravity[vettedRounds(within, { rounds: 'black, red', level }).verdict],
    );
    expect(verdicts).toEqual(verdicts.toSorted((a, b) => a - b));
    const worn = vettedRounds(within, { rounds: 'black, red', level: '1.5mm' }).findings.find(
      ({ code }) => code === 'sands-through',
    );
    expect([worn?.severity, worn?.round]).toEqual(['stop', 1]);
  });
});
