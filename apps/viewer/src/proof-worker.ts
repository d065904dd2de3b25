import { ProofFault, ProofStopped, refusalOf, vetter } from 'pourproof';
import { artBuffers } from './draw/art-shapes.ts';
import { fieldName } from './model/field-name.ts';
import { packedBuffers, packReport } from './model/packed-report.ts';
import { isUnfetched, pageIncomplete } from './model/page-incomplete.ts';
import type { PackedAnswer, Posted, Question } from './model/question.ts';
import { sheetPicture } from './model/sheet-picture.ts';
import { partOfStage, type WorkPart } from './model/work-part.ts';

/** What takes less is not told, and nothing is told more often, ms (our choice). */
const TELL_EVERY_MS = 1000;
/** How long ways out are tried until messages are looked at, ms: well below what a stop may take. */
const LISTEN_EVERY_MS = 20;

const vet = vetter();
// one at a time: a question that waits for its font must not be overtaken by the next
let last: Promise<void> = Promise.resolve();
const stopped = new Set<number>();

addEventListener('message', ({ data }: MessageEvent<Posted>) => {
  if (data.kind === 'stop') {
    stopped.add(data.id);
    return;
  }
  last = last.then(async () => {
    tell(await answerTo(data.question));
    stopped.delete(data.question.id);
  });
});

function tell(answer: PackedAnswer): void {
  (postMessage as (message: PackedAnswer, transfer: Transferable[]) => void)(answer, handedOver(answer));
}

/** Memory that goes to the page instead of being copied. */
function handedOver(answer: PackedAnswer): ArrayBuffer[] {
  switch (answer.kind) {
    case 'judged': {
      const { report, picture } = answer.vetted;
      return [...packedBuffers(report), ...artBuffers(picture.art), ...artBuffers(picture.artToGive)];
    }
    case 'vetted':
      return packedBuffers(answer.report);
    default:
      return [];
  }
}

async function answerTo({ id, source, job, options }: Question): Promise<PackedAnswer> {
  const follow = progress(id);
  try {
    const { report } = await vet(source, job, {
      ...options,
      watch: {
        onStage: (stage) => follow.at(partOfStage(stage)),
        isStopped: () => stopped.has(id),
        pause: pauses(),
      },
      onJudged: ({ report: judged, picture, job: settled }) => {
        tell({
          id,
          kind: 'judged',
          vetted: { report: packReport(judged), job: settled, picture: sheetPicture(picture) },
        });
        follow.onWays();
      },
    });
    return { id, kind: 'vetted', report: packReport(report) };
  } catch (error) {
    return error instanceof ProofStopped ? { id, kind: 'stopped' } : failed(id, error, source);
  }
}

function failed(id: number, error: unknown, source: Question['source']): PackedAnswer {
  const isIncomplete = error instanceof ProofFault && isUnfetched(error.cause);
  const refusal = isIncomplete
    ? pageIncomplete('The part of the page that reads this artwork')
    : refusalOf(error, source, fieldName);
  return refusal !== null
    ? { id, kind: 'refused', refusal }
    : {
        id,
        kind: 'fault',
        message: String(error),
        ...(error instanceof ProofFault ? { bundle: error.bundle } : {}),
      };
}

/** Tells what is worked on, where that takes long; stages of jobs that are tried are all one. */
function progress(id: number): { readonly at: (part: WorkPart) => void; readonly onWays: () => void } {
  let told: WorkPart | null = null;
  let since = performance.now();
  let areWays = false;
  const at = (part: WorkPart): void => {
    const now = performance.now();
    const current = areWays ? 'ways' : part;
    if (current !== told && now - since >= TELL_EVERY_MS) {
      told = current;
      since = now;
      tell({ id, kind: 'working', at: current });
    }
  };
  return {
    at,
    onWays: () => {
      areWays = true;
    },
  };
}

/** Lets messages in now and then. */
function pauses(): () => Promise<void> {
  let since = performance.now();
  return async () => {
    if (performance.now() - since >= LISTEN_EVERY_MS) {
      await new Promise((resolve) => setTimeout(resolve));
      since = performance.now();
    }
  };
}
