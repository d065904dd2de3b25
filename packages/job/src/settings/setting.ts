import type { LimitId, Origin } from '@pourproof/materials';
import type { Drawing } from '@pourproof/plane';
import type { BoardPattern } from '../board/board-input.ts';
import type { GroupId } from './groups.ts';
import type { Holds } from './holds.ts';

/** Where a setting means something; everywhere where nothing is said. */
export interface AppliesTo {
  /** Kinds of artwork. */
  readonly formats?: readonly Drawing['format'][];
  /** Only where the wood is sealed. */
  readonly isSealed?: true;
  /** Only for lettering of several lines. */
  readonly hasLines?: true;
  /** Only on a described board, or only without one. */
  readonly board?: 'with' | 'without';
  /** Only for boards of this pattern. */
  readonly pattern?: BoardPattern;
  /** What the setting is about, in words that follow "The job sets". */
  readonly about?: string;
}

/**
 * What a setting is where the maker says nothing, as it is given: a value with its origin, the value of a
 * cited limit, or what follows from the other settings.
 */
export type Usual<Given> =
  | (Origin & { readonly value: Given })
  | { readonly limit: LimitId; readonly as: (value: number) => Given }
  | { readonly follows: (given: { readonly [key: string]: unknown }) => Given; readonly from: string };

/** One setting of a job: all that is said of it anywhere. */
export interface Setting<Given = unknown, Settled = unknown> {
  readonly holds: Holds<Given, Settled>;
  /**
   * The field of the settled job that it fills; `null` where several settings make one field, or it is used
   * before the job is settled.
   */
  readonly field: string | null;
  /** Counted among the settings that were taken as usual where it is not given. */
  readonly usual?: Usual<Given>;
  /** The settled value where it is neither given nor usual; `null` if left out. */
  readonly absent?: Settled;
  /** In words, what holds where it is not given and there is no usual value. */
  readonly otherwise?: string;
  readonly group: GroupId;
  /** What it sets, for help and for the schema; no full stop. */
  readonly help: string;
  /** The flag that sets it, without dashes; `null` for none; the key in kebab case if left out. */
  readonly flag?: string | null;
  /** What is typed after the flag, as help names it; absent for a switch. */
  readonly takes?: string;
  /** Label of its field in a form; absent where the page asks in a way of its own. */
  readonly label?: string;
  /** How it is written, below its field. */
  readonly hint?: string;
  readonly only?: AppliesTo;
  /** Said of the artwork at hand, such as its size or its place: it does not hold for the next drawing. */
  readonly isOfArtwork?: true;
  /** A shop may state it for all its jobs. */
  readonly isOfShop?: true;
}

/**
 * Rows whose fields are those of `Settled`, each of its type. (That a usual value can be settled is a matter
 * of a test.)
 */
export type Rows<Settled> = Readonly<
  Record<
    string,
    | { readonly [Field in keyof Settled & string]-?: RowOf<Settled, Field> }[keyof Settled & string]
    | (Row<unknown> & { readonly field: null })
  >
>;

type RowOf<Settled, Field extends keyof Settled> = Row<NonNullable<Settled[Field]>> & {
  readonly field: Field;
};

type Row<Settled> = Omit<Setting<never, Settled>, 'usual'> & { readonly usual?: Usual<unknown> };
