/** Sources named beside a finding. */
const MAX_SOURCES = 3;

/** The first sources of a finding and how many more there are. */
export function shortBasis(basis: readonly string[]): readonly string[] {
  const shown = basis.slice(0, MAX_SOURCES);
  return basis.length > shown.length
    ? [...shown, `${basis.length - shown.length} more (--json, docs/sources.md)`]
    : shown;
}
