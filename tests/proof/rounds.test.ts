import type { JobInput } from '@pourproof/job';
import { applyFix } from '@pourproof/proof';
import { calendarFile } from '@pourproof/wording';
import { vet } from 'pourproof';
import { describe, expect, test } from 'vitest';
import { rectangle } from '../support/drawing-of.ts';
import type { Painted } from '../support/painted.ts';
import { apart, BLACK, BLUE, codes, RED, SOUND, vettedRounds, within } from '../support/rounds-job.ts';

describe('a round in cured resin', () => {
  const shallow = 'black:4mm, red:2mm';

  test('opens no wood: it takes no seal, bleeds nothing and is sealed in no step', () => {
    const { rounds, seal, pour, findings } = vettedRounds(within, {
      rounds: shallow,
      seal: 'none',
      colour: 'black',
    });
    expect(rounds?.[1]).toMatchObject({ depthMm: 2, loweredMm: 0.5 });
    expect(rounds?.[1]?.resinMm3).toBeCloseTo(rounds?.[1]?.volumeMm3 ?? 0, 6);
    expect(findings.filter(({ round }) => round === 2).map(({ code }) => code)).toEqual([]);
    expect(findings.find(({ code }) => code === 'high-bleed-wall')?.round).toBe(1);
    expect(seal.massG).toBe(0);
    const coats = vettedRounds(within, { rounds: shallow }).pour.schedule.filter(
      ({ step }) => step === 'seal-coat',
    );
    expect(coats.map(({ round }) => round)).toEqual([1]);
    expect(pour.colours.map(({ name }) => name)).toEqual([BLACK, RED]);
  });

  test('counts its floor as wood where it goes deeper than the resin', () => {
    const end = { wood: undefined, board: 'plain 100x100x30mm maple', grain: undefined } as const;
    const area = (rounds: string): readonly number[] => {
      const { endGrain } = vettedRounds(within, {
        ...end,
        rounds,
        board: 'end-grain-checkerboard 120x120x30mm maple square:120mm',
      });
      return endGrain.byBlock.map(({ floorAreaMm2 }) => floorAreaMm2);
    };
    const [covered = 0] = area('black:4mm, red:2mm');
    const [open = 0] = area('black:4mm, red:4mm');
    expect(open - covered).toBeCloseTo(20 * 20 - (4 - Math.PI) * 1, 1);
  });

  test('beside wood bleeds there as ever, and not into the resin', () => {
    // half of the red square lies in the black one, half in wood; the fibres run through both
    const across: readonly Painted[] = [
      [BLACK, rectangle(0, 0, 20, 20)],
      [RED, rectangle(10, 0, 20, 20)],
    ];
    const wall = (all: readonly Painted[], rounds?: string) =>
      vettedRounds(all, {
        seal: 'none',
        colour: 'black',
        level: '0mm',
        ...(rounds === undefined ? {} : { rounds }),
      }).endGrain.wallExposedMm2;
    const [black, red] = [wall(across.slice(0, 1)), wall(across.slice(1))];
    // one of the two end-grain walls of the red square is resin
    expect(wall(across, 'black, red')).toBeCloseTo(black + red / 2, 6);
  });
});

describe('what a job may say of rounds', () => {
  test('colours that it does not name come last, with a notice', () => {
    const report = vettedRounds([...within, [BLUE, rectangle(60, 0, 20, 20)]], { rounds: 'black' });
    expect(report.rounds?.map(({ colours }) => colours)).toEqual([[BLACK], [RED, BLUE]]);
    expect(report.artwork.notices.map(({ code }) => code)).toContain('colour-without-round');
  });

  test('colours of one round may still not touch', () => {
    expect(codes(vettedRounds(within, { rounds: 'black+red' }))).toContain('colours-touch');
    const three: readonly Painted[] = [...within, [BLUE, rectangle(60, 0, 20, 20)]];
    const found = vettedRounds(three, { rounds: 'blue, black+red' }).findings.find(
      ({ code }) => code === 'colours-touch',
    );
    expect([found?.severity, found?.round]).toEqual(['stop', 2]);
    expect(found?.fix.options.find((fix) => fix.do === 'pour-in-rounds')).toMatchObject({
      rounds: [['blue'], ['black'], ['red']],
    });
  });

  test('what is not drawn, or named twice, is refused', () => {
    expect(() => vettedRounds(within, { rounds: 'black, green' })).toThrow('no colour or layer "green"');
    expect(() => vettedRounds(within, { rounds: 'black, #000' })).toThrow('two rounds');
  });
});

