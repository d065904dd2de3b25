import { mmFromInches } from '@pourproof/plane';
import { type Cited, cited } from './cited.ts';

/** Shape of the working end of a cutter. */
export type CutterShape = 'flat' | 'vee' | 'ball' | 'tapered-ball';

/** A size of cutter in common use. */
export interface CutterSize {
  readonly shape: CutterShape;
  /** As makers write it: `1/16in`, `3mm`, `60deg`. */
  readonly label: string;
  /** Cutting diameter in mm: of the shank end for a V, of the tip for a tapered ball. */
  readonly diameterMm: number;
  /** Included angle in degrees of a V, or angle per side of a tapered ball; `null` for flat and ball. */
  readonly angleDeg: number | null;
}

/** Sizes of cutter in common use for lettering, flat ones first, by falling diameter within a shape. */
export const cutterSizes: Cited<readonly CutterSize[]> = cited(
  [
    flat('1/4in', mmFromInches(1 / 4)),
    flat('6mm', 6),
    flat('3/16in', mmFromInches(3 / 16)),
    flat('1/8in', mmFromInches(1 / 8)),
    flat('3mm', 3),
    flat('2mm', 2),
    flat('1/16in', mmFromInches(1 / 16)),
    flat('1.5mm', 1.5),
    flat('1mm', 1),
    flat('1/32in', mmFromInches(1 / 32)),
    { shape: 'vee', label: '90deg', diameterMm: mmFromInches(1 / 2), angleDeg: 90 },
    { shape: 'vee', label: '60deg', diameterMm: mmFromInches(1 / 2), angleDeg: 60 },
    { shape: 'vee', label: '30deg', diameterMm: mmFromInches(1 / 4), angleDeg: 30 },
    { shape: 'ball', label: '1/8in', diameterMm: mmFromInches(1 / 8), angleDeg: null },
    { shape: 'tapered-ball', label: '1mm', diameterMm: 1, angleDeg: 5 },
    { shape: 'tapered-ball', label: '0.5mm', diameterMm: 0.5, angleDeg: 5 },
  ],
  'practice',
  'common-practice',
  'bit-trade-pages',
);

function flat(label: string, diameterMm: number): CutterSize {
  return { shape: 'flat', label, diameterMm, angleDeg: null };
}
