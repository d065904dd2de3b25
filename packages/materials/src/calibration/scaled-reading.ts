import { bleedClassEndsMm } from '../bleed-travel.ts';
import type { CouponReading } from './coupon.ts';

/**
 * A reading with every length in it times a factor above 0; a class becomes the ends that it lies between.
 */
export function scaledReading(reading: CouponReading, factor: number): CouponReading {
  if (reading.kind === 'streak') {
    const { lengthMm, stepMm } = reading;
    return {
      kind: 'streak',
      lengthMm: lengthMm * factor,
      ...(stepMm === undefined ? {} : { stepMm: stepMm * factor }),
    };
  }
  if (reading.kind === 'none-visible') {
    return { kind: 'none-visible', belowMm: reading.belowMm * factor };
  }
  const [fromMm, toMm] = endsOf(reading);
  return { kind: 'between', fromMm: fromMm * factor, toMm: toMm * factor };
}

/** Whether a slot shows a streak longer than a length in mm; `null` where its reading leaves that open. */
export function isBleeding(reading: CouponReading, visibleMm: number): boolean | null {
  const [fromMm, toMm] = endsOf(reading);
  if (fromMm >= visibleMm) {
    return true;
  }
  return toMm <= visibleMm ? false : null;
}

/** Lengths in mm that a reading lies between. */
function endsOf(reading: CouponReading): readonly [number, number] {
  if (reading.kind === 'streak') {
    const half = (reading.stepMm ?? 0) / 2;
    return [Math.max(0, reading.lengthMm - half), reading.lengthMm + half];
  }
  if (reading.kind === 'none-visible') {
    return [0, reading.belowMm];
  }
  if (reading.kind === 'between') {
    return [reading.fromMm, reading.toMm];
  }
  const [clean, slight, moderate] = bleedClassEndsMm.value;
  const ends = {
    clean: [0, clean],
    slight: [clean, slight],
    moderate: [slight, moderate],
    severe: [moderate, Number.POSITIVE_INFINITY],
  } as const;
  return ends[reading.class];
}