describe('what is left thin between rounds', () => {
  const rimOf = (widthMm: number): readonly Painted[] => [
    [BLACK, rectangle(0, 0, 40, 40)],
    [RED, rectangle(widthMm, widthMm, 40 - 2 * widthMm, 40 - 2 * widthMm)],
  ];
  const found = (all: readonly Painted[], code: string, job: JobInput = {}) =>
    vettedRounds(all, { rounds: 'black, red', ...job }).findings.find((finding) => finding.code === code);

  test('cured resin: below the limit with its width and place, at the limit not', () => {
    const thin = found(rimOf(0.79), 'resin-left-thin');
    expect(thin?.round).toBe(2);
    expect(thin?.measured.value).toBeCloseTo(0.79, 3);
    expect(thin?.where[0]?.what).toBe('stroke');
    expect(found(rimOf(0.8), 'resin-left-thin')).toBeUndefined();
    // what was as thin before is not of this round
    expect(
      found([...apart, [BLACK, rectangle(0, 30, 40, 0.7)]], 'resin-left-thin', { bit: ['flat:0.5mm'] }),
    ).toBeUndefined();
  });

  test('a dot of it, too', () => {
    const bars: readonly Painted[] = [
      [BLACK, rectangle(0, 0, 30, 30)],
      [RED, rectangle(5, 5, 20, 9.7)],
      [RED, rectangle(5, 15.3, 20, 9.7)],
      [RED, rectangle(5, 14, 9.7, 2)],
      [RED, rectangle(15.3, 14, 9.7, 2)],
    ];
    const thin = found(bars, 'resin-left-thin', { bit: ['flat:0.4mm'] });
    expect(thin?.where.map(({ what }) => what)).toEqual(['dot']);
    expect(thin?.measured.value).toBeCloseTo(0.6, 2);
  });

  test('wood beside cured resin: as thin wood between cuts, in the round that leaves it', () => {
    const beside: readonly Painted[] = [
      [BLACK, rectangle(0, 0, 20, 20)],
      [RED, rectangle(20.6, 0, 20, 20)],
    ];
    const [rounds, once] = [found(beside, 'short-grain-will-break'), vettedRounds(beside).findings];
    expect(rounds?.round).toBe(2);
    expect(rounds?.measured).toEqual(once.find(({ code }) => code === 'short-grain-will-break')?.measured);
  });

  test('colour that runs through it into the first pocket is told once, in the round that does it', () => {
    const strokes: readonly Painted[] = [
      [BLACK, rectangle(0, 0, 6, 40)],
      [RED, rectangle(7.6, 0, 6, 40)],
    ];
    const job: JobInput = { seal: 'none', colour: 'black' };
    const touch = found(strokes, 'bleed-reaches-neighbour', job);
    expect(touch?.round).toBe(2);
    expect(touch?.measured.value).toBeCloseTo(1.6, 6);
  });
});

test('the calendar has every step of every round once, in order, and finish and full cure at the end', async () => {
  const job = { rounds: 'black, red', start: '2026-12-01 09:00' };
  const { schedule } = vettedRounds(within, job).pour;
  const events = (await calendarFile('sign.svg', schedule)).split('BEGIN:VEVENT').slice(1);
  expect(events).toHaveLength(schedule.length);
  const uids = events.map((event) => /UID:([^@]*)@/u.exec(event.replaceAll(/\r\n[\t ]/gu, ''))?.[1]);
  expect(new Set(uids).size).toBe(events.length);
  const ofRound = (round: number | undefined) =>
    schedule.filter((step) => step.round === round).map(({ step }) => step);
  expect(ofRound(1)).toEqual(['carve', 'clean', 'seal-coat', 'bond-window', 'pour', 'top-up', 'level']);
  expect(ofRound(2)).toEqual(ofRound(1));
  expect(ofRound(undefined)).toEqual(['finish', 'full-cure']);
  const level = schedule.find(({ step, round }) => step === 'level' && round === 1);
  const carve = schedule.find(({ step, round }) => step === 'carve' && round === 2);
  expect(carve?.earliestHours).toBe((level?.earliestHours ?? 0) + 1);
  expect(carve?.latestHours).toBe((level?.latestHours ?? 0) + 1);
});

test('grams, hours and minutes of the rounds are those of pour and cut', () => {
  const { rounds = [], pour, cut } = vettedRounds(within, { rounds: 'black, red:2mm' });
  expect(rounds.map(({ massG }) => massG)).toEqual(pour.colours.map(({ massG }) => massG));
  expect(rounds.reduce((sum, { minutes }) => sum + minutes, 0)).toBeCloseTo(cut.time.minutes, 6);
  expect(rounds.flatMap(({ steps }) => steps)).toEqual(
    pour.schedule.flatMap(({ round }, index) => (round === undefined ? [] : [index])),
  );
});

