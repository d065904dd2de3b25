import { type Bounds, isEmptyBounds, MM_PER_INCH, type Notice } from '@pourproof/plane';
import type { DxfDocument } from './dxf-document.ts';
import { type AssumedUnit, dxfNotice } from './dxf-notices.ts';

/** A unit that the numbers of a DXF file can be given in by hand. */
export type DxfUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft';

/** Millimetres in each unit that can be given by hand. */
const MM_PER_UNIT: Readonly<Record<DxfUnit, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  ft: 12 * MM_PER_INCH,
};

/** Millimetres in a US survey foot: 1200/3937 m exactly (NIST Special Publication 811, B.6; from memory). */
const MM_PER_SURVEY_FOOT = (1200 / 3937) * 1000;

/** Name and millimetres of each value of `$INSUNITS` above 0 (DXF reference, HEADER and BLOCK_RECORD). */
const INSERT_UNITS: readonly (readonly [name: string, mm: number])[] = [
  ['inch', MM_PER_INCH],
  ['foot', 12 * MM_PER_INCH],
  ['mile', 63360 * MM_PER_INCH],
  ['millimetre', 1],
  ['centimetre', 10],
  ['metre', 1e3],
  ['kilometre', 1e6],
  ['microinch', MM_PER_INCH / 1e6],
  ['mil', MM_PER_INCH / 1e3],
  ['yard', 36 * MM_PER_INCH],
  ['ångström', 1e-7],
  ['nanometre', 1e-6],
  ['micrometre', 1e-3],
  ['decimetre', 100],
  ['decametre', 1e4],
  ['hectometre', 1e5],
  ['gigametre', 1e12],
  ['astronomical unit', 149_597_870_700e3],
  ['light year', 9_460_730_472_580_800e3],
  ['parsec', (149_597_870_700e3 * 648_000) / Math.PI],
  ['US survey foot', MM_PER_SURVEY_FOOT],
  ['US survey inch', MM_PER_SURVEY_FOOT / 12],
  ['US survey yard', 3 * MM_PER_SURVEY_FOOT],
  ['US survey mile', 5280 * MM_PER_SURVEY_FOOT],
];

/** Why a unit had to be assumed. */
export interface UnitDoubt extends Pick<AssumedUnit, 'insertUnits' | 'hasHeader'> {
  readonly code: 'unit-missing' | 'unitless' | 'unit-unknown';
}

/** How the numbers of a DXF file become mm. */
export interface DxfScale {
  readonly mmPerUnit: number;
  /** In words, for people. */
  readonly source: string;
  /** Why the unit is only assumed; `undefined` when the file or the maker says it. */
  readonly doubt?: UnitDoubt;
}

/**
 * The unit of a DXF file: what the maker says, else `$INSUNITS`, else the measuring system in `$MEASUREMENT`
 * (1: mm, 0: inch), else mm. The last two are assumptions and carry a doubt.
 */
export function dxfScale(document: DxfDocument, unit?: DxfUnit): DxfScale {
  if (unit !== undefined) {
    return { mmPerUnit: MM_PER_UNIT[unit], source: `drawing units taken as ${unit}, as asked` };
  }
  const code = document.header.get('$INSUNITS');
  const known = typeof code === 'number' ? INSERT_UNITS[code - 1] : undefined;
  if (known) {
    return { mmPerUnit: known[1], source: `$INSUNITS ${code}: 1 drawing unit is 1 ${known[0]}` };
  }
  const metric = document.header.get('$MEASUREMENT') !== 0;
  const assumed = metric ? 'mm' : 'inch';
  const by = document.header.has('$MEASUREMENT')
    ? ` because $MEASUREMENT is ${metric ? 'metric' : 'English'}`
    : '';
  return {
    mmPerUnit: metric ? 1 : MM_PER_INCH,
    source: `no unit in the file: 1 drawing unit is assumed to be 1 ${assumed}${by}`,
    doubt: doubtOf(document, code),
  };
}

function doubtOf(document: DxfDocument, value: string | number | undefined): UnitDoubt {
  const code = value === 0 ? 'unitless' : value === undefined ? 'unit-missing' : 'unit-unknown';
  return {
    code,
    insertUnits: typeof value === 'number' && Number.isFinite(value) ? value : '',
    hasHeader: document.hasHeader ? 'yes' : 'no',
  };
}

/** The notice for an assumed unit, with the size of the artwork in both readings. */
export function unitNotice(
  { code, insertUnits, hasHeader }: UnitDoubt,
  mmPerUnit: number,
  boundsMm: Bounds,
): Notice {
  const [widthMm, heightMm] = isEmptyBounds(boundsMm)
    ? [0, 0]
    : [(boundsMm[2] - boundsMm[0]) / mmPerUnit, (boundsMm[3] - boundsMm[1]) / mmPerUnit];
  return dxfNotice(code, {
    insertUnits,
    hasHeader,
    widthMm,
    heightMm,
    widthIfInchMm: widthMm * MM_PER_INCH,
    heightIfInchMm: heightMm * MM_PER_INCH,
    used: mmPerUnit === 1 ? 'mm' : 'inches',
  });
}
