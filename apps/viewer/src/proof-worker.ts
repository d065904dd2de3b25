import { ProofFault, refusalOf, vetter } from 'pourproof';
import { fieldName } from './model/field-name.ts';
import type { Answer, Question } from './model/question.ts';

const vet = vetter();
// one at a time: a question that waits for its font must not be overtaken by the next
let last: Promise<void> = Promise.resolve();

addEventListener('message', ({ data }: MessageEvent<Question>) => {
  last = last.then(async () => postMessage(await answerTo(data)));
});

async function answerTo({ id, source, job, options }: Question): Promise<Answer> {
  try {
    return { id, kind: 'vetted', vetted: await vet(source, job, options) };
  } catch (error) {
    const refusal = refusalOf(error, source, fieldName);
    if (refusal !== null) {
      return { id, kind: 'refused', refusal };
    }
    return {
      id,
      kind: 'fault',
      message: String(error),
      ...(error instanceof ProofFault ? { bundle: error.bundle } : {}),
    };
  }
}
