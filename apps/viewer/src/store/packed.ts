/** Where bytes stood: a set, which no file of JSON holds, of the one id that they are kept under. */
type Place = ReadonlySet<string>;

/** Data without its bytes, and the bytes by their ids. */
export interface Packed {
  readonly data: unknown;
  readonly files: ReadonlyMap<string, Uint8Array>;
}

/**
 * Takes bytes out of plain data, so that what changes often is small. What stands in several places is one object in each of them afterwards,
 * as before: a browser keeps it once.
 *
 * @param idOf the id that bytes are kept under, the same for the same bytes
 */
export function packed(data: unknown, idOf: (bytes: Uint8Array) => string): Packed {
  const files = new Map<string, Uint8Array>();
  const bare = changed(data, (value) => {
    if (!(value instanceof Uint8Array)) {
      return undefined;
    }
    const id = idOf(value);
    files.set(id, value);
    return new Set([id]) satisfies Place;
  });
  return { data: bare, files };
}

/**
 * Puts the bytes back.
 *
 * @throws {RangeError} where they are not there
 */
export function unpacked(data: unknown, files: ReadonlyMap<string, Uint8Array>): unknown {
  return changed(data, (value) => {
    if (!(value instanceof Set)) {
      return undefined;
    }
    const [id] = value as Place;
    const bytes = files.get(id ?? '');
    if (bytes === undefined) {
      throw new RangeError(`file ${id} is missing`);
    }
    return bytes;
  });
}

/** The ids of all bytes that stood in packed data. */
export function filesIn(data: unknown): ReadonlySet<string> {
  const ids = new Set<string>();
  changed(data, (value) => {
    if (value instanceof Set) {
      for (const id of value as Place) {
        ids.add(id);
      }
      return value;
    }
    return undefined;
  });
  return ids;
}

/** A copy of plain data in which some values are others; `undefined` leaves a value as it is. */
function changed(data: unknown, other: (value: object) => unknown): unknown {
  const seen = new Map<object, unknown>();
  const copy = (value: unknown): unknown => {
    if (typeof value !== 'object' || value === null) {
      return value;
    }
    if (seen.has(value)) {
      return seen.get(value);
    }
    const result =
      other(value) ??
      (Array.isArray(value)
        ? value.map(copy)
        : Object.fromEntries(Object.entries(value).map(([key, each]) => [key, copy(each)])));
    seen.set(value, result);
    return result;
  };
  return copy(data);
}
