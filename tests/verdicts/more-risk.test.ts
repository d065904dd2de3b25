import type { JobInput } from '@pourproof/job';
import type { FindingCode, Report } from '@pourproof/proof';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cases } from '../support/lane.ts';
import { part, vetted } from './random-jobs.ts';

/** One step to more risk: a change of the job, and the findings of the safer job that say why it may be the worse one. */
interface Step {
  readonly what: string;
  readonly safer: JobInput;
  readonly riskier: JobInput;
  readonly saysWhy: readonly FindingCode[];
}

const SEALED: JobInput = { seal: 'epoxy', sealHours: '24h' };

const STEPS: readonly Step[] = [
  // more film leaves less room for colour
  ...[1, 2, 3].map((coats) => ({
    what: `${coats} coats instead of ${coats + 1}`,
    safer: { ...SEALED, coats: coats + 1 },
    riskier: { ...SEALED, coats },
    // a seal that stops more may be thicker, or want longer before the pour
    saysWhy: ['ghost-stroke', 'sands-through', 'seal-not-cured'] as const,
  })),
  ...(
    [
      ['shellac', 'epoxy'],
      ['sanding-sealer', 'shellac'],
      ['none', 'sanding-sealer'],
    ] as const
  ).map(([weaker, stronger]) => ({
    what: `${weaker} instead of ${stronger}`,
    safer: { seal: stronger },
    riskier: { seal: weaker },
    // a seal that stops more may be thicker, or want longer before the pour
    saysWhy: ['ghost-stroke', 'sands-through', 'seal-not-cured'] as const,
  })),
  ...['0h', '1h', '3h', '9h'].flatMap((sealHours) =>
    ['12h', '24h'].map((longer) => ({
      what: `${sealHours} before the pour instead of ${longer}`,
      safer: { seal: 'epoxy', sealHours: longer },
      riskier: { seal: 'epoxy', sealHours },
      saysWhy: [],
    })),
  ),
  {
    what: 'a day before the pour instead of three',
    safer: { seal: 'epoxy', sealHours: '72h' },
    riskier: { seal: 'epoxy', sealHours: '24h' },
    saysWhy: ['seal-past-bond'],
  },
  ...(
    [
      ['cherry', 'maple'],
      ['poplar', 'cherry'],
      ['red-oak', 'white-oak'],
      ['ash', 'white-oak'],
      ['beech', 'mahogany'],
      ['basswood', 'wenge'],
    ] as const
  ).map(([open, closed]) => ({
    what: `${open} instead of ${closed}`,
    safer: { wood: closed },
    riskier: { wood: open },
    saysWhy: [],
  })),
  {
    what: 'a dye instead of a paste',
    safer: { colour: 'blue', colourant: 'pigment' },
    riskier: { colour: 'blue', colourant: 'dye' },
    // a dye hides less, but its tint is full in less depth than a paste takes to hide
    saysWhy: ['sands-through'],
  },
  {
    what: 'deep-pour resin instead of coating resin',
    safer: { resin: 'coating' },
    riskier: { resin: 'deep-pour' },
    // a slow resin has its merits: deep pockets, large cups, time to fill
    saysWhy: ['pour-too-deep', 'cup-too-large', 'pour-hurried'],
  },
  {
    what: 'a shop 8 °C warmer',
    safer: { shopTemp: '18C' },
    riskier: { shopTemp: '26C' },
    saysWhy: [],
  },
  ...(
    [
      ['tenth', 'fine'],
      ['kitchen', 'tenth'],
    ] as const
  ).map(([coarser, finer]) => ({
    what: `the scale ${coarser} instead of ${finer}`,
    safer: { weigh: finer },
    riskier: { weigh: coarser },
    saysWhy: [],
  })),
];

const GRAVITY = { note: 0, caution: 1, stop: 2 } as const;

/** Where less film stands in the pockets or more is drunk there is more to weigh, so that the safer job may have too little. */
const LESS_TO_WEIGH: readonly FindingCode[] = ['batch-too-small', 'pour-hurried'];

/** The gravest finding, those apart that say why. */
function gravest({ findings }: Report, apart: readonly FindingCode[]): number {
  return Math.max(
    0,
    ...findings.filter(({ code }) => !apart.includes(code)).map(({ severity }) => GRAVITY[severity]),
  );
}

/** Little else speaks against these jobs, so that the step decides. */
const calm = fc.record({
  bit: fc.constant(['flat:1mm']),
  depth: fc.constant('3mm'),
  level: fc.constant('0.5mm'),
  wood: fc.constantFrom('poplar', 'cherry', 'maple', 'walnut', 'red-oak', 'white-oak'),
  grain: fc.constantFrom('0deg', '30deg', '90deg'),
  seal: fc.constantFrom('none', 'sanding-sealer', 'shellac', 'epoxy'),
  sealHours: fc.constantFrom('1h', '4h', '24h'),
  resin: fc.constantFrom('coating', 'laminating', 'deep-pour'),
  weigh: fc.constantFrom('fine', 'tenth', 'kitchen'),
  boards: fc.constantFrom(1, 4, 30),
  colour: fc.constantFrom('black', 'white', undefined),
});

describe('more risk never looks better', () => {
  test.each(STEPS)('$what', ({ safer, riskier, saysWhy }) => {
    fc.assert(
      fc.property(part, calm, (ring, input) => {
        const at = (step: JobInput): Report => vetted([ring], { ...input, ...step });
        expect(gravest(at(riskier), [])).toBeGreaterThanOrEqual(
          gravest(at(safer), [...LESS_TO_WEIGH, ...saysWhy]),
        );
      }),
      cases(25),
    );
  });
});