describe('bits of a round', () => {
  test('a round with bits of its own is cut as a job with these bits, and the report tells them', () => {
    const { cut, rounds = [] } = vettedRounds(apart, { rounds: 'black, red:2mm with flat:3mm+flat:1mm' });
    const red = vettedRounds([[RED, rectangle(40, 0, 20, 20)]], {
      bit: ['flat:3mm', 'flat:1mm'],
      depth: '2mm',
    });
    const black = vettedRounds([[BLACK, rectangle(0, 0, 20, 20)]]);
    expect(rounds.map(({ cutters }) => cutters.length)).toEqual([1, 2]);
    expect(rounds[1]?.volumeMm3).toBeCloseTo(red.cut.volumeMm3, 6);
    expect(rounds[1]?.minutes).toBeCloseTo(red.cut.time.minutes, 6);
    expect(cut.perCutter).toEqual([...black.cut.perCutter, ...red.cut.perCutter]);
  });

  test('a bit that two rounds use is one of the cut, with the sums of both', () => {
    const { cut } = vettedRounds(apart, { rounds: 'black, red with flat:1mm+flat:2mm' });
    expect(cut.perCutter.map(({ cutter }) => cutter.kind === 'flat' && cutter.diameterMm)).toEqual([2, 1]);
    expect(cut.perCutter.reduce((sum, { volumeMm3 }) => sum + volumeMm3, 0)).toBeCloseTo(cut.volumeMm3, 6);
  });

  test('another bit as a way out goes to the round that has bits of its own, and to the job where it has none', () => {
    const narrow: readonly Painted[] = [
      [BLACK, rectangle(0, 0, 20, 20)],
      [RED, rectangle(40, 0, 30, 1.5)],
    ];
    const followed = (rounds: string): JobInput | null => {
      const job = { ...SOUND, rounds };
      const fix = vettedRounds(narrow, job)
        .findings.find(({ code }) => code === 'bit-cannot-enter')
        ?.fix.options.find((each) => each.do === 'use-bit');
      const changed = fix === undefined ? null : applyFix(job, fix);
      expect(changed === null ? [] : codes(vettedRounds(narrow, changed))).not.toContain('bit-cannot-enter');
      return changed;
    };
    const own = followed('black, red:2mm with flat:2mm');
    expect(own).toMatchObject({ bit: SOUND.bit });
    expect(own?.rounds).toMatch(/^black, red:2mm with flat:2mm\+flat:1[^+]*mm$/u);
    const all = followed('black, red');
    expect(all).toMatchObject({ rounds: 'black, red' });
    expect(all?.bit).toHaveLength(2);
  });
});

describe('heights of the face', () => {
  const bowed = (level: string): JobInput => ({
    wood: undefined,
    grain: undefined,
    board: 'plain 100x100x20mm maple',
    reading: ['5mm,5mm 20mm', '95mm,5mm 20mm', '5mm,95mm 20mm', '95mm,95mm 20mm', '50mm,50mm 20.9mm'],
    rounds: 'black, red',
    level,
  });
  const plate: readonly Painted[] = [
    [BLACK, rectangle(0, 0, 80, 80)],
    [RED, rectangle(2, 2, 10, 10)],
  ];
  const ranges = (level: string): readonly number[] =>
    (vettedRounds(plate, bowed(level)).rounds ?? []).map(({ faceRangeMm = Number.NaN }) => faceRangeMm);

  /** The bowl through the readings: how much lower than the middle a place is that is so far from it along both axes, mm. */
  const bowl = (mm: number): number => 0.9 * (mm / 45) ** 2;
  /** A bit of 2 mm leaves corners that reach so much less far. */
  const ROUNDED = 1 - Math.SQRT1_2;

  test('hold as read for the first round; a levelling that takes them off leaves a flat face to the second', () => {
    const [first = 0, second] = ranges('1mm');
    expect(first).toBeCloseTo(bowl(40 - ROUNDED), 6);
    expect(second).toBe(0);
  });

  test('what a smaller levelling leaves of the bow lies under the second round', () => {
    const [first = 0, second = 0] = ranges('0.3mm');
    // the red square is a corner of the plate, 28 to 38 mm from its middle along both axes
    expect(first).toBeCloseTo(bowl(40 - ROUNDED), 6);
    expect(second).toBeCloseTo(bowl(38 - ROUNDED) - bowl(28 + ROUNDED), 6);
    // in its middle it is shallower by what the face still lies lower than where the bit is set
    const deep = (level: string): number =>
      vettedRounds(plate, { ...bowed(level), rounds: 'black, red' }).rounds?.[1]?.marginMm ?? 0;
    expect(deep('1mm') - deep('0.3mm')).toBeCloseTo(bowl(33) - 0.3, 3);
  });

  test('a face that one levelling leaves uneven is told, however many follow', () => {
    const found = vettedRounds(plate, bowed('0.5mm')).findings.filter(
      ({ code }) => code === 'board-not-flat',
    );
    expect(found.map(({ round, limit }) => [round, limit.value])).toEqual([[1, 0.5]]);
    expect(codes(vettedRounds(plate, bowed('1mm')))).not.toContain('board-not-flat');
  });
});

test('where rounds carve one colour into another, paint over paint is as it should be', async () => {
  const bytes = new TextEncoder().encode(
    '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm" viewBox="0 0 40 40"><rect width="40" height="40"/><rect x="10" y="10" width="20" height="20" fill="#ff0000"/></svg>',
  );
  const said = async (job: JobInput): Promise<string> => {
    const { report } = await vet({ kind: 'file', name: 'plate.svg', bytes }, { ...SOUND, ...job });
    return report.artwork.notices.find(({ code }) => code === 'paint-covers-paint')?.text ?? '';
  };
  expect(await said({})).toContain('carve what is visible');
  expect(await said({ rounds: 'black, red' })).toContain('leave the drawing as it is');
});
