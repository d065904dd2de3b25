import type { JobPart } from './changed-job.ts';
import { fontChoice, SINGLE_STROKES } from './font-choice.ts';
import { OFFERED_CAP_HEIGHT } from './lettering-part.ts';
import { type PageState, withoutDemo } from './page-state.ts';

/** What typing a name changes in the job: letters that nothing sizes yet get the height that the form offers. */
export function namePart(before: PageState, choice: string): JobPart {
  const { source, job } = withoutDemo(before);
  const isSized = source?.kind === 'lettering' && (job.capHeight !== undefined || job.width !== undefined);
  return {
    ...(isSized ? {} : { capHeight: OFFERED_CAP_HEIGHT }),
    singleLine: choice === SINGLE_STROKES ? true : undefined,
    // axes are those of one font
    ...(choice === fontChoice(job) ? {} : { axis: undefined }),
  };
}
