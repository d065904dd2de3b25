/** What a browser tells of a worker that failed; of one that did not load it tells nothing. */
type WorkerFailure = Partial<Pick<ErrorEvent, 'message' | 'filename' | 'lineno'>>;

/** Whether the worker's file, or one that it asks for, did not load: that may be a slip of the network, and is tried again. */
export function isUnloaded({ message }: WorkerFailure): boolean {
  return message === undefined || message === '';
}

/** What failed in a worker, with the file and the line to look at. */
export function workerFault({ message, filename = '', lineno = 0 }: WorkerFailure): string {
  return filename === '' ? `${message}` : `${message} (${filename}, line ${lineno})`;
}
