import { flagOf } from '@pourproof/job';
import { formatLength } from '@pourproof/plane';
import { formatMinutes } from '../facts/cutter-facts.ts';
import { findingTitle } from '../findings/words-of-finding.ts';
import {
  type Compared,
  type ComparedFigures,
  hasSeveralArtworks,
  type ToldRow,
  valueText,
} from './compared.ts';

/** A table of texts: its columns, and for each row its cells, or the start of a row and why it has no figures. */
export interface CompareTable {
  /** Columns that say what is compared. */
  readonly given: readonly string[];
  readonly found: readonly CompareColumn[];
  readonly rows: readonly CompareCells[];
}

/** A column of figures. */
export interface CompareColumn {
  readonly name: string;
  /** Of numbers that stand by themselves; `''` for words. */
  readonly unit: string;
  /** Where room is short, the columns of the highest number are left out first; 0 for those that stay. */
  readonly leaves: number;
}

/** The cells of a row. */
export interface CompareCells {
  readonly given: readonly string[];
  /** With units; `null` where the row was refused. */
  readonly found: readonly string[] | null;
  /** The same without units. */
  readonly bare: readonly string[] | null;
  /** What is gravest, or why there are no figures. */
  readonly remarks: readonly Remark[];
}

/** A word on a row: its code where it has one, and what that means. */
export interface Remark {
  readonly code: string;
  readonly text: string;
}

/** What a cell holds where there is nothing to say. */
export const NOTHING = '–';

/** Digits of a mass: of the finest scale in use. */
const MASS_DIGITS = 1;

/** A comparison as a table to read. What no row has is no column. */
export function compareCells(compared: Compared): CompareTable {
  const { rows, keys, unit } = compared;
  const figures = rows.flatMap(({ outcome }) => (outcome.is === 'judged' ? [outcome.figures] : []));
  const columns = COLUMNS.filter(({ isNeeded = () => true }) => figures.some(isNeeded));
  const withArtwork = hasSeveralArtworks(compared);
  return {
    given: [...(withArtwork ? ['artwork'] : []), ...keys.map((key) => flagOf(key) ?? key)],
    found: columns.map(({ name, unitOf = () => '', leaves }) => ({ name, unit: unitOf(unit), leaves })),
    rows: rows.map((row) => {
      const { outcome } = row;
      const told = outcome.is === 'judged' ? outcome.figures : null;
      return {
        given: [...(withArtwork ? [row.artwork] : []), ...keys.map((key) => valueText(key, row.values))],
        found: told === null ? null : columns.map(({ of }) => of(told, unit)),
        bare: told === null ? null : columns.map(({ of, bare = of }) => bare(told, unit)),
        remarks: remarksOf(row),
      };
    }),
  };
}

type Cell = (figures: ComparedFigures, unit: Compared['unit']) => string;

interface Column {
  readonly name: string;
  /** With its unit. */
  readonly of: Cell;
  /** Without; the same if left out. */
  readonly bare?: Cell;
  readonly unitOf?: (unit: Compared['unit']) => string;
  readonly leaves: number;
  readonly isNeeded?: (figures: ComparedFigures) => boolean;
}

const lengthUnit = (unit: Compared['unit']): string => unit;

/** A length in the table's unit, without it. */
export function bareLength(mm: number, unit: Compared['unit']): string {
  return mm === 0 ? '0' : formatLength(mm, unit).replace(/ \S+$/u, '');
}

/** Minutes without their unit. */
export function bareMinutes(minutes: number): string {
  return minutes === 0 ? '0' : minutes < 1 ? '<1' : minutes.toFixed(minutes < 10 ? 1 : 0);
}

/** A mass without its unit. */
export function bareMass(massG: number): string {
  return massG.toFixed(MASS_DIGITS);
}

function lengthColumn(
  name: string,
  leaves: number,
  lengthOf: (figures: ComparedFigures) => number | null,
): Column {
  return {
    name,
    leaves,
    unitOf: lengthUnit,
    of: (figures, unit) => {
      const mm = lengthOf(figures);
      return mm === null ? NOTHING : mm === 0 ? '0' : formatLength(mm, unit);
    },
    bare: (figures, unit) => {
      const mm = lengthOf(figures);
      return mm === null ? NOTHING : bareLength(mm, unit);
    },
  };
}

const COLUMNS: readonly Column[] = [
  { name: 'verdict', of: ({ verdict }) => verdict.toUpperCase(), leaves: 0 },
  lengthColumn('lost', 0, ({ lostLengthMm }) => lostLengthMm),
  {
    ...lengthColumn('levelled', 1, ({ levelledAwayMm }) => levelledAwayMm),
    isNeeded: ({ levelledAwayMm }) => levelledAwayMm > 0,
  },
  lengthColumn('narrowest', 4, ({ narrowestMm }) => narrowestMm),
  {
    name: 'time',
    leaves: 0,
    of: ({ minutes }) => formatMinutes(minutes),
    bare: ({ minutes }) => bareMinutes(minutes),
    unitOf: () => 'min',
  },
  {
    name: 'changes',
    leaves: 5,
    of: ({ changeMinutes }) => (changeMinutes === null ? NOTHING : formatMinutes(changeMinutes)),
    bare: ({ changeMinutes }) => (changeMinutes === null ? NOTHING : bareMinutes(changeMinutes)),
    unitOf: () => 'min',
    isNeeded: ({ changeMinutes }) => changeMinutes !== null,
  },
  {
    name: 'mix',
    leaves: 2,
    of: ({ massG }) => `${bareMass(massG)} g`,
    bare: ({ massG }) => bareMass(massG),
    unitOf: () => 'g',
  },
  {
    name: 'price',
    leaves: 3,
    of: ({ price }) => (price === null ? NOTHING : price.toFixed(2)),
    isNeeded: ({ price }) => price !== null,
  },
  {
    name: 'travel',
    leaves: 6,
    of: ({ travelMm }, unit) =>
      travelMm === null
        ? NOTHING
        : `${formatLength(travelMm.median, unit)} (to ${formatLength(travelMm.high, unit)})`,
    bare: ({ travelMm }, unit) =>
      travelMm === null
        ? NOTHING
        : `${bareLength(travelMm.median, unit)} to ${bareLength(travelMm.high, unit)}`,
    unitOf: lengthUnit,
  },
];

/** What is gravest, or why there are no figures. */
function remarksOf({ outcome }: ToldRow): readonly Remark[] {
  switch (outcome.is) {
    case 'judged': {
      const { verdict, findings } = outcome.figures;
      const gravest = new Set(
        findings.filter(({ severity }) => severity === verdict).map(({ code }) => code),
      );
      return gravest.size === 0 && verdict !== 'clear'
        ? [{ code: '', text: 'Said when the artwork was read: vet it to see what.' }]
        : [...gravest].map((code) => ({ code, text: findingTitle(code) }));
    }
    case 'refused':
      return [
        {
          code: '',
          text: [outcome.refusal.what, outcome.refusal.remedy].filter((part) => part !== '').join(' '),
        },
      ];
    case 'fault':
      return [{ code: '', text: `A fault in pourproof: ${outcome.what}` }];
  }
}
