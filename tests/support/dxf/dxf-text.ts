/** Text of a DXF file with the given pairs in its ENTITIES section, and other sections before. */
export function dxfText(
  entities: readonly (string | number)[],
  parts: {
    header?: readonly (string | number)[];
    tables?: readonly (string | number)[];
    blocks?: readonly (string | number)[];
  } = {},
): string {
  const section = (name: string, pairs: readonly (string | number)[] | undefined): (string | number)[] =>
    pairs === undefined ? [] : [0, 'SECTION', 2, name, ...pairs, 0, 'ENDSEC'];
  return `${[
    ...section('HEADER', parts.header),
    ...section('TABLES', parts.tables),
    ...section('BLOCKS', parts.blocks),
    ...section('ENTITIES', entities),
    0,
    'EOF',
  ].join('\n')}\n`;
}

/** Header pairs that say millimetres. */
export const MM: readonly (string | number)[] = [9, '$INSUNITS', 70, 4];
