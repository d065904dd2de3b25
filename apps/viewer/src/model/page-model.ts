import type { Refusal } from 'pourproof';
import { ActLog } from './act-log.ts';
import { afterAct } from './after-act.ts';
import { bareSource } from './artwork-source.ts';
import { type Asked, isSameQuestion } from './asked.ts';
import { type Bench, BLANK_BENCH, stateOf } from './bench.ts';
import type { JobPart } from './changed-job.ts';
import { type Failure, faultOfOurs } from './failure.ts';
import { chosenFont } from './font-choice.ts';
import type { ChosenFont, Loads } from './loads.ts';
import type { ChosenFile } from './opened-files.ts';
import type { PageAct, ShelfPart } from './page-acts.ts';
import type { PageState } from './page-state.ts';
import type { Answer, PageVetted, Question } from './question.ts';
import { refusalLine } from './refusal-line.ts';
import { type Selection, stillThere } from './selection.ts';
import { type Tables, tablesOf, vetOptions } from './shelf.ts';
import type { ShownProof } from './shown-proof.ts';
import { namePart } from './typed-name.ts';
import type { WorkPart } from './work-part.ts';

/** What a model of the page works with. */
export interface PagePorts {
  readonly loads: Loads;
  /** Hands a question to whoever answers by {@link PageModel.answer}. */
  readonly post: (question: Question) => void;
  /** Told that a newer question waits for the one that is worked on: whoever gives that up says so, or calls {@link PageModel.letGo}. */
  readonly overtaken: () => void;
  /** Puts a proof into words; what it takes is there before the first answer comes. */
  readonly shownProof: (asked: Asked, vetted: PageVetted, isWhole: boolean) => ShownProof;
  /** Called after every change. */
  readonly changed: () => void;
  /** Given the bench after every act, to be kept. */
  readonly kept?: (bench: Bench) => void;
}

/** Why there will be no other answer. */
export type Why =
  | { readonly kind: 'fault'; readonly message: string }
  | { readonly kind: 'refused'; readonly refusal: Refusal };

/** What is on the page: what the maker put there, and the newest proof of it. Of acts that overlap the newest wins. */
export class PageModel {
  /** All that the maker has done, newer than the proof while {@link isBusy}. */
  bench: Bench = BLANK_BENCH;
  /** The newest proof; `null` before the first, and where the newest question was refused. */
  shown: ShownProof | null = null;
  /** Why there is no proof of what is on the page; `null` while it is not known. */
  failure: Failure | null = null;
  /** The open finding of the proof that is shown. */
  selection: Selection | null = null;
  /** What the worker is at, once that takes long enough to be told. */
  working: WorkPart | null = null;

  readonly #ports: PagePorts;
  readonly #log: ActLog<Bench, PageAct> = new ActLog(BLANK_BENCH, afterAct);
  #count = 0;
  /** The newest question, and what of its answer is still to come. */
  #asked: Asked | null = null;
  #awaits: 'verdict' | 'ways' | 'nothing' = 'nothing';
  #waiting: Question | null = null;
  #isWorking = false;

  constructor(ports: PagePorts) {
    this.#ports = ports;
  }

  /** What the maker put on the page. */
  get state(): PageState {
    return stateOf(this.bench);
  }

  /** What its jobs are settled with. */
  get tables(): Tables {
    return tablesOf(this.state.shelf);
  }

  /** Whether what is shown is older than what is on the page, or something is still being loaded. */
  get isBusy(): boolean {
    return this.#log.isLoading || this.#awaits === 'verdict';
  }

