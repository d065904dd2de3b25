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
