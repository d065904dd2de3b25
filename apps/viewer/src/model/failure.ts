import type { FaultBundle, Refusal } from 'pourproof';

/** Why there is no proof: what is wrong, where, and what to do; `''` for what is not known. */
export interface Failure extends Omit<Refusal, 'code'> {
  /** Of a fault of pourproof, what replays it. */
  readonly bundle?: FaultBundle;
}

/** A fault of pourproof as the page shows it. */
export function faultOfOurs(fault: string, bundle?: FaultBundle): Failure {
  const common = {
    what: 'pourproof could not finish this proof, and that is a fault of pourproof, not of your drawing.',
    where: bundle?.what ?? fault,
  };
  return bundle === undefined
    ? { ...common, remedy: 'Please report it together with the drawing and the job.' }
    : {
        ...common,
        remedy:
          'Please save the file below and report it with that: it holds the drawing, its font and the job.',
        bundle,
      };
}
