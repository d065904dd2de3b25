/** Something that the maker can put right: `message` says what is wrong, `remedy` what to type or do instead. */
export class UsageError extends Error {
  readonly remedy: string;

  constructor(message: string, remedy: string) {
    super(message);
    this.name = 'UsageError';
    this.remedy = remedy;
  }
}
