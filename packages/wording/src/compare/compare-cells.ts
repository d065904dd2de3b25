import { flagOf } from '@pourproof/job';
import { formatLength } from '@pourproof/plane';
import { formatMinutes } from '../facts/cutter-facts.ts';
import {
  type Compared,
  type ComparedFigures,
  hasSeveralArtworks,
  type ToldRow,
  valueText,
} from './compared.ts';

/** A table of texts: the names of its columns, and for each row its cells, or the start of a row and why it has no figures. */
export interface CompareTable {
  /** Columns that say what is compared. */
  readonly given: readonly string[];
  readonly found: readonly string[];
  readonly rows: readonly CompareCells[];
}

/** The cells of a row. */
export interface CompareCells {
  readonly given: readonly string[];
  /** `null` where the row was refused. */
  readonly found: readonly string[] | null;
  /** What is gravest, or why there are no figures; `''` where there is nothing to say. */
  readonly remark: string;
}

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
    found: columns.map(({ name }) => name),
    rows: rows.map((row) => ({
      given: [...(withArtwork ? [row.artwork] : []), ...keys.map((key) => valueText(key, row.values))],
      found:
        row.outcome.is === 'judged'
          ? columns.map(({ of }) => of((row.outcome as { figures: ComparedFigures }).figures, unit))
          : null,
      remark: remarkOf(row),
    })),
  };
}

interface Column {
  readonly name: string;
  readonly of: (figures: ComparedFigures, unit: Compared['unit']) => string;
  readonly isNeeded?: (figures: ComparedFigures) => boolean;
}

const COLUMNS: readonly Column[] = [
  { name: 'verdict', of: ({ verdict }) => verdict.toUpperCase() },
  {
    name: 'lost',
    of: ({ lostLengthMm }, unit) => (lostLengthMm === 0 ? '0' : formatLength(lostLengthMm, unit)),
  },
  {
    name: 'levelled away',
    of: ({ levelledAwayMm }, unit) => (levelledAwayMm === 0 ? '0' : formatLength(levelledAwayMm, unit)),
    isNeeded: ({ levelledAwayMm }) => levelledAwayMm > 0,
  },
  {
    name: 'narrowest',
    of: ({ narrowestMm }, unit) => (narrowestMm === null ? '–' : formatLength(narrowestMm, unit)),
  },
  { name: 'time', of: ({ minutes }) => formatMinutes(minutes) },
  {
    name: 'changes',
    of: ({ changeMinutes }) => (changeMinutes === null ? '–' : formatMinutes(changeMinutes)),
    isNeeded: ({ changeMinutes }) => changeMinutes !== null,
  },
  { name: 'mix', of: ({ massG }) => `${massG.toFixed(MASS_DIGITS)} g` },
  {
    name: 'price',
    of: ({ price }) => (price === null ? '–' : price.toFixed(2)),
    isNeeded: ({ price }) => price !== null,
  },
  {
    name: 'travel',
    of: ({ travelMm }, unit) =>
      travelMm === null
        ? '–'
        : `${formatLength(travelMm.median, unit)} (to ${formatLength(travelMm.high, unit)})`,
  },
];

/** The codes of what is gravest, or why there are no figures. */
function remarkOf({ outcome }: ToldRow): string {
  switch (outcome.is) {
    case 'judged': {
      const { verdict, findings } = outcome.figures;
      const codes = findings.filter(({ severity }) => severity === verdict).map(({ code }) => code);
      return [...new Set(codes)].join(', ');
    }
    case 'refused':
      return [outcome.refusal.what, outcome.refusal.remedy].filter((part) => part !== '').join(' ');
    case 'fault':
      return `A fault in pourproof: ${outcome.what}`;
  }
}
