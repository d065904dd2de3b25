import { SETTING_KEYS } from '@pourproof/job';
import { refusalText, type Source, type Vetted } from 'pourproof';
import { type ManyItem, vetMany } from 'pourproof/many';
import { faultText } from './fault-text.ts';
import type { Io } from './io.ts';
import { kept } from './kept-fault.ts';
import { messageOf } from './message-of.ts';
import { openSource } from './open-source.ts';
import type { Request } from './request.ts';

/**
 * Vets the sources of a request on all cores.
 *
 * @param folder where the file of a fault goes
 * @returns what came of each in its order: what was vetted, or the exit code of what was told on the error stream instead
 */
export async function* vettedByThreads(
  request: Request,
  folder: string,
  io: Io,
): AsyncGenerator<Vetted | 2 | 70> {
  // a file that cannot be read is told in its turn, not when it is drawn, which is some items before
  const unread = new Map<number, string>();
  const opened: number[] = [];
  const names = Object.fromEntries(SETTING_KEYS.map((key) => [key, request.name(key)]));
  async function* items(): AsyncGenerator<ManyItem> {
    for (const [k, path] of request.sources.entries()) {
      try {
        const source: Source = await openSource(path, io);
        opened.push(k);
        yield { source, job: request.job, options: request.options };
      } catch (error) {
        const message = messageOf(error, { name: request.name });
        if (message === null) {
          throw error;
        }
        unread.set(k, message);
      }
    }
  }
  let next = 0;
  function* told(before: number): Generator<2> {
    for (; next < before; next++) {
      io.err.write(unread.get(next) ?? '');
      yield 2;
    }
    next++;
  }
  for await (const answer of vetMany(items(), { names })) {
    yield* told(opened.shift() ?? next);
    if (answer.kind === 'vetted') {
      yield answer.vetted;
    } else if (answer.kind === 'refused') {
      io.err.write(`pourproof: ${refusalText(answer.refusal)}\n`);
      yield 2;
    } else {
      const { what, bundle } = answer;
      const fault = bundle === undefined ? new Error(what) : await kept({ what, bundle }, folder, io);
      io.err.write(faultText(fault, io));
      yield 70;
    }
  }
  yield* told(request.sources.length);
}
