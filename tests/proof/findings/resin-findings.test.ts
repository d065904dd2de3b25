import { type JobInput, readMaterialsFile, settleJob } from '@pourproof/job';
import { judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { CALM, findOnCalm, POCKET } from '../../support/calm-job.ts';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf } from '../../support/fix-of.ts';

describe('batch-too-small', () => {
  test('fires on a mix that a kitchen scale cannot split, and a finer scale clears it', () => {
    const finding = findOnCalm(POCKET, 'batch-too-small', { weigh: 'kitchen', boards: 1 });
    expect(finding?.severity).toBe('caution');
    expect(finding?.fix.options.map((option) => option.do)).toContain('use-scale');
    expect(findOnCalm(POCKET, 'batch-too-small', { weigh: 'fine', boards: 1 })).toBeUndefined();
  });

  test('is only a note where no scale is named and none is fine enough, and where zeroing between the parts is enough', () => {
    // 40 × 20 mm, 3 mm deep: about 3 g, and a 0.1 g scale needs 5.9 g zeroed, 8.6 g on a running total
    expect(findOnCalm(POCKET, 'batch-too-small', { boards: 1 })).toBeUndefined();
    // 0.2 g is too little for the finest scale of the list too
    const slot = drawingOf([rectangle(0, 0, 12, 3.5)]);
    expect(findOnCalm(slot, 'batch-too-small', { boards: 1 })?.severity).toBe('note');
    expect(findOnCalm(POCKET, 'batch-too-small', { boards: 1, weigh: 'tenth' })?.severity).toBe('caution');
    const zeroed = findOnCalm(POCKET, 'batch-too-small', { boards: 2, weigh: 'tenth' });
    expect(zeroed?.severity).toBe('note');
    expect(zeroed?.fix.options[0]?.do).toBe('zero-between');
  });

  test('is silent when enough boards are mixed at once', () => {
    expect(findOnCalm(POCKET, 'batch-too-small', { weigh: 'kitchen', boards: 60 })).toBeUndefined();
  });
});

describe('mix-too-small', () => {
  test('is a note below the smallest true mix, a caution well below it, and mixing that much is the way out', () => {
    const slot = (length: number) => drawingOf([rectangle(0, 0, length, 3.5)]);
    const one: JobInput = { boards: 1, weigh: 'fine' };
    // 1.18 g at 5 % of the ratio, 0.55 g at 10 %
    expect(findOnCalm(slot(60), 'mix-too-small', one)?.severity).toBe('note');
    const grave = findOnCalm(slot(25), 'mix-too-small', one);
    expect(grave?.severity).toBe('caution');
    expect(fixOf(grave, 'mix-more')?.massG).toBe(1.2);
    expect(findOnCalm(slot(60), 'mix-too-small', { ...one, boards: 2 })).toBeUndefined();
  });
});

describe('ratio-mistaken', () => {
  const mixed = (entry: object) =>
    judgeDrawing(
      POCKET,
      'test',
      settleJob(
        { ...CALM, resin: 'mine' },
        {
          materials: readMaterialsFile(
            { schema: 'pourproof/materials@1', resins: { mine: { like: 'coating', ...entry } } },
            'materials.json',
          ),
        },
      ),
    ).report.findings.find(({ code }) => code === 'ratio-mistaken');

  test('is a stop where two to one by volume was entered as by weight', () => {
    const finding = mixed({ ratioByWeight: { a: 2, b: 1 } });
    expect(finding?.severity).toBe('stop');
    expect(finding?.measured.value).toBeCloseTo(19.79, 2);
    expect(fixOf(finding, 'read-label')?.ratio).toBe('by-volume');
  });

  test('is silent on the label’s own ratios, and once both are given', () => {
    expect(mixed({ ratioByWeight: { a: 100, b: 42 } })).toBeUndefined();
    expect(mixed({ ratioByVolume: { a: 2, b: 1 } })).toBeUndefined();
    expect(mixed({ ratioByWeight: { a: 2, b: 1 }, ratioByVolume: { a: 2, b: 1 } })).toBeUndefined();
  });
});

describe('another resin', () => {
  test('is offered only where it stains no worse, suits the shop and takes no more layers', () => {
    const deep = (job: JobInput) =>
      fixOf(findOnCalm(POCKET, 'pour-too-deep', { depth: '6mm', ...job }), 'use-resin');
    expect(deep({})?.resin).toBe('deep-pour');
    // moderate under shellac, severe with a resin that runs twice as far
    expect(deep({ wood: 'cherry', seal: 'shellac' })).toBeUndefined();
    expect(deep({ shopTemp: '16C' })).toBeUndefined();
  });
});