  /** Opens files that were dropped or chosen together. If they cannot be used nothing changes, and the page says why. */
  openFiles(files: readonly ChosenFile[]): Promise<void> {
    const names = files.map(({ name }) => name).join(', ');
    return this.#load(async () => {
      const opened = await this.#ports.loads.files(files);
      return [{ do: 'open', files: opened }, opened.artwork !== null];
    }, `${names} could not be opened. Check that it is still there and is a file, not a folder, and try again.`);
  }

  /** Shows the demo order, with a job of its own. */
  showDemo(): Promise<void> {
    return this.#load(
      async () => [{ do: 'show-demo', demo: await this.#ports.loads.demo() }, true],
      'The demo could not be loaded. Check the connection and try again.',
    );
  }

  /** Sets words in a font, with changes to the job; those of one run are one step. */
  setLettering(text: string, font: ChosenFont, part: JobPart, run = ''): Promise<void> {
    return this.#load(async () => {
      const chosen = await this.#ports.loads.font(font);
      return [{ do: 'set-lettering', text, font: chosen, part, run }, true];
    }, 'The font could not be opened. Check that it is still there and try again.');
  }

  /** Sets a name as it is typed; `run` says which letters are typed in one go. */
  typeName(text: string, choice: string, run: string): Promise<void> {
    const font = chosenFont(choice, this.state.font);
    return font === undefined
      ? Promise.resolve()
      : this.setLettering(text, font, namePart(this.state, choice), run);
  }

  /** Lays out what was kept, or what comes instead; acts that are done meanwhile are done on it. */
  lay(bench: () => Promise<Bench>, problem: string): Promise<void> {
    return this.#load(async () => [{ do: 'lay', bench: await bench() }, true], problem);
  }

  /** Changes parts of the job; `undefined` resets a value to its default. Changes of one run are one step. */
  changeJob(part: JobPart, run = ''): void {
    this.act({ do: 'change-job', part, seen: this.bench.note, run });
  }

  /** Takes a part of the shelf off, unless a job needs it. */
  takeOff(what: ShelfPart): void {
    this.act({ do: 'take-off', what });
  }

  /** Does what needs no loading. */
  act(act: PageAct): void {
    this.#log.perform(act);
    this.#settle();
  }

  /** Takes an answer; one to an older question is let go. */
  answer(answer: Answer): void {
    const isAwaited = answer.id === this.#count && this.#asked !== null && this.#awaits !== 'nothing';
    if (answer.kind === 'working' || answer.kind === 'judged') {
      if (isAwaited) {
        this.#hear(answer, this.#asked as Asked);
        this.#ports.changed();
      }
      return;
    }
    this.#isWorking = false;
    if (isAwaited && answer.kind !== 'stopped') {
      this.#end(answer, this.#asked as Asked);
    }
    this.#send();
    this.#ports.changed();
  }

  #hear(answer: Answer & { kind: 'working' | 'judged' }, asked: Asked): void {
    if (answer.kind === 'working') {
      this.working = answer.at;
    } else {
      this.#awaits = 'ways';
      this.#show(this.#ports.shownProof(asked, answer.vetted, false));
      this.failure = null;
    }
  }

  #end(answer: Answer & { kind: 'vetted' | 'refused' | 'fault' }, asked: Asked): void {
    const judged = this.#awaits === 'ways' ? this.shown : null;
    this.#awaits = 'nothing';
    this.working = null;
    this.failure = failureIn(answer);
    this.#show(
      answer.kind === 'vetted' && judged !== null
        ? this.#ports.shownProof(
            asked,
            { report: answer.report, picture: judged.picture, job: judged.settled },
            true,
          )
        : null,
    );
  }

  /** Tells that the question that was worked on will not be answered, since it was overtaken. */
  letGo(): void {
    this.#isWorking = false;
    this.#send();
  }

  /** Tells that whoever answers has broken down: what was asked has no other answer, and the next question is for another. */
  breakDown(answer: Why): void {
    this.answer({ id: this.#count, ...answer });
  }

  /** Opens a finding of the proof that is shown at one of its places, or closes it. */
  select(selection: Selection | null): void {
    this.selection = selection;
    this.#ports.changed();
  }

  #show(shown: ShownProof | null): void {
    const isSame = shown?.source.name === this.shown?.source.name;
    this.selection = isSame ? stillThere(this.selection, shown?.entries ?? []) : null;
    this.shown = shown;
  }

  async #load(load: () => Promise<readonly [PageAct, boolean]>, problem: string): Promise<void> {
    const end = this.#log.begin();
    this.#ports.changed();
    try {
      end(...(await load()));
    } catch (error) {
      end({ do: 'note', note: refusalLine(error) ?? problem }, false);
    }
    this.#settle();
  }

  #settle(): void {
    this.bench = this.#log.state;
    this.#ports.kept?.(this.bench);
    this.#ask();
    this.#ports.changed();
  }

  #ask(): void {
    const { source, job, shelf } = this.state;
    if (source === null) {
      this.#asked = null;
      this.#awaits = 'nothing';
      this.working = null;
      this.#show(null);
      this.failure = null;
      return;
    }
    const { tables } = this;
    const asked: Asked = { source, job, shelf, tables };
    if (this.#asked !== null && isSameQuestion(asked, this.#asked)) {
      return;
    }
    this.#asked = asked;
    this.#awaits = 'verdict';
    this.working = null;
    // what was wrong with another question is not wrong with this one
    this.failure = null;
    this.#waiting = { id: ++this.#count, source: bareSource(source), job, options: vetOptions(tables) };
    this.#send();
  }

  // one question at a time is worked on; meanwhile only the newest waits
  #send(): void {
    if (this.#waiting === null) {
      return;
    }
    if (this.#isWorking) {
      this.#ports.overtaken();
      return;
    }
    this.#isWorking = true;
    this.#ports.post(this.#waiting);
    this.#waiting = null;
  }
}

function failureIn(answer: Answer & { kind: 'vetted' | 'refused' | 'fault' }): Failure | null {
  switch (answer.kind) {
    case 'vetted':
      return null;
    case 'refused':
      return answer.refusal;
    case 'fault':
      return faultOfOurs(answer.message, answer.bundle);
    default:
      return answer satisfies never;
  }
}
