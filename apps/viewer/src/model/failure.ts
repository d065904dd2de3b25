import type { Refusal } from 'pourproof';

/** Why there is no proof: what is wrong, where, and what to do; `''` for what is not known. */
export type Failure = Omit<Refusal, 'code'>;

/** A fault of pourproof as the page shows it. */
export function faultOfOurs(fault: string): Failure {
  return {
    what: 'pourproof could not finish this proof, and that is a fault of pourproof, not of your drawing.',
    where: fault,
    remedy: 'Please report it together with the drawing and the job.',
  };
}