describe('pour-too-deep', () => {
  test('fires when depth and overpour pass one pour of coating resin, 6 mm', () => {
    const finding = findOnCalm(POCKET, 'pour-too-deep', { depth: '6mm' });
    expect(finding?.measured.value).toBeCloseTo(6.5, 9);
    expect(finding?.fix.options).toEqual([
      { do: 'pour-in-layers', layers: 2, clears: true },
      { do: 'use-resin', resin: 'deep-pour', clears: true },
    ]);
  });

  test('is silent at 5.5 mm, and for a resin made for depth or labelled so', () => {
    expect(findOnCalm(POCKET, 'pour-too-deep', { depth: '5.5mm' })).toBeUndefined();
    expect(findOnCalm(POCKET, 'pour-too-deep', { depth: '6mm', resin: 'deep-pour' })).toBeUndefined();
    const book = readMaterialsFile(
      { schema: 'pourproof/materials@1', resins: { coating: { deepestPourMm: 10 } } },
      'materials.json',
    );
    const { findings } = judgeDrawing(
      POCKET,
      'test',
      settleJob({ ...CALM, depth: '6mm' }, { materials: book }),
    ).report;
    expect(findings.map((finding) => finding.code)).not.toContain('pour-too-deep');
  });
});

describe('seal-not-cured', () => {
  test('fires on epoxy poured over after an hour, and the wait it asks for clears it', () => {
    const finding = findOnCalm(POCKET, 'seal-not-cured', { sealHours: '1h' });
    expect(finding).toMatchObject({ severity: 'caution', limit: { value: 2, quantity: 'time', unit: 'h' } });
    expect(fixOf(finding, 'wait')).toEqual({ do: 'wait', hours: 1, warmthHelps: true, clears: true });
    expect(findOnCalm(POCKET, 'seal-not-cured', { sealHours: '2h' })).toBeUndefined();
  });

  test('is silent from the tacky window on, though the coat has not cured', () => {
    for (const sealHours of ['5h', '10h', '24h']) {
      expect(findOnCalm(POCKET, 'seal-not-cured', { sealHours })).toBeUndefined();
    }
  });

  test('follows the temperature of the shop: 2 h at 25 °C are 4 h at 15 °C', () => {
    const cold = (sealHours: string) => findOnCalm(POCKET, 'seal-not-cured', { sealHours, shopTemp: '15C' });
    expect(cold('3h')?.limit.value).toBeCloseTo(4, 9);
    expect(cold('4h')).toBeUndefined();
  });

  test('speaks of warmth only where a seal cures by reaction, the resin stands it and no solvent is about', () => {
    const helps = (job: JobInput) =>
      fixOf(findOnCalm(POCKET, 'seal-not-cured', { sealHours: '0h', ...job }), 'wait')?.warmthHelps;
    expect(helps({})).toBe(true);
    expect(helps({ seal: 'shellac' })).toBe(false);
    expect(helps({ seal: 'sanding-sealer' })).toBe(false);
    expect(helps({ shopTemp: '27C' })).toBe(false);
    expect(helps({ wood: 'teak' })).toBe(false);
    expect(helps({ oiled: true })).toBe(false);
  });

  test('is silent at the ready time of a seal that dries, and on bare wood', () => {
    expect(findOnCalm(POCKET, 'seal-not-cured', { seal: 'shellac', sealHours: '1h' })).toBeUndefined();
    expect(findOnCalm(POCKET, 'seal-not-cured', { sealHours: '0h', seal: 'none' })).toBeUndefined();
  });
});

describe('seal-past-bond', () => {
  const slot = drawingOf([rectangle(0, 0, 40, 3.5)]);

  test('is a caution in a slot that nobody can abrade, and pouring as soon as it says clears it', () => {
    const finding = findOnCalm(slot, 'seal-past-bond', { sealHours: '48h' });
    expect(finding).toMatchObject({ severity: 'caution', limit: { value: 24 } });
    const { hours = 0 } = fixOf(finding, 'pour-sooner') ?? {};
    expect(findOnCalm(slot, 'seal-past-bond', { sealHours: `${hours}h` })).toBeUndefined();
    expect(fixOf(finding, 'abrade')).toBeUndefined();
  });

  test('is a note in a wide pocket, which can be washed and abraded', () => {
    const finding = findOnCalm(POCKET, 'seal-past-bond', { sealHours: '48h' });
    expect(finding?.severity).toBe('note');
    expect(fixOf(finding, 'abrade')).toBeDefined();
  });

  test('comes sooner in a warm shop, and not at all for what dries', () => {
    expect(
      findOnCalm(slot, 'seal-past-bond', { sealHours: '24h', shopTemp: '35C' })?.limit.value,
    ).toBeCloseTo(12, 9);
    expect(findOnCalm(slot, 'seal-past-bond', { sealHours: '24h', shopTemp: '27C' })).toBeUndefined();
    expect(findOnCalm(slot, 'seal-past-bond', { sealHours: '99h', seal: 'shellac' })).toBeUndefined();
  });
});
