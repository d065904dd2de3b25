/** A column of a table in a terminal. */
export interface TextColumn {
  readonly title: string;
  /** Stands below the title; `''` for none. */
  readonly unit: string;
  readonly cells: readonly string[];
  /** Numbers stand at the right, so that their digits lie above one another. */
  readonly isRight: boolean;
}

const GAP = '  ';

/** Characters from the left edge to the right one. */
export function tableWidth(columns: readonly TextColumn[]): number {
  return columns.reduce((sum, column) => sum + widthOf(column), 0) + GAP.length * (columns.length - 1);
}

/** The lines of a table: titles, units where there are any, then the rows. */
export function tableLines(columns: readonly TextColumn[]): readonly string[] {
  const units = columns.map(({ unit }) => unit);
  const rows = Array.from({ length: columns[0]?.cells.length ?? 0 }, (_, k) =>
    columns.map(({ cells }) => cells[k] ?? ''),
  );
  return [
    columns.map(({ title }) => title),
    ...(units.some((unit) => unit !== '') ? [units] : []),
    ...rows,
  ].map((cells) =>
    cells
      .map((cell, k) => padded(cell, columns[k]))
      .join(GAP)
      .trimEnd(),
  );
}

function padded(cell: string, column: TextColumn | undefined): string {
  if (column === undefined) {
    return cell;
  }
  const space = ' '.repeat(Math.max(0, widthOf(column) - lengthOf(cell)));
  return column.isRight ? space + cell : cell + space;
}

/** Characters that a text takes in a terminal, but for wide and joined ones. */
export function lengthOf(text: string): number {
  return [...text].length;
}

function widthOf({ title, unit, cells }: TextColumn): number {
  return cells.reduce(
    (most, cell) => Math.max(most, lengthOf(cell)),
    Math.max(lengthOf(title), lengthOf(unit)),
  );
}
