/**
 * Names of the values of a row that are defaults and not the maker's own entries, in the order of the row.
 *
 * @param row a resin, sealer or wood; nested groups are named `group.field`
 */
export function defaultFields(row: object): readonly string[] {
  return Object.entries(row).flatMap(([field, value]) => {
    if (typeof value !== 'object' || value === null) {
      return [];
    }
    if ('status' in value) {
      return value.status === 'entered' ? [] : [field];
    }
    return defaultFields(value).map((inner) => `${field}.${inner}`);
  });
}
