import { readFileSync } from 'node:fs';
import type { JobInput } from '@pourproof/job';
import { applyFix, type Finding, type Fix, type Report, vetDrawing } from '@pourproof/proof';
import { type Source, settleJob, vet } from 'pourproof';
import { describe, expect, test } from 'vitest';
import { brokenWays } from '../support/broken-ways.ts';
import { fixture } from '../support/cli/captured-run.ts';
import { drawingOf, rectangle } from '../support/drawing-of.ts';
import { fixOf, waysOut } from '../support/fix-of.ts';

const CALM: JobInput = {
  bit: ['flat:1mm'],
  depth: '3mm',
  wood: 'maple',
  seal: 'epoxy',
  sealHours: '24h',
  level: '0.5mm',
  weigh: 'fine',
  boards: 10,
};
const BOLD = new Uint8Array(readFileSync(fixture('fonts/josefin-sans-700.ttf')));
const words = (text: string): Source => ({ kind: 'lettering', text, font: BOLD });
const thinWood = ({ findings }: Report): Finding | undefined =>
  findings.find(({ code }) => code === 'short-grain-will-break');

describe('letters too close to each other', () => {
  const job = { ...CALM, capHeight: '20mm' };

  test('are set farther apart, by the least that clears it', async () => {
    const source = words('HIN');
    const close = { ...job, tracking: '-4.2mm' };
    const { report } = await vet(source, close);
    const track = fixOf(thinWood(report), 'track');
    expect(track?.clears).toBe(true);
    expect(await brokenWays(source, close, report)).toEqual([]);
    const less = applyFix(close, { ...(track as Fix & { do: 'track' }), byMm: (track?.byMm ?? 0) - 0.02 });
    expect(thinWood((await vet(source, less ?? {})).report)).toBeDefined();
    expect(waysOut(thinWood(report), 'mm').join(' ')).toMatch(/Set the letters \d\.\d\d mm farther apart\./u);
  });

  test('lines one above the other are set farther apart, not their letters', async () => {
    const source = words('HIH\nIHI');
    const close = { ...job, lineSpacing: 0.75 };
    const { report } = await vet(source, close);
    expect(fixOf(thinWood(report), 'space-lines')?.clears).toBe(true);
    expect(fixOf(thinWood(report), 'track')).toBeUndefined();
    expect(await brokenWays(source, close, report)).toEqual([]);
  });

  test('a drawing that nobody can read anew offers neither', () => {
    const drawing = {
      ...drawingOf([rectangle(0, 0, 8, 30), rectangle(8.5, 0, 8, 30)]),
      format: 'lettering' as const,
    };
    const { report } = vetDrawing(drawing, 'letters', settleJob(CALM));
    expect(thinWood(report)).toBeDefined();
    expect(fixOf(thinWood(report), 'track')).toBeUndefined();
  });
});

describe('parts of a drawing too close to each other', () => {
  const bars = (...gaps: readonly number[]) =>
    drawingOf(
      [0, ...gaps].map((_, k) => rectangle(8 * k + gaps.slice(0, k).reduce((a, b) => a + b, 0), 0, 8, 30)),
    );

  test('are moved apart with all that lies beyond, which vetting the moved drawing confirms', () => {
    const { report } = vetDrawing(bars(0.5, 4, 0.8), 'bars', settleJob(CALM));
    const apart = fixOf(thinWood(report), 'move-apart');
    expect(apart?.clears).toBe(true);
    const by = apart?.byMm ?? 0;
    expect(by).toBeGreaterThanOrEqual(1);
    expect(by).toBeLessThan(1.02);
    const moved = vetDrawing(bars(0.5 + by, 4, 0.8 + by), 'bars', settleJob(CALM)).report;
    expect(thinWood(moved)).toBeUndefined();
    expect(waysOut(thinWood(report), 'mm').join(' ')).toContain(
      'Move what lies on one side of it 1.00 mm farther away, and all beyond with it.',
    );
  });

  test('where both sides are one part, moving is not offered', () => {
    // a U whose legs are close
    const u = [0, 0, 20, 0, 20, 30, 10.25, 30, 10.25, 10, 9.75, 10, 9.75, 30, 0, 30];
    const found = thinWood(vetDrawing(drawingOf([u]), 'u', settleJob(CALM)).report);
    expect(found).toBeDefined();
    expect(fixOf(found, 'move-apart')).toBeUndefined();
  });
});

describe('strokes that colour may run between', () => {
  const { sealHours: _, ...calm } = CALM;
  const bare: JobInput = { ...calm, bit: ['flat:2mm'], seal: 'none', colour: 'black' };
  const crossed = ({ findings }: Report): Finding | undefined =>
    findings.find(({ code }) => code === 'bleed-reaches-neighbour');
  const less = <Way extends Fix & { byMm: number }>(fix: Way): Way => ({ ...fix, byMm: fix.byMm - 0.02 });

  test('are moved apart by the least at which it does not get across, wherever it would', () => {
    const bars = (...gaps: readonly number[]) =>
      drawingOf(
        [0, ...gaps].map((_, k) => rectangle(6 * k + gaps.slice(0, k).reduce((a, b) => a + b, 0), 0, 6, 40)),
      );
    const judged = (...gaps: readonly number[]) => vetDrawing(bars(...gaps), 'bars', settleJob(bare)).report;
    const apart = fixOf(crossed(judged(1.6, 5, 1.2)), 'move-apart');
    expect(apart).toMatchObject({ clears: true });
    const by = apart?.byMm ?? 0;
    expect(crossed(judged(1.6 + by, 5, 1.2 + by))).toBeUndefined();
    expect(crossed(judged(1.6 + by - 0.02, 5, 1.2 + by - 0.02))).toBeDefined();
  });

  test('letters are set farther apart by the least, and lines with them where both are close', async () => {
    const job = { ...bare, capHeight: '20mm', bit: ['flat:1mm'] };
    const close = { ...job, tracking: '-3.8mm' };
    const { report } = await vet(words('HIH'), close);
    const track = fixOf(crossed(report), 'track');
    expect(track).toMatchObject({ clears: true });
    expect(await brokenWays(words('HIH'), close, report)).toEqual([]);
    const tooLittle = applyFix(close, less(track as Fix & { do: 'track' })) ?? {};
    expect(crossed((await vet(words('HIH'), tooLittle)).report)).toBeDefined();
    expect(waysOut(crossed(report), 'mm').join(' ')).toMatch(/Set the letters \d\.\d\d mm farther apart\./u);

    const both = { ...job, tracking: '-4.2mm', lineSpacing: 0.75, seal: 'epoxy', sealHours: '24h' };
    const thin = (await vet(words('HIH\nIHI'), both)).report;
    const ways = thinWood(thin)?.fix.options.filter(({ also }) => also !== undefined) ?? [];
    expect(ways.map((way) => [way.do, ...(way.also ?? []).map((each) => each.do)].sort())).toContainEqual([
      'space-lines',
      'track',
    ]);
    expect(await brokenWays(words('HIH\nIHI'), both, thin)).toEqual([]);
  });

  test('within one part neither is offered', () => {
    const u = [0, 0, 21.2, 0, 21.2, 30, 11.4, 30, 11.4, 10, 9.8, 10, 9.8, 30, 0, 30];
    const found = crossed(vetDrawing(drawingOf([u]), 'u', settleJob(bare)).report);
    expect(found).toBeDefined();
    expect(fixOf(found, 'move-apart')).toBeUndefined();
  });
});
