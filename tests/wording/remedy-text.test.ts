import { remedyText, type ToldRemedies } from '@pourproof/wording';
import { expect, test } from 'vitest';

const costs = { minutes: 2, massG: 3, price: null, hours: 16 };
const told: ToldRemedies = {
  before: { verdict: 'stop', open: ['high-bleed-wall'], costs },
  remedies: [
    {
      changes: [{ from: { seal: 'none' }, to: { seal: 'shellac', coats: 1, sealHours: '2h' } }],
      verdict: 'clear',
      remaining: [],
      costs,
      look: { areaMm2: 0, share: 0, shiftMm: 0, smallestHoleMm2: { before: null, after: null } },
    },
  ],
  nearest: null,
  tried: 3,
  isCutShort: false,
};

test('a change says what differs, and not what was assumed before and is said now', () => {
  const text = remedyText(told, {
    columns: 100,
    unit: 'mm',
    artwork: '"Ann"',
    clear: 'stops',
    usual: (key) => ({ coats: '1', sealHours: '24h' })[key as string] ?? '',
  });
  expect(text).toContain('1. seal none → shellac, seal-hours 24h → 2h\n');
  expect(text).toContain('the drawing stays as it is.');
});
