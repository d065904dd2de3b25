import { judgedRows } from './compare/judged-rows.ts';
import type { PostedRows, RowOutcome } from './compare/row.ts';
import { ProofFault } from './fault.ts';
import type { ManyAnswer, PostedItem } from './many.ts';
import { refusalOf } from './refusal.ts';
import { vet } from './vet.ts';

/** Does what is posted to a thread: vets one of many, or judges some rows of a comparison. */
// biome-ignore lint/style/noDefaultExport: the pool calls the default export
export default async function answerPosted(
  posted: PostedItem | PostedRows,
): Promise<ManyAnswer | readonly RowOutcome[]> {
  return 'rows' in posted ? judgedRows(posted) : vetPosted(posted);
}

/** Vets one of many, in a thread of its own. Whatever is thrown is answered, since classes do not go from thread to thread. */
async function vetPosted({ source, job, options, names }: PostedItem): Promise<ManyAnswer> {
  try {
    return { kind: 'vetted', vetted: await vet(source, job, options) };
  } catch (error) {
    const refusal = refusalOf(error, source, (key) => names[key] ?? key);
    if (refusal !== null) {
      return { kind: 'refused', refusal };
    }
    return {
      kind: 'fault',
      what: error instanceof Error ? error.message : String(error),
      ...(error instanceof ProofFault ? { bundle: error.bundle } : {}),
    };
  }
}
