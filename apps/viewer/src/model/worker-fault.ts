/** What a browser tells of a worker that failed; of one that did not load it tells nothing. */
type WorkerFailure = Partial<Pick<ErrorEvent, 'message' | 'filename' | 'lineno'>>;

/** Whether the worker's file, or one that it asks for, did not load: that may be a slip of the network, and is tried again. */
export function isUnloaded({ message }: WorkerFailure): boolean {
  return message === undefined || message === '';
}

/**
 * What failed in a worker, with the file to look at.
 *
 * @param url of the worker's file
 * @param tries how often it was started
 */
export function workerFault(event: WorkerFailure, url: string, tries: number): string {
  if (isUnloaded(event)) {
    const times = tries === 1 ? '' : `, tried ${tries} times`;
    return `the file that computes proofs did not load: ${url}${times}; load the page again, and if it comes again, look whether the server hands out this file`;
  }
  const { message, filename = '', lineno = 0 } = event;
  return filename === '' ? `${message}` : `${message} (${filename}, line ${lineno})`;
}
