import { type Refusal, refusalOf, type Source } from 'pourproof';

/** Why there is no proof: what is wrong, where, and what to do; `''` for what is not known. */
export type Failure = Omit<Refusal, 'code'>;

/** An error as the page shows it: a refusal, or a fault of pourproof. */
export function failureOf(error: unknown, source?: Source): Failure {
  const fault = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return refusalOf(error, source) ?? faultOfOurs(fault);
}

/** A fault of pourproof as the page shows it. */
export function faultOfOurs(fault: string): Failure {
  return {
    what: 'pourproof could not finish this proof, and that is a fault of pourproof, not of your drawing.',
    where: fault,
    remedy: 'Please report it together with the drawing and the job.',
  };
}
