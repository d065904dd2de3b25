import type { JobInput } from '@pourproof/job';
import type { RemedyPart } from './remedies.ts';

/** A way to change a job, of which more or less can be done where it has steps. */
export interface Candidate {
  readonly part: RemedyPart;
  /** As many steps as a formula proposes; 1 where there is no more or less. */
  readonly guess: number;
  readonly most: number;
  /** The job changed by so many steps; `null` where no setting says it. */
  readonly at: (steps: number) => JobInput | null;
}
