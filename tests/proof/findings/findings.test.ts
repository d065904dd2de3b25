import { type JobFile, type JobInput, settleJob } from '@pourproof/job';
import type { OpenOutline, OpenOutlines } from '@pourproof/plane';
import { type FindingCode, judgeDrawing } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { drawingOf, rectangle } from '../../support/drawing-of.ts';
import { fixOf, wordsOf } from '../../support/fix-of.ts';

const CALM: JobFile = {
  schema: 'pourproof/job@1',
  bit: ['flat:3mm'],
  depth: '3mm',
  wood: 'walnut',
  seal: 'epoxy',
  coats: 1,
  sealHours: '24h',
};

const find = (drawing: ReturnType<typeof drawingOf>, code: FindingCode, job: JobInput = {}) =>
  judgeDrawing(drawing, 'test', settleJob({ ...CALM, ...job })).report.findings.find(
    (finding) => finding.code === code,
  );

describe('bit-cannot-enter', () => {
  test('fires on a slot narrower than the bit, at its place, with fixes that clear it', () => {
    // a 30 × 8 mm pocket with a 2 mm wide arm of 20 mm to the right
    const pocket = [0, 0, 30, 0, 30, 3, 50, 3, 50, 5, 30, 5, 30, 8, 0, 8];
    const finding = find(drawingOf([pocket]), 'bit-cannot-enter');
    expect(finding?.severity).toBe('stop');
    expect(finding?.where).toHaveLength(1);
    const [x, y] = finding?.where[0]?.atMm ?? [0, 0];
    expect(x).toBeGreaterThan(29);
    expect(y).toBeGreaterThan(2.9);
    expect(y).toBeLessThan(5.1);
    expect(finding?.fix.options.map((option) => option.do)).toEqual(['use-bit', 'scale', 'widen']);
    const scale = fixOf(finding, 'scale')?.factor ?? 0;
    expect(scale).toBeGreaterThanOrEqual(1.5);
    expect(scale).toBeLessThan(1.53);
    expect(find(drawingOf([pocket.map((v) => v * scale)]), 'bit-cannot-enter')).toBeUndefined();
    const bit = `flat:${fixOf(finding, 'use-bit')?.diameterMm}mm`;
    expect(find(drawingOf([pocket]), 'bit-cannot-enter', { bit: ['flat:3mm', bit] })).toBeUndefined();
  });

  test('is silent on a pocket whose corners only stay round', () => {
    expect(find(drawingOf([rectangle(0, 0, 20, 4)]), 'bit-cannot-enter')).toBeUndefined();
  });
});

describe('stroke-near-bit-width', () => {
  test('fires on a stroke 2 % wider than the bit', () => {
    const finding = find(drawingOf([rectangle(0, 0, 40, 3.06)]), 'stroke-near-bit-width');
    expect(finding?.measured.value).toBeCloseTo(3.06, 6);
    expect(finding?.limit.value).toBeCloseTo(3.15, 9);
  });

  test('is silent on one 6 % wider', () => {
    expect(find(drawingOf([rectangle(0, 0, 40, 3.18)]), 'stroke-near-bit-width')).toBeUndefined();
  });
});

describe('stroke-too-narrow-to-level', () => {
  test('fires on a 0.7 mm stroke that a 0.5 mm bit enters', () => {
    const finding = find(drawingOf([rectangle(0, 0, 40, 0.7)]), 'stroke-too-narrow-to-level', {
      bit: ['flat:0.5mm'],
    });
    expect(finding?.severity).toBe('caution');
    expect(finding?.measured.value).toBeCloseTo(0.7, 6);
  });

  test('is a stop where the stroke is so narrow that nobody sees it as one', () => {
    const hair = (width: number) =>
      find(drawingOf([rectangle(0, 0, 40, width)]), 'stroke-too-narrow-to-level', { bit: ['flat:0.1mm'] });
    expect(hair(0.19)?.severity).toBe('stop');
    expect(hair(0.21)?.severity).toBe('caution');
  });

  test('is silent on a 0.85 mm stroke', () => {
    expect(
      find(drawingOf([rectangle(0, 0, 40, 0.85)]), 'stroke-too-narrow-to-level', { bit: ['flat:0.5mm'] }),
    ).toBeUndefined();
  });
});

