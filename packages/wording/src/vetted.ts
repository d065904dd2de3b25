import type { Job } from '@pourproof/job';
import type { Picture, Report } from '@pourproof/proof';

/** One vetted artwork: all that the templates need. */
export interface Vetted {
  readonly report: Report;
  readonly picture: Picture;
  readonly job: Job;
}
