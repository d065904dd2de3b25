import type { Job } from '@pourproof/job';
import type { Picture, Report } from '@pourproof/proof';

/** One artwork with its proof: all that the printers need. */
export interface Vetted {
  readonly report: Report;
  readonly picture: Picture;
  readonly job: Job;
}
