/** A line of a table: what, how much, and a remark. */
export interface Fact {
  readonly name: string;
  readonly value: string;
  readonly remark: string;
}

/** A line of a table. */
export function fact(name: string, value: string, remark: string): Fact {
  return { name, value, remark };
}
