import type { LengthUnit } from '@pourproof/plane';

/** What is wrong, in one sentence, and what to do about it. */
export interface RefusalWords {
  readonly what: string;
  readonly remedy: string;
}

/** The words for every code of one reader, from its parameters alone, lengths in `unit`; a code without words does not compile. */
export type RefusalTable<Faults> = {
  readonly [Code in keyof Faults]: (parameters: Faults[Code], unit: LengthUnit) => RefusalWords;
};
