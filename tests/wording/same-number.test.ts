import { settleJob } from '@pourproof/job';
import { judgeDrawing } from '@pourproof/proof';
import { findingEntries } from '@pourproof/wording';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between } from '../arbitraries.ts';
import { drawingOf, rectangle } from '../support/drawing-of.ts';
import { cases } from '../support/lane.ts';

/** Lengths, areas and masses in a sentence. */
const AMOUNT = /\d+(?:\.\d+)? (?:mm²|mm|in²|in|g)(?![\w²])/gu;

test('what a headline says with a unit is what stands beside it as measured, limit or size of a place', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(between(3, 40), between(0.3, 5), between(0.4, 4)), { minLength: 1, maxLength: 4 }),
      fc.constantFrom('flat:1mm', 'flat:2mm', 'vee:60deg:6mm'),
      fc.constantFrom('mm' as const, 'in' as const),
      between(0.1, 3),
      (bars, bit, units, levelMm) => {
        let y = 0;
        const rings = bars.map(([length, width, gap]) => {
          const ring = rectangle(0, y, length, width);
          y += width + gap;
          return ring;
        });
        const job = settleJob({
          bit: [bit],
          depth: '3mm',
          seal: 'none',
          level: `${levelMm}mm`,
          units,
          board: 'plain 80x60x12mm poplar',
        });
        const { findings } = judgeDrawing(drawingOf(rings), 'same', job).report;
        for (const entry of findingEntries({ findings }, job)) {
          expect(entry.measured.replace(/ (?:wide|short|clear|along|across).*/u, '')).not.toBe(entry.limit);
          const beside = [entry.measured, entry.limit, ...entry.places.map(({ text }) => text)].join(' ');
          for (const [said] of entry.headline.matchAll(AMOUNT)) {
            // a bit is called by its own size: 2 mm, 1/8 in
            expect(`${beside} 1 mm 2 mm`, `${entry.code}: ${entry.headline}`).toContain(said);
          }
        }
      },
    ),
    cases(40),
  );
});
