import { remedyText, type ToldRemedies } from '@pourproof/wording';
import { expect, test } from 'vitest';

const costs = { minutes: 2, massG: 3, price: null, hours: 16 };
const told: ToldRemedies = {
  before: { verdict: 'stop', open: ['high-bleed-wall'], toClear: ['high-bleed-wall'], costs },
  remedies: [
    {
      changes: [{ from: { seal: 'none' }, to: { seal: 'shellac', coats: 1, sealHours: '2h' } }],
      verdict: 'clear',
      remaining: [],
      costs,
      look: {
        areaMm2: 0,
        addedMm2: 0,
        removedMm2: 0,
        share: 0,
        sizeMm: { before: [40, 10], after: [40, 10] },
        shiftMm: 0,
        smallestHoleMm2: { before: null, after: null },
      },
    },
  ],
  nearest: null,
  tried: 3,
  ended: 'all-tried',
};

const options = {
  columns: 100,
  unit: 'mm',
  artwork: '"Ann"',
  clear: 'stops',
  usual: (key: string) => ({ coats: '1', sealHours: '24h', widen: 'as drawn' })[key] ?? '',
} as const;
const [first] = told.remedies as [ToldRemedies['remedies'][number]];
const lookOf = (look: Partial<typeof first.look>): string =>
  remedyText(
    { ...told, remedies: [{ ...first, look: { ...first.look, ...look } }] },
    { ...options, columns: 300 },
  );

test('a change is told as it is typed, with what was so far, and not what was assumed before and is said now', () => {
  const text = remedyText(told, options);
  expect(text).toContain('1. --seal shellac (none so far), --seal-hours 2h (24h so far)\n');
  expect(text).toContain('the drawing stays as it is.');
  const bits = { from: { bit: ['flat:2mm'] }, to: { bit: ['flat:2mm', 'flat:1mm'] } };
  const inches = { from: {}, to: { bit: ['flat:0.03125in'] } };
  expect(remedyText({ ...told, remedies: [{ ...first, changes: [inches] }] }, options)).toContain(
    '--bit flat:1/32in',
  );
  const widened = { from: {}, to: { widen: '0.4mm' } };
  const both = remedyText({ ...told, remedies: [{ ...first, changes: [bits, widened] }] }, options);
  expect(both).toContain(
    '1. --bit flat:2mm --bit flat:1mm (flat:2mm so far); --widen 0.4mm (as drawn so far)',
  );
});

test.each([
  [
    { areaMm2: 12, addedMm2: 12, share: 0.04, shiftMm: 0.2, smallestHoleMm2: { before: 15.4, after: 14.9 } },
    'the drawing (300.0 mm²) gains 4.0 % of its area; no outline moves by more than 0.20 mm; the smallest counter has 14.9 mm² instead of 15.4 mm².',
  ],
  [
    { areaMm2: 3, removedMm2: 3, share: 0.01, shiftMm: 0.1 },
    'the drawing (300.0 mm²) loses 1.0 % of its area; no outline moves by more than 0.10 mm.',
  ],
  [
    { areaMm2: 9, addedMm2: 6, removedMm2: 3, share: 0.03, shiftMm: 1 },
    'gains 2.0 % of its area and loses 1.0 % of its area; no outline moves by more than 1.00 mm.',
  ],
  [
    { areaMm2: 400, addedMm2: 400, share: 1, shiftMm: 9, sizeMm: { before: [40, 10], after: [60, 15] } },
    'look   60.00 mm by 15.00 mm instead of 40.00 mm by 10.00 mm.',
  ],
] as const)('%j: %s', (look, said) => {
  expect(lookOf(look)).toContain(said);
});

test('a search that was stopped says so', () => {
  expect(remedyText({ ...told, ended: 'stopped' }, { ...options, columns: 300 })).toContain(
    'The search was stopped after 3 jobs: there may be other ways, and better ones.',
  );
});
