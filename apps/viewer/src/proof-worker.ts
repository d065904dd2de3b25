import { questionAnswerer } from './model/answer-question.ts';
import type { Question } from './model/question.ts';

const answer = questionAnswerer();
// one after the other: a question that waits for a font must not be overtaken by the next one
let last: Promise<void> = Promise.resolve();

addEventListener('message', ({ data }: MessageEvent<Question>) => {
  last = last.then(async () => postMessage(await answer(data)));
});
