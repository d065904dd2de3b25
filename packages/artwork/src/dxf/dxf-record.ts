/** One entity or table row of a DXF file: its group codes and values in the order of the file. */
export interface DxfRecord {
  /** `LINE`, `LAYER`, …, in capitals. */
  readonly type: string;
  /** Line of the file where it begins, from 1. */
  readonly line: number;
  readonly codes: readonly number[];
  readonly values: readonly (string | number)[];
  /** The vertices of a POLYLINE or the attributes of an INSERT. */
  readonly parts: DxfRecord[];
}

/** The first number under a code, or `otherwise` where there is none; NaN where it cannot be read. */
export function numberOf(record: DxfRecord, code: number, otherwise: number): number {
  const at = record.codes.indexOf(code);
  const value = at < 0 ? undefined : record.values[at];
  return typeof value === 'number' ? value : otherwise;
}

/** The first text under a code, or `''`. */
export function textOf(record: DxfRecord, code: number): string {
  const at = record.codes.indexOf(code);
  return at < 0 ? '' : String(record.values[at]);
}

/** Whether a record has a code. */
export function hasCode(record: DxfRecord, code: number): boolean {
  return record.codes.includes(code);
}

/** Whether a bit is set in the flags under code 70. */
export function hasFlag(record: DxfRecord, bit: number): boolean {
  return (numberOf(record, 70, 0) & bit) !== 0;
}