describe('high-bleed-wall', () => {
  const bar = drawingOf([rectangle(0, 0, 30, 4)]);
  const risky: JobInput = { wood: 'poplar', seal: 'none', grain: '0deg' };

  test('fires on the walls across the grain only, wherever the bar is turned with the grain', () => {
    for (const turnDeg of [0, 30, 77]) {
      // y is down: turning the artwork from +x to +y is clockwise as seen, so the grain turns by minus that angle
      const finding = find(drawingOf([rectangle(0, 0, 30, 4)], { turnDeg }), 'high-bleed-wall', {
        ...risky,
        grain: `${-turnDeg}deg`,
      });
      expect(finding?.severity).toBe('stop');
      expect(finding?.where).toHaveLength(2);
      expect(finding?.measured.value).toBeCloseTo(6, 1);
    }
  });

  test('is silent under a cured epoxy seal, as practice says, and the fix says so', () => {
    const finding = find(bar, 'high-bleed-wall', risky);
    expect(fixOf(finding, 'change-seal')).toEqual({
      do: 'change-seal',
      seal: 'epoxy',
      coats: 1,
      // the end of its bond window, so that no slot has to be sanded
      hours: 8,
      bondsUnsanded: true,
      clears: true,
    });
    for (const sealHours of ['8h', '24h']) {
      expect(find(bar, 'high-bleed-wall', { ...risky, seal: 'epoxy', sealHours })).toBeUndefined();
    }
  });
});

describe('outline-open', () => {
  const square = rectangle(0, 0, 20, 8);
  const open = (more: Partial<OpenOutline>, join: OpenOutlines['join'] = null): OpenOutlines => ({
    outlines: [
      {
        gaps: [{ fromMm: [3, 4], toMm: [3, 4.4], widthMm: 0.4 }],
        areaMm2: 50,
        reading: 'left-out',
        isHole: false,
        ...more,
      },
    ],
    join,
  });

  test('is a stop where an outline takes its area with it, with the tolerance that closes it', () => {
    const join = { toleranceMm: 0.4, closes: 1, areaMm2: 50 };
    const finding = find(drawingOf([square], { open: open({}, join) }), 'outline-open');
    expect(finding?.severity).toBe('stop');
    expect(finding?.where).toMatchObject([{ atMm: [3, 4.2], what: 'gap', lengthMm: 0.4, areaMm2: 50 }]);
    expect(finding?.measured).toEqual({ value: 50, quantity: 'area', unit: 'mm²' });
    expect(finding?.openOutlines).toEqual({ count: 1, cutMm2: 50, woodMm2: 0 });
    expect(finding?.fix.options[0]).toEqual({ do: 'join-ends', ...join, clears: true });
  });

  test('tells wood that is cut away where the outline is that of a hole', () => {
    const finding = find(drawingOf([square], { open: open({ isHole: true }) }), 'outline-open');
    expect(finding?.openOutlines).toEqual({ count: 1, cutMm2: 0, woodMm2: 50 });
    expect(finding?.fix.options.map((fix) => fix.do)).toEqual(['close-gap']);
  });

  test('is a caution where the outline is filled all the same, as SVG fills it', () => {
    const finding = find(drawingOf([square], { open: open({ reading: 'filled' }) }), 'outline-open');
    expect(finding?.severity).toBe('caution');
    expect(finding?.measured).toEqual({ value: 0.4, quantity: 'length', unit: 'mm' });
  });

  test('is silent on closed outlines', () => {
    expect(find(drawingOf([square]), 'outline-open')).toBeUndefined();
  });
});

