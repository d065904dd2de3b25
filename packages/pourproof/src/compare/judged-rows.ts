import { mergeJobs } from '@pourproof/job';
import type { Vetted } from '@pourproof/wording';
import { refusalOf } from '../refusal.ts';
import { vetter } from '../vet.ts';
import { figuresOf } from './figures.ts';
import type { PostedRows, RowOutcome, RowPicture } from './row.ts';

/**
 * What some rows of one source come to, in their order: one after the other with the stages of those before kept, so that rows which differ
 * in little cost little.
 */
export async function judgedRows({
  source,
  job,
  rows,
  options,
  names,
  isPictured,
}: PostedRows): Promise<readonly RowOutcome[]> {
  const judge = vetter();
  const outcomes: RowOutcome[] = [];
  for (const values of rows) {
    try {
      const vetted = await judge(source, mergeJobs(job, values), { ...options, waysOut: 'none' });
      outcomes.push({
        is: 'judged',
        figures: figuresOf(vetted.report),
        ...(isPictured ? { picture: pictureOf(vetted) } : {}),
      });
    } catch (error) {
      const refusal = refusalOf(error, source, (key) => names[key] ?? key);
      outcomes.push(
        refusal === null
          ? { is: 'fault', what: error instanceof Error ? error.message : String(error) }
          : { is: 'refused', refusal },
      );
    }
  }
  return outcomes;
}

function pictureOf({ picture: { artwork, cut, standing, boundsMm } }: Vetted): RowPicture {
  return { artwork, cut, standing, boundsMm };
}
