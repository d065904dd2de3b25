/** Reads the group code and value pairs of a DXF file one by one, whatever the form of the file. */
export interface DxfGroups {
  /** Group code of the current pair. */
  readonly code: number;
  /** The current value: text, or a number where the code calls for one (NaN when it cannot be read). */
  readonly value: string | number;
  /** Line of the current value from 1 for text; number of the pair for binary files. */
  readonly line: number;
  /** Set when reading stopped before the end because the pairs are broken: the line where. */
  readonly brokenAt: number;
  /** Moves to the next pair; false at the end of the data. */
  next(): boolean;
}

/** How a value is written, by its group code. */
export type GroupKind = 'text' | 'double' | 'int16' | 'int32' | 'int64' | 'bool' | 'chunk';

/**
 * First and last code of each kind of value (DXF reference, "Group Code Value Types"); what is not listed is
 * text.
 */
const KINDS: readonly (readonly [from: number, to: number, kind: GroupKind])[] = [
  [10, 59, 'double'],
  [60, 79, 'int16'],
  [90, 99, 'int32'],
  [110, 149, 'double'],
  [160, 169, 'int64'],
  [170, 179, 'int16'],
  [210, 239, 'double'],
  [270, 289, 'int16'],
  [290, 299, 'bool'],
  [310, 319, 'chunk'],
  [370, 389, 'int16'],
  [400, 409, 'int16'],
  [420, 429, 'int32'],
  [440, 459, 'int32'],
  [460, 469, 'double'],
  [1004, 1004, 'chunk'],
  [1010, 1059, 'double'],
  [1060, 1070, 'int16'],
  [1071, 1071, 'int32'],
];

const KIND_OF_CODE: readonly GroupKind[] = Array.from({ length: 1072 }, (_, code) => {
  return KINDS.find(([from, to]) => code >= from && code <= to)?.[2] ?? 'text';
});

/** How the value of a group code is written. */
export function groupKind(code: number): GroupKind {
  return KIND_OF_CODE[code] ?? 'text';
}
