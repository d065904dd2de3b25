/** Sources named beside a finding. */
const MOST_SOURCES = 3;

/** The first sources of a finding and how many more there are. */
export function shortBasis(basis: readonly string[]): readonly string[] {
  const shown = basis.slice(0, MOST_SOURCES);
  return basis.length > shown.length
    ? [...shown, `${basis.length - shown.length} more (--json, docs/sources.md)`]
    : shown;
}
