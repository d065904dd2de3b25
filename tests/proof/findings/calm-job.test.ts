import { type JobInput, readMaterialsFile, settleJob } from '@pourproof/job';
import { judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { CALM, findOnCalm, POCKET } from '../../support/calm-job.ts';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf } from '../../support/fix-of.ts';

test('the calm job is clear', () => {
  expect(judgeDrawing(POCKET, 'test', settleJob(CALM)).report.verdict).toBe('clear');
});

describe('ghost-stroke', () => {
  // 3 coats of epoxy are 0.3 mm of film: half clear at 2·0.3·3 / (1.5 − 0.3) = 1.5 mm
  const coats = { coats: 3, bit: ['flat:0.5mm'] };

  test('fires on a stroke that three coats fill by half, and fewer coats clear it', () => {
    const finding = findOnCalm(drawingOf([rectangle(0, 0, 40, 1.45)]), 'ghost-stroke', coats);
    expect(finding?.severity).toBe('caution');
    // t (w + 2 D) / (w D)
    expect(finding?.measured.value).toBeCloseTo((100 * 0.3 * (1.45 + 6)) / (1.45 * 3), 6);
    const fewer = fixOf(finding, 'fewer-coats')?.coats ?? 0;
    expect(
      findOnCalm(drawingOf([rectangle(0, 0, 40, 1.45)]), 'ghost-stroke', { ...coats, coats: fewer }),
    ).toBeUndefined();
  });

  test('is a stop where the film alone fills the stroke', () => {
    // 2·0.3·3 / (3 − 0.3) = 0.667 mm
    expect(findOnCalm(drawingOf([rectangle(0, 0, 40, 0.6)]), 'ghost-stroke', coats)?.severity).toBe('stop');
  });

  test('goes by the narrowest of several strokes, in whatever order they come', () => {
    const [wide, narrow] = [rectangle(0, 0, 40, 1.45), rectangle(0, 10, 40, 0.6)];
    for (const rings of [
      [wide, narrow],
      [narrow, wide],
    ]) {
      expect(findOnCalm(drawingOf(rings), 'ghost-stroke', coats)?.severity).toBe('stop');
    }
  });

  test('is silent on a stroke a little wider', () => {
    expect(findOnCalm(drawingOf([rectangle(0, 0, 40, 1.55)]), 'ghost-stroke', coats)).toBeUndefined();
  });
});

describe('sands-through', () => {
  test('offers no depth that a bit or the board does not have', () => {
    const deepens = (job: JobInput): boolean =>
      findOnCalm(POCKET, 'sands-through', { depth: '1.2mm', level: '0.5mm', ...job })?.fix.options.some(
        (option) => option.do === 'deepen',
      ) ?? false;
    expect(deepens({ bit: ['flat:3mm'] })).toBe(true);
    expect(deepens({ bit: ['flat:3mm:length 1.3mm'] })).toBe(false);
  });

  test('fires where levelling leaves less than 1 mm of colour, and each way out clears it', () => {
    const shallow = { depth: '1.5mm', level: '0.6mm' };
    const finding = findOnCalm(POCKET, 'sands-through', shallow);
    expect(finding?.severity).toBe('caution');
    // 1.5 − 0.6 − 2 % of 1.5 − 0.1·(20 + 3)/20
    expect(finding?.measured.value).toBeCloseTo(1.5 - 0.6 - 0.03 - 0.115, 6);
    expect(
      findOnCalm(POCKET, 'sands-through', {
        ...shallow,
        depth: `${1.5 + (fixOf(finding, 'deepen')?.byMm ?? 0)}mm`,
      }),
    ).toBeUndefined();
    expect(
      findOnCalm(POCKET, 'sands-through', {
        ...shallow,
        level: `${0.6 - (fixOf(finding, 'level-less')?.byMm ?? 0)}mm`,
      }),
    ).toBeUndefined();
  });

  test('offers another way of levelling that takes no more off at its upper end than there is', () => {
    const byPlaner = { depth: '1.5mm', level: '0.3mm', levelBy: 'planer' } as const;
    const finding = findOnCalm(POCKET, 'sands-through', byPlaner);
    expect(fixOf(finding, 'level-by')).toEqual({ do: 'level-by', method: 'drum', clears: true });
    expect(findOnCalm(POCKET, 'sands-through', { ...byPlaner, levelBy: 'drum' })).toBeUndefined();
    // a drum takes up to 1 mm off
    const shallower = findOnCalm(POCKET, 'sands-through', { ...byPlaner, depth: '1.1mm' });
    expect(shallower).toBeDefined();
    expect(fixOf(shallower, 'level-by')).toBeUndefined();
  });

  test('is a stop when nothing is left', () => {
    const finding = findOnCalm(POCKET, 'sands-through', { depth: '1.5mm', level: '1.5mm' });
    expect(finding?.severity).toBe('stop');
    expect(finding?.measured).toEqual({ value: 0, quantity: 'depth', unit: 'mm' });
  });

  test('is silent at the usual depth and levelling', () => {
    expect(findOnCalm(POCKET, 'sands-through', { depth: '3mm', level: '1mm' })).toBeUndefined();
  });
});

