import type { TypedJob } from '@pourproof/job';
import { defaultMaterials } from '@pourproof/materials';
import type { Act } from './act-log.ts';
import { type ArtworkSource, letteringSource, type NamedBytes } from './artwork-source.ts';
import { changedJob, type JobPart } from './changed-job.ts';
import { demoOrderJob } from './demo-order.ts';
import { jobForSource } from './job-for-source.ts';
import { jobProblem } from './job-problem.ts';
import type { OpenedFiles } from './opened-files.ts';
import { openedState } from './opened-state.ts';
import { type PageState, withoutDemo } from './page-state.ts';
import { refusalLine } from './refusal-line.ts';

type PageAct = Act<PageState>;

/** Says what went wrong and leaves everything else as it is. */
export function noted(note: string): PageAct {
  return (state) => ({ ...state, note });
}

/** Opens files that were dropped or chosen together. If they cannot be used nothing changes but the note. */
export function filesOpened(files: OpenedFiles): PageAct {
  return (state) => {
    try {
      return openedState(state, files);
    } catch (error) {
      const note = refusalLine(error);
      if (note === null) {
        throw error;
      }
      return { ...state, note };
    }
  };
}

/** Lays the demo order on the sheet, with a ticket of its own; the maker's order waits aside. */
export function demoShown(bytes: Uint8Array): PageAct {
  const source: ArtworkSource = { kind: 'file', name: 'board.svg', bytes, font: null };
  return (state) => {
    const { aside, source: own, job, ticket } = state;
    return {
      ...state,
      source,
      job: { ...demoOrderJob(), units: job.units ?? 'mm' },
      ticket: ticket + 1,
      aside: aside ?? { source: own, job },
      waitingText: '',
      waitingFile: '',
      note: '',
    };
  };
}

/** Takes the demo off the sheet and brings back what the maker had there. */
export function demoTakenOff(): PageAct {
  return (state) => ({ ...withoutDemo(state), note: '' });
}

/** Sets words, in a font of the page's, the maker's own or, with `null`, in single strokes. */
export function letteringSet(text: string, font: NamedBytes | null, part: JobPart): PageAct {
  const source = letteringSource(text, font);
  return (before) => {
    const state = withoutDemo(before);
    const job = changedJob(state.job, { ...part, font: font?.name });
    return {
      ...state,
      source,
      job: jobForSource(job, source, state.source),
      font: font ?? state.font,
      waitingText: '',
      waitingFile: '',
      note: '',
    };
  };
}

/**
 * Changes parts of the job; `undefined` resets a value to its default.
 *
 * @param seen the note that stood there when it was changed, and has been heeded with it
 */
export function jobChanged(part: JobPart, seen: string): PageAct {
  return (state) => {
    const job = changedJob(state.job, part);
    const problem = jobProblem(job, state.materials);
    return problem === ''
      ? { ...state, job, note: state.note === seen ? '' : state.note }
      : { ...state, note: problem };
  };
}

/** Returns to the materials that ship with pourproof, unless a job needs the maker's own. */
export function materialsDropped(): PageAct {
  return (state) => {
    const jobs: readonly TypedJob[] = [state.job, state.aside?.job ?? {}];
    const refusal = jobs.map((job) => jobProblem(job, defaultMaterials)).find((text) => text !== '');
    return refusal === undefined
      ? { ...state, materials: defaultMaterials, materialsName: '', note: '' }
      : { ...state, note: `The job needs these materials: ${refusal}` };
  };
}
