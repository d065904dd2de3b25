import { resolveRegions } from '@pourproof/arrangement';
import { medialAxis, narrowStretches, strokeWidths } from '@pourproof/geometry';
import { type CleanRegion, packRings, signedArea, type Transform, transformRings } from '@pourproof/plane';
import { describe, expect, test } from 'vitest';
import { renderStrokesPage, ruleRows } from '../pages/strokes-page.ts';
import { expectPage } from '../support/expect-page.ts';
import { cleanFrom } from '../support/shapes/clean-from.ts';
import { labelledShapes } from '../support/strokes/labelled-strokes.ts';
import { strokeRules } from '../support/strokes/stroke-rules.ts';
import { scoreOf } from '../support/strokes/stroke-scores.ts';

const PAGE_TOLERANCE_MM = 0.005;
const rows = await ruleRows(PAGE_TOLERANCE_MM);

test('labelled shapes are simple, so that they are what they say', () => {
  for (const { name, rings } of labelledShapes) {
    const [outer, ...holes] = rings(PAGE_TOLERANCE_MM);
    const resolved = resolveRegions([{ ...packRings([outer, ...holes]), fillRule: 'evenodd' }]);
    expect(resolved.crossings, name).toEqual([]);
    expect(signedArea(resolved.region), name).toBeCloseTo(signedArea(cleanFrom([outer], holes)), 6);
  }
});

describe('on labelled shapes', () => {
  test.each([0.01, PAGE_TOLERANCE_MM, 0.002])(
    'one false alarm, no miss, no stroke taken for a taper, flattened to %d mm',
    (toleranceMm) => {
      const { falseAlarms, misses, wrongKind, faults } = scoreOf(strokeRules[0], toleranceMm);
      expect(falseAlarms, faults.join('\n')).toBe(1);
      expect(misses, faults.join('\n')).toBe(0);
      expect(wrongKind, faults.join('\n')).toBe(0);
    },
  );

  test('what is said does not depend on place, direction, side or size', () => {
    const [c, s] = [Math.cos(0.3), Math.sin(0.3)];
    const maps: Record<string, Transform> = {
      turned: [c, s, -s, c, 0, 0],
      mirrored: [-1, 0, 0, 1, 3, 0],
      'a thousandth as large': [1e-3, 0, 0, 1e-3, 0, 0],
      'a million times as large': [1e6, 0, 0, 1e6, 0, 0],
      'far away': [1, 0, 0, 1, 1e4, -1e4],
    };
    for (const { name, rings, limitMm } of labelledShapes) {
      const [outer, ...holes] = rings(PAGE_TOLERANCE_MM);
      const said = (region: CleanRegion, scale: number): string[] =>
        narrowStretches(medialAxis(region), limitMm * scale)
          .map(
            (each) =>
              `${each.kind} ${(each.lengthMm / scale).toFixed(4)} ${(each.narrowestMm / scale).toFixed(6)}`,
          )
          .toSorted();
      const plain = said(cleanFrom([outer], holes), 1);
      for (const [map, transform] of Object.entries(maps)) {
        const ringOf = (ring: number[]) => [...transformRings(transform, cleanFrom([ring])).coords];
        const region = cleanFrom([ringOf(outer)], holes.map(ringOf));
        expect(said(region, transform[3] === c ? 1 : transform[3]), `${name}, ${map}`).toEqual(plain);
      }
    }
  });

  test('every other rule is wrong more often', () => {
    const [ours, ...others] = rows;
    expect(ours.rule).toBe('ours');
    for (const { rule, score } of others) {
      const theirs = score.falseAlarms + score.misses + score.wrongKind;
      expect(theirs, rule).toBeGreaterThan(ours.score.falseAlarms + ours.score.misses + ours.score.wrongKind);
    }
    expect(ours.letterFalse).toBe(0);
    expect(ours.letterMissed).toBe(0);
  });

  test('the narrowest stroke is thinner than the limit exactly where a stroke is labelled', () => {
    // the false alarm that the page names: at its mouth the spur has a bottleneck
    const known = 'bar with a spur as long as it is wide';
    for (const { name, rings, limitMm, strokes = [] } of labelledShapes.filter(
      ({ name }) => name !== known,
    )) {
      const [outer, ...holes] = rings(PAGE_TOLERANCE_MM);
      const { narrowestMm } = strokeWidths(medialAxis(cleanFrom([outer], holes)));
      expect((narrowestMm ?? Infinity) < limitMm, `${name}: ${narrowestMm}`).toBe(strokes.length > 0);
    }
  });
});

test('docs/method/strokes.md shows what the rules score today', () => {
  expectPage('docs/method/strokes.md', renderStrokesPage(rows, PAGE_TOLERANCE_MM));
});