describe('a number inside its own doubt', () => {
  test('asks for a coupon of the job’s depth before anything else', () => {
    for (const [code, job] of [
      ['high-bleed-wall', { wood: 'cherry', seal: 'none' }],
      ['visible-bleed-likely', { wood: 'maple', seal: 'shellac' }],
      ['floor-drinks', { wood: 'walnut', seal: 'none', dive: '90deg' }],
    ] as const) {
      expect(findOnCalm(POCKET, code, job)?.fix.options[0]).toEqual({
        do: 'test-coupon',
        slots: 3,
        lengthMm: 30,
        depthMm: 3,
        clears: false,
      });
    }
  });

  test('but not where the travel is far beyond every limit', () => {
    const drinks = { schema: 'pourproof/materials@1', woods: { walnut: { bleedPriorMm: 20 } } };
    const settled = settleJob(
      { ...CALM, seal: 'none' },
      { materials: readMaterialsFile(drinks, 'materials.json') },
    );
    const far = judgeDrawing(POCKET, 'test', settled).report.findings.find(
      ({ code }) => code === 'high-bleed-wall',
    );
    expect(far?.severity).toBe('stop');
    expect(fixOf(far, 'test-coupon')).toBeUndefined();
  });

  test('asks for slots near the board’s end and far from it where viscosity and trapped air differ', () => {
    const slow = { wood: 'cherry', seal: 'shellac', resin: 'deep-pour' } as const;
    const tells = (job: JobInput) => fixOf(findOnCalm(POCKET, 'high-bleed-wall', job), 'test-coupon');
    expect(tells(slow)).toMatchObject({ slots: 6, tellsApart: { nearEndMm: 20, farMm: 100 } });
    expect(tells({ ...slow, resin: 'coating' })?.tellsApart).toBeUndefined();
    // no air is trapped in red oak
    expect(tells({ ...slow, wood: 'red-oak' })?.tellsApart).toBeUndefined();
  });
});

describe('colour-hides-or-shows', () => {
  const bare: JobInput = { seal: 'none' };

  test('says that black shows in bare maple, even figured', () => {
    const finding = findOnCalm(POCKET, 'colour-hides-or-shows', { ...bare, wood: 'maple', colour: 'black' });
    expect(finding?.severity).toBe('note');
    expect(finding?.measured.value).toBeGreaterThanOrEqual(finding?.limit.value ?? Number.NaN);
  });

  test('is silent between hiding and showing, without a colour, for a wood of unknown colour, under a seal that holds', () => {
    expect(
      findOnCalm(POCKET, 'colour-hides-or-shows', { ...bare, wood: 'cherry', colour: 'red' }),
    ).toBeUndefined();
    expect(findOnCalm(POCKET, 'colour-hides-or-shows', { ...bare, wood: 'maple' })).toBeUndefined();
    expect(
      findOnCalm(POCKET, 'colour-hides-or-shows', { ...bare, wood: 'ash', colour: 'black' }),
    ).toBeUndefined();
    expect(findOnCalm(POCKET, 'colour-hides-or-shows', { wood: 'maple', colour: 'black' })).toBeUndefined();
  });

  test('of the tables black hides in walnut and white in pale woods, and each shows in the other', () => {
    const says = (wood: string, colour: 'black' | 'white') => {
      const finding = findOnCalm(POCKET, 'colour-hides-or-shows', { ...bare, wood, colour });
      return finding && (finding.measured.value >= finding.limit.value ? 'shows' : 'hides');
    };
    expect(says('walnut', 'black')).toBe('hides');
    expect(says('walnut', 'white')).toBe('shows');
    for (const pale of ['poplar', 'cherry', 'maple']) {
      expect([pale, says(pale, 'white'), says(pale, 'black')]).toEqual([pale, 'hides', 'shows']);
    }
  });

  test('says that a colour near to the wood hides in it', () => {
    const book = readMaterialsFile(
      { schema: 'pourproof/materials@1', woods: { walnut: { lab: [30, 3, 3] } } },
      'materials.json',
    );
    const { findings } = judgeDrawing(
      POCKET,
      'test',
      settleJob({ ...CALM, ...bare, colour: 'black' }, { materials: book }),
    ).report;
    const finding = findings.find(({ code }) => code === 'colour-hides-or-shows');
    expect(finding?.measured.value).toBeLessThan(5);
  });
});