describe('outline-crosses', () => {
  test('is a caution at the crossing of a bow tie, a note where two shapes overlap', () => {
    const bow = find(drawingOf([[0, 0, 20, 10, 20, 0, 0, 10]]), 'outline-crosses');
    expect(bow?.severity).toBe('caution');
    expect(bow?.where[0]?.atMm).toEqual([10, 5]);
    const overlap = find(drawingOf([rectangle(0, 0, 20, 8), rectangle(10, 4, 20, 8)]), 'outline-crosses');
    expect(overlap?.severity).toBe('note');
    expect(overlap?.measured.value).toBe(2);
  });

  test('is silent on shapes that lie apart', () => {
    expect(
      find(drawingOf([rectangle(0, 0, 20, 8), rectangle(30, 0, 20, 8)]), 'outline-crosses'),
    ).toBeUndefined();
  });
});

test('every finding of a bad drawing can be put into words in both units', () => {
  const bad = drawingOf([
    [0, 0, 30, 0, 30, 3, 50, 3, 50, 5, 30, 5, 30, 8, 0, 8],
    [0, 0, 9, 9, 9, 0, 0, 9],
  ]);
  const { findings } = judgeDrawing(bad, 'bad', settleJob({ ...CALM, wood: 'poplar', seal: 'none' })).report;
  expect(findings.length).toBeGreaterThanOrEqual(3);
  for (const finding of findings) {
    for (const unit of ['mm', 'in'] as const) {
      const words = wordsOf(finding, unit);
      for (const text of [words.title, words.headline, words.why, ...words.fixes.map((fix) => fix.text)]) {
        expect(text).not.toMatch(/NaN|undefined|Infinity|\[object/u);
      }
      expect(words.fixes.length).toBeGreaterThan(0);
    }
  }
});

describe('pointed ends', () => {
  // a 3 mm bit at the end of a 20 mm long bar, cut to a point of the given full angle
  const pointed = (deg: number): number[] => {
    const reach = 4 / Math.tan((deg * Math.PI) / 360);
    return [0, 0, 20, 0, 20 + reach, 4, 20, 8, 0, 8];
  };

  test.each([58, 75, 90])('of %d° are corners to the eye, and silent', (deg) => {
    expect(find(drawingOf([pointed(deg)]), 'cut-ends-short')).toBeUndefined();
    expect(find(drawingOf([pointed(deg)]), 'bit-cannot-enter')).toBeUndefined();
  });

  test.each([20, 30])('of %d° lose much of their tip', (deg) => {
    const finding = find(drawingOf([pointed(deg)]), 'cut-ends-short');
    expect(finding?.where).toHaveLength(1);
    expect(finding?.severity).toBe('caution');
    expect(find(drawingOf([pointed(deg)]), 'bit-cannot-enter')).toBeUndefined();
  });

  test('as steep as a capital A are corners though they are blunt', () => {
    const tip = (x: number) =>
      find(drawingOf([[0, 0, 20, 0, x, 3.4, x, 4.6, 20, 8, 0, 8]]), 'cut-ends-short');
    expect(tip(34)?.where.map(({ what }) => what)).toEqual(['tip']);
    expect(tip(29)).toBeUndefined();
  });

  test('a serif that thins towards its end is lost, and more than its tip', () => {
    const serif = [0, 0, 8, 0, 8, 20, 10.5, 20.6, 10.5, 21, 8, 21.6, 0, 22];
    const finding = find(drawingOf([serif]), 'cut-ends-short');
    expect(finding?.where).toHaveLength(1);
    expect(finding?.severity).toBe('stop');
  });

  test('fires on a blunt serif as short as the bit is wide', () => {
    const serif = [0, 0, 8, 0, 8, 20, 10.5, 20, 10.5, 21, 0, 21];
    expect(find(drawingOf([serif]), 'bit-cannot-enter')?.where).toHaveLength(1);
  });
});

test('a lone convex pocket has no sliver beside it, two pockets close together have one', () => {
  const slivers = (rings: number[][]) =>
    judgeDrawing(drawingOf(rings), 'test', settleJob(CALM)).report.slivers;
  expect(slivers([rectangle(0, 0, 20, 4)])?.narrowestMm).toBeNull();
  expect(slivers([rectangle(0, 0, 20, 4), rectangle(0, 5.5, 20, 4)])?.narrowestMm).toBeCloseTo(1.5, 6);
});
