import type { MedialAxis, SeparatePart } from '@pourproof/geometry';
import { linesOf, partsOf } from '../cut/of-axis.ts';
import type { LevelledForm } from '../levelling/cut-margins.ts';
import { clearShareOfDot } from '../levelling/round-section.ts';
import { clearShare } from '../levelling/stroke-margin.ts';
import { widthBelow } from '../levelling/width-below.ts';
import type { Measured } from '../measured.ts';
import type { FindingPlace } from '../report/finding-schema.ts';
import { lengthOf, placeOfDisc, placeOfStretch } from './places.ts';

/** Share of clear seal in the section from which a stroke reads as pale (our choice: half). */
export const MOSTLY_CLEAR = 0.5;
/** Widest stroke or dot that is looked for, mm. */
const WIDEST_MM = 1000;

/** A stroke or a dot that is mostly clear. */
export interface PalePart {
  readonly form: LevelledForm;
  readonly widthMm: number;
  readonly place: FindingPlace;
}

/** Share of clear seal, 0 to 1, in a stroke or dot of this width under a film in mm; 0 where none is cut. */
export function clearShareAt(
  { shape, bitMm }: Measured,
  { form, widthMm }: Pick<PalePart, 'form' | 'widthMm'>,
  filmMm: number,
): number {
  // a stroke as wide as the bit is cut though its curves were flattened
  const section = shape.sectionAt(Math.max(bitMm, widthMm));
  if (section === null) {
    return 0;
  }
  return Math.min(1, (form === 'dot' ? clearShareOfDot : clearShare)(section, filmMm));
}

/** Width in mm below which strokes or dots are mostly clear under a film. */
export function paleBelow(measured: Measured, form: LevelledForm, filmMm: number): number {
  return widthBelow(
    (widthMm) => clearShareAt(measured, { form, widthMm }, filmMm) >= MOSTLY_CLEAR,
    measured.bitMm,
  );
}

/** Strokes and dots that are mostly clear under a film in mm. */
export function paleParts(measured: Measured, filmMm: number): readonly PalePart[] {
  return filmMm === 0 ? [] : [...paleStrokes(measured, filmMm), ...paleDots(measured, filmMm)];
}

/** The largest share of clear seal in a stroke or dot that is mostly clear under a film in mm; 0 where none is. */
export function paleShare(measured: Measured, filmMm: number): number {
  return paleParts(measured, filmMm).reduce(
    (most, each) => Math.max(most, clearShareAt(measured, each, filmMm)),
    0,
  );
}

function paleStrokes(measured: Measured, filmMm: number): readonly PalePart[] {
  const { bitMm, job } = measured;
  const limit = paleBelow(measured, 'stroke', filmMm);
  if (limit <= bitMm) {
    return [];
  }
  return measured
    .narrowerThan(Math.min(limit, WIDEST_MM))
    .filter(
      (stretch) =>
        stretch.kind === 'stroke' &&
        // shorter than it is wide is a waist, not a stroke (our choice)
        stretch.lengthMm > Math.max(bitMm, stretch.narrowestMm) &&
        stretch.narrowestMm >= bitMm - job.toleranceMm,
    )
    .map((stretch) => ({ form: 'stroke', widthMm: stretch.narrowestMm, place: placeOfStretch(stretch) }));
}

function paleDots(measured: Measured, filmMm: number): readonly PalePart[] {
  const { bitMm, job } = measured;
  const limit = paleBelow(measured, 'dot', filmMm);
  return dotsOf(measured)
    .filter(({ widthMm }) => widthMm >= bitMm - 2 * job.toleranceMm && widthMm < limit)
    .map(({ atMm, widthMm }) => ({ form: 'dot', widthMm, place: placeOfDisc(atMm, widthMm) }));
}

const known = new WeakMap<MedialAxis, readonly SeparatePart[]>();

/** Separate parts whose strokes, if they have any, are no longer than wide: dots, squares, hearts. Kept as long as the axis is. */
export function dotsOf({ axis }: Pick<Measured, 'axis'>): readonly SeparatePart[] {
  const dots = known.get(axis) ?? dotsAmong(axis);
  known.set(axis, dots);
  return dots;
}

function dotsAmong(axis: MedialAxis): readonly SeparatePart[] {
  const lengths = new Map<number, number>();
  for (const { kind, part, path } of linesOf(axis)) {
    if (kind === 'stroke') {
      lengths.set(part, (lengths.get(part) ?? 0) + lengthOf(path));
    }
  }
  return partsOf(axis).filter(({ part, widthMm }) => (lengths.get(part) ?? 0) <= widthMm);
}
