import { DEFAULT_FLATTEN_TOLERANCE_MM } from '@pourproof/plane';
import { choice, measure } from './holds.ts';
import type { Rows } from './setting.ts';

const CARVE_MODES = ['all', 'visible'] as const;
const FILE_UNITS = ['mm', 'cm', 'm', 'in', 'ft'] as const;

/** How a file is read beyond its size; what the job does not say is absent and left to the reader. */
export interface FileReading {
  /** What of an SVG is carved: all that is painted, or only what no other paint covers. */
  readonly carve?: (typeof CARVE_MODES)[number];
  /** Unit of a DXF drawing. */
  readonly unit?: (typeof FILE_UNITS)[number];
  /** Widest gap that is closed between lines of a DXF drawing. */
  readonly joinToleranceMm?: number;
}

/** Settings of reading a file. */
export const READING_SETTINGS = {
  carve: {
    isOfArtwork: true,
    holds: choice(CARVE_MODES, { all: 'all that is painted', visible: 'what no other paint covers' }),
    field: 'carve',
    otherwise: 'all that is painted',
    group: 'reading',
    takes: 'all|visible',
    help: 'Carve all that is painted, or only what no other paint covers (SVG)',
    label: 'Carve of an SVG',
    only: { formats: ['svg'], about: 'what of the paint is carved' },
  },
  fileUnit: {
    isOfArtwork: true,
    holds: choice(FILE_UNITS),
    field: 'unit',
    otherwise: 'as the file says',
    group: 'reading',
    takes: 'UNIT',
    help: 'Unit of a DXF drawing: mm, cm, m, in or ft',
    label: 'Unit of a DXF drawing',
    only: { formats: ['dxf'], about: 'the unit of a DXF drawing' },
  },
  join: {
    isOfArtwork: true,
    holds: measure('length', '0.1mm', { above: 0, max: 100, isOfReading: true }),
    field: 'joinToleranceMm',
    otherwise: 'rounding alone',
    group: 'reading',
    takes: 'LENGTH',
    help: 'Widest gap that is closed between lines of a DXF drawing',
    label: 'Widest gap closed in a DXF drawing',
    only: { formats: ['dxf'], about: 'the widest gap that is closed between lines of a DXF drawing' },
  },
} as const satisfies Rows<FileReading>;

/** How fine all artwork is read. */
export interface FlatteningSettings {
  readonly toleranceMm: number;
}

/** Settings of flattening. */
export const FLATTENING_SETTINGS = {
  tolerance: {
    holds: measure('length', '0.005mm', { min: 1e-4, max: 0.5, isOfReading: true }),
    field: 'toleranceMm',
    usual: { value: `${DEFAULT_FLATTEN_TOLERANCE_MM}mm`, status: 'practice', because: ['own-inference'] },
    group: 'reading',
    takes: 'LENGTH',
    help: 'Largest deviation when curves become short straight lines',
    label: 'Largest deviation of flattened curves',
  },
} as const satisfies Rows<FlatteningSettings>;
