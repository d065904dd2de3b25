/** A mistake on the command line or in a file: `message` says what is wrong, `remedy` what to do instead. */
export class UsageError extends Error {
  readonly remedy: string;

  constructor(message: string, remedy: string) {
    super(message);
    this.name = 'UsageError';
    this.remedy = remedy;
  }
}
