import { clearShare } from '../levelling/stroke-margin.ts';
import { widthBelow } from '../levelling/width-below.ts';
import type { Measured } from '../measured.ts';

/** Share of clear seal in the section from which a stroke reads as pale (our choice: half). */
export const MOSTLY_CLEAR = 0.5;

/** Share of clear seal, 0 to 1, in a stroke of this width under a film in mm; 0 where none is cut. */
export function clearShareAt({ shape, bitMm }: Measured, widthMm: number, filmMm: number): number {
  // a stroke as wide as the bit is cut though its curves were flattened
  const section = shape.sectionAt(Math.max(bitMm, widthMm));
  return section === null ? 0 : Math.min(1, clearShare(section, filmMm));
}

/** Width in mm below which strokes are mostly clear under a film. */
export function paleBelow(measured: Measured, filmMm: number): number {
  return widthBelow((widthMm) => clearShareAt(measured, widthMm, filmMm) >= MOSTLY_CLEAR, measured.bitMm);
}

/** Strokes that are mostly clear under a film in mm. */
export function paleStrokes(measured: Measured, filmMm: number): ReturnType<Measured['narrowerThan']> {
  const { bitMm, job } = measured;
  const limit = paleBelow(measured, filmMm);
  if (filmMm === 0 || limit <= bitMm) {
    return [];
  }
  return measured.narrowerThan(Number.isFinite(limit) ? limit : 1000).filter(
    (stretch) =>
      stretch.kind === 'stroke' &&
      // shorter than it is wide is a waist, not a stroke (our choice)
      stretch.lengthMm > Math.max(bitMm, stretch.narrowestMm) &&
      stretch.narrowestMm >= bitMm - job.toleranceMm,
  );
}

/** The largest share of clear seal in a stroke that is mostly clear under a film in mm; 0 where none is. */
export function paleShare(measured: Measured, filmMm: number): number {
  return paleStrokes(measured, filmMm).reduce(
    (most, { narrowestMm }) => Math.max(most, clearShareAt(measured, narrowestMm, filmMm)),
    0,
  );
}
