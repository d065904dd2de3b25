import type { StrokeWidths } from '@pourproof/geometry';
import type { Measured } from '../measured.ts';
import type { Report } from './report.ts';

/** Edges of the stroke-width classes of the report, in mm (our choice: fine where bits are small). */
const WIDTH_CLASSES_MM: readonly number[] = [
  0, 0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4, 6, 8, 12, 16, 25, 50, 100, 1000,
];

/** Lengths by class, kept as long as the widths are. */
const known = new WeakMap<StrokeWidths, Float64Array>();

function lengthsOf(strokes: StrokeWidths): Float64Array {
  const lengths = known.get(strokes) ?? strokes.histogram(WIDTH_CLASSES_MM);
  known.set(strokes, lengths);
  return lengths;
}

/** The strokes of the artwork by width. */
export function strokesPart({ strokes, narrowerLength, bitMm, shape }: Measured): Report['strokes'] {
  const lengths = lengthsOf(strokes);
  return {
    narrowestMm: strokes.narrowestMm,
    narrowestAt: strokes.narrowestMm === null ? null : strokes.narrowestAt,
    // the tip of a V says nothing of how wide a stroke it cuts
    narrowestToBit:
      strokes.narrowestMm === null || bitMm === 0 || shape.includedRad !== null
        ? null
        : strokes.narrowestMm / bitMm,
    lengthMm: strokes.lengthMm,
    lengthNarrowerThanBitMm: narrowerLength,
    tapers: taperPart(strokes.tapers, bitMm),
    widthHistogram: Array.from(lengths, (lengthMm, k) => ({
      fromMm: WIDTH_CLASSES_MM[k] ?? 0,
      toMm: WIDTH_CLASSES_MM[k + 1] ?? 0,
      lengthMm,
    })).filter((row) => row.lengthMm > 0),
  };
}

function taperPart(tapers: Measured['strokes']['tapers'], bitMm: number): Report['strokes']['tapers'] {
  if (tapers === null) {
    return null;
  }
  const { lengthNarrowerThan, ...widths } = tapers;
  return { ...widths, lengthNarrowerThanBitMm: lengthNarrowerThan(bitMm) };
}

/** The wood between cuts. */
export function sliversPart({ slivers }: Measured): Report['slivers'] {
  return {
    narrowestMm: slivers.narrowestMm,
    narrowestAt: slivers.narrowestMm === null ? null : slivers.narrowestAt,
    shortGrain: slivers.thin.map(({ path: _, ...sliver }) => sliver),
  };
}
