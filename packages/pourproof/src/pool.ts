import { Tinypool } from 'tinypool';

/** A thread that holds more than this between two items is started anew, in bytes. */
const RECYCLE_BYTES = 1 << 30;

/**
 * A pool of threads that answer what is posted to them.
 *
 * @param threads as many as the machine has cores if left out
 * @param heapMb memory that one thread may take for its objects, MB
 * @throws {RangeError} when `threads` is no whole number above 0
 */
export function poolOf({
  threads,
  heapMb,
}: {
  readonly threads: number | undefined;
  readonly heapMb?: number | undefined;
}): Tinypool {
  if (threads !== undefined && !(Number.isInteger(threads) && threads > 0)) {
    throw new RangeError(`threads is a whole number above 0, not ${threads}`);
  }
  return new Tinypool({
    // beside this file, and beside the bundle that holds it
    filename: (import.meta as { readonly url: string }).url.replace(/[^/]*$/u, 'many-worker.js'),
    minThreads: 0,
    // conditions and loaders of this process would have threads load other code
    execArgv: [],
    ...(threads === undefined ? {} : { maxThreads: threads }),
    ...(heapMb === undefined ? {} : { resourceLimits: { maxOldGenerationSizeMb: heapMb } }),
    maxMemoryLimitBeforeRecycle: RECYCLE_BYTES,
  });
}
