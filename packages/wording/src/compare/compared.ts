import { type Job, type JobInput, SETTINGS, type SettingKey } from '@pourproof/job';
import type { LengthUnit, Rings } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';

/** What a row of a comparison comes to; `pourproof` makes them. */
export interface ComparedFigures {
  readonly verdict: Report['verdict'];
  readonly findings: readonly Pick<Report['findings'][number], 'code' | 'severity'>[];
  readonly lostLengthMm: number;
  readonly levelledAwayMm: number;
  readonly leftStandingMm2: number;
  readonly narrowestMm: number | null;
  readonly minutes: number;
  readonly changeMinutes: number | null;
  readonly massG: number;
  readonly price: number | null;
  readonly travelMm: { readonly median: number; readonly low: number; readonly high: number } | null;
}

/** A row to be told. */
export interface ToldRow {
  /** The artwork, as messages name it. */
  readonly artwork: string;
  readonly values: JobInput;
  readonly outcome:
    | {
        readonly is: 'judged';
        readonly figures: ComparedFigures;
        readonly picture?: {
          readonly artwork: Rings;
          readonly cut: Rings;
          readonly standing: readonly Rings[];
          readonly boundsMm: readonly [number, number, number, number];
        };
      }
    | {
        readonly is: 'refused';
        readonly refusal: { readonly code: string; readonly what: string; readonly remedy: string };
      }
    | { readonly is: 'fault'; readonly what: string };
}

/** A comparison to be told: its rows, the settings that differ in the order of the table, and the unit of lengths. */
export interface Compared {
  readonly rows: readonly ToldRow[];
  readonly keys: readonly SettingKey[];
  readonly unit: LengthUnit;
  /** What it costs to have each bit, as it is typed: its price where it is still to be bought, 0 where it is at hand. */
  readonly bitPrices?: ReadonlyMap<string, number>;
  /** A job of the table, for what it takes from the shop and as usual; left out where none can be settled. */
  readonly job?: Job;
}

/** A value of a row as it is typed; several, as bits, in their order. */
export function valueText(key: SettingKey, values: JobInput): string {
  const value = values[key];
  if (value === undefined) {
    return '–';
  }
  const typed = SETTINGS[key].holds.typed(value as never);
  return Array.isArray(typed) ? typed.map(String).join(' then ') : String(typed);
}

/** Whether rows are of several artworks. */
export function hasSeveralArtworks({ rows }: Compared): boolean {
  return new Set(rows.map(({ artwork }) => artwork)).size > 1;
}
