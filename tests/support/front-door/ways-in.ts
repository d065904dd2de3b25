import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import type { SettingName } from '@pourproof/job';
import {
  type JobFile,
  type Refusal,
  readCouponsFile,
  readMaterialsFile,
  refusalOf,
  refusalText,
  type VetOptions,
} from 'pourproof';
import { vi } from 'vitest';
import type { PackedAnswer, Posted, Question } from '../../../apps/viewer/src/model/question.ts';
import { unpackAnswer } from '../../../apps/viewer/src/model/unpack-answer.ts';
import { type Captured, captured, ROOT } from '../cli/captured-run.ts';
import { rememberedVet } from '../remembered-vet.ts';
import { jobOf, sourceOf, type Trial } from './trial.ts';

/** What came back through a way in: the report as JSON text, or the refusal as text. */
export type Outcome =
  | { readonly kind: 'report'; readonly text: string }
  | { readonly kind: 'refusal'; readonly text: string };

/** A refusal with all of its fields, where a way in gives them. */
export interface Refused {
  readonly outcome: Outcome;
  readonly refusal: Refusal | null;
}

/** The report as text, as the command line prints it and the page saves it. */
const reportText = (report: unknown): Outcome => ({
  kind: 'report',
  text: `${JSON.stringify(report, null, 2)}\n`,
});

const PREFIX = 'pourproof: ';

/** Through the command line, in this process or as it was built. */
export async function byCommandLine(
  trial: Trial,
  run: (argv: readonly string[], cwd: string) => Promise<Captured> | Captured = inProcess,
): Promise<Outcome> {
  const folder = mkdtempSync(join(tmpdir(), 'pourproof-way-in-'));
  try {
    const files = [trial.artwork, trial.font].filter((file) => file !== null);
    for (const { name, bytes } of files) {
      writeFileSync(join(folder, name), bytes);
    }
    const write = (name: string, data: unknown): void =>
      writeFileSync(join(folder, name), JSON.stringify(data));
    write('job.json', jobOf(trial));
    const argv = ['vet', '--job', 'job.json', '--json'];
    if (trial.materials !== undefined) {
      write('materials.json', trial.materials);
    }
    if (trial.coupons !== undefined) {
      write('mine.json', trial.coupons);
      argv.push('--coupons', 'mine.json');
    }
    return outcomeOf(await run(argv, folder));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const inProcess = (argv: readonly string[], cwd: string): Promise<Captured> => captured(argv, { cwd });

/** The command line in a process of its own, from what was built. */
export function asBuilt(argv: readonly string[], cwd: string): Captured {
  const bin = join(ROOT, 'apps/cli/bin/pourproof.js');
  const { status, stdout, stderr } = spawnSync(process.execPath, [bin, ...argv], { cwd, encoding: 'utf8' });
  return { code: status ?? -1, out: stdout, err: stderr };
}

function outcomeOf({ code, out, err }: Captured): Outcome {
  if (code === 0 || code === 1) {
    return { kind: 'report', text: out };
  }
  if (code !== 2 || out !== '' || !err.startsWith(PREFIX) || !err.endsWith('\n')) {
    throw new Error(`the command line ended with ${code}: ${out}${err}`);
  }
  return { kind: 'refusal', text: err.slice(PREFIX.length, -1) };
}

/** Materials and coupons as whoever calls the library reads them. */
function optionsOf({ materials, coupons }: Trial): VetOptions {
  return {
    ...(materials === undefined ? {} : { materials: readMaterialsFile(materials, 'materials.json') }),
    ...(coupons === undefined ? {} : { coupons: readCouponsFile(coupons, 'mine.json') }),
  };
}

/**
 * Through the library. The command line in this process has the answer of it where it asks for the very same.
 *
 * @param name what settings are called by who reads a refusal; their keys if left out
 */
export async function byLibrary(trial: Trial, name?: SettingName): Promise<Refused> {
  const source = sourceOf(trial);
  try {
    const { report } = await rememberedVet(source, jobOf(trial) as JobFile, optionsOf(trial));
    return { outcome: reportText(report), refusal: null };
  } catch (error) {
    const refusal = refusalOf(error, source, name);
    if (refusal === null) {
      throw error;
    }
    return { outcome: { kind: 'refusal', text: refusalText(refusal) }, refusal };
  }
}

/** What the viewer's page asks its worker for a trial. */
export function questionOf(trial: Trial): Question {
  return { id: 1, source: sourceOf(trial), job: jobOf(trial) as JobFile, options: optionsOf(trial) };
}

/** What the worker answered, as the page shows it. */
export function answered(packed: PackedAnswer): Refused {
  const answer = unpackAnswer(packed);
  switch (answer.kind) {
    case 'vetted':
      return { outcome: reportText(answer.report), refusal: null };
    case 'refused':
      return {
        outcome: { kind: 'refusal', text: refusalText(answer.refusal) },
        refusal: answer.refusal,
      };
    case 'fault':
      throw new Error(answer.message);
    default:
      throw new Error(`"${answer.kind}" is no last answer`);
  }
}

/** What the worker listens with. Its module is loaded once in a test process, by whichever file asks first. */
let listener: ((event: { readonly data: Posted }) => void) | undefined;

/** The module of the viewer's worker with a page made of two functions: everything between them is cloned as a browser does. */
export async function openWorker(): Promise<(trial: Trial) => Promise<Refused>> {
  const ask = await askWorker();
  return async (trial) => answered(await ask(questionOf(trial)));
}

/** The same with questions and last answers as they are posted. */
export async function askWorker(): Promise<(question: Question) => Promise<PackedAnswer>> {
  let take: (answer: PackedAnswer) => void = () => {};
  vi.stubGlobal('addEventListener', (_: string, handler: typeof listener) => {
    listener = handler;
  });
  vi.stubGlobal('postMessage', (answer: PackedAnswer) => {
    const posted = structuredClone(answer);
    if (posted.kind !== 'working' && posted.kind !== 'judged') {
      take(posted);
    }
  });
  await import('../../../apps/viewer/src/proof-worker.ts');
  const ask = listener;
  if (ask === undefined) {
    throw new Error('the worker listens to no message');
  }
  return (question) => {
    const answer = new Promise<PackedAnswer>((resolve) => {
      take = resolve;
    });
    ask({ data: structuredClone({ kind: 'ask', question }) });
    return answer;
  };
}
