import type { Report } from '@pourproof/proof';
import type { Figures } from './row.ts';

const GRADES: readonly Report['findings'][number]['severity'][] = ['stop', 'caution', 'note'];

/** The figures of a report that are compared, digit for digit. */
export function figuresOf(report: Report): Figures {
  const { strokes, levelling, cut, pour, bleed } = report;
  const findings = report.findings.filter(({ seenTo }) => seenTo !== true);
  const worst = bleed.blocks
    .map(({ travelMm: { median, low, high } }) => ({ median, low, high }))
    .toSorted((a, b) => b.median - a.median || b.high - a.high)[0];
  return {
    verdict: report.verdict,
    findings: findings
      .map(({ code, severity }) => ({ code, severity }))
      .toSorted((a, b) => GRADES.indexOf(a.severity) - GRADES.indexOf(b.severity)),
    lostLengthMm: strokes.lengthNarrowerThanBitMm,
    levelledAwayMm: levelling.lostLengthMm,
    leftStandingMm2: cut.leftStandingMm2,
    narrowestMm: strokes.narrowestMm,
    minutes: cut.time.minutes,
    changeMinutes: cut.time.changeMinutes ?? null,
    massG: pour.colours.reduce((sum, { massG }) => sum + massG, 0),
    price: pour.price ?? null,
    travelMm: worst ?? null,
  };
}
