import { DEFAULT_FLATTEN_TOLERANCE_MM } from '@pourproof/plane';
import { expect, test } from 'vitest';
import { renderAccuracyPage } from '../pages/accuracy-page.ts';
import { accuracySweep, CAP_HEIGHTS_MM, FACES, TOLERANCES_MM } from '../support/accuracy-sweep.ts';
import { expectPage } from '../support/expect-page.ts';

const sweep = await accuracySweep();

test('at the default tolerance area and V volume are within 0.02 % of the drawn curves', () => {
  const rows = sweep.filter((row) => row.toleranceMm === DEFAULT_FLATTEN_TOLERANCE_MM);
  expect(rows.length).toBe(FACES.length * CAP_HEIGHTS_MM.length);
  for (const { face, capHeightMm, share } of rows) {
    expect(Math.abs(share.area), `${face}, caps ${capHeightMm} mm`).toBeLessThan(2e-4);
    expect(Math.abs(share.vVolume), `${face}, caps ${capHeightMm} mm`).toBeLessThan(2e-4);
  }
});

test('the error of V volume falls with the tolerance', () => {
  for (const row of sweep) {
    const finer = sweep.find(
      ({ face, capHeightMm, toleranceMm }) =>
        face === row.face &&
        capHeightMm === row.capHeightMm &&
        toleranceMm === TOLERANCES_MM[TOLERANCES_MM.indexOf(row.toleranceMm) - 1],
    );
    if (finer !== undefined) {
      const ratio = row.toleranceMm / finer.toleranceMm;
      // in proportion where curves are cut into many pieces; in few they are finer than asked
      expect(finer.share.vVolume / row.share.vVolume).toBeGreaterThan(0.8 / ratio);
      expect(finer.share.vVolume / row.share.vVolume).toBeLessThan(2.2 / ratio);
    }
  }
});

test('docs/method/accuracy.md shows what the sweep gives today', () => {
  expectPage('docs/method/accuracy.md', renderAccuracyPage(sweep));
});
