import { ProofFault, refusalOf, vetter } from 'pourproof';
import { artBuffers } from './draw/art-shapes.ts';
import { fieldName } from './model/field-name.ts';
import type { Answer, Question } from './model/question.ts';
import { sheetPicture } from './model/sheet-picture.ts';

const vet = vetter();
// one at a time: a question that waits for its font must not be overtaken by the next
let last: Promise<void> = Promise.resolve();

addEventListener('message', ({ data }: MessageEvent<Question>) => {
  last = last.then(async () => {
    const answer = await answerTo(data);
    const handedOver = answer.kind === 'vetted' ? artBuffers(answer.vetted.picture.art) : [];
    (postMessage as (message: Answer, transfer: Transferable[]) => void)(answer, handedOver);
  });
});

async function answerTo({ id, source, job, options }: Question): Promise<Answer> {
  try {
    const { report, picture, job: settled } = await vet(source, job, options);
    return { id, kind: 'vetted', vetted: { report, job: settled, picture: sheetPicture(picture) } };
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
