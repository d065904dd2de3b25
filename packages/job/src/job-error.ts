/** A job that cannot be read; the message says which key, why, and what to write. */
export class JobError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'JobError';
  }
}
