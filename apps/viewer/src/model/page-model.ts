import { type Act, ActLog } from './act-log.ts';
import { bareSource } from './artwork-source.ts';
import { type Asked, isSameQuestion } from './asked.ts';
import type { JobPart } from './changed-job.ts';
import { type Failure, faultOfOurs } from './failure.ts';
import type { ChosenFont, Loads } from './loads.ts';
import type { ChosenFile } from './opened-files.ts';
import {
  demoShown,
  demoTakenOff,
  filesOpened,
  jobChanged,
  letteringSet,
  materialsDropped,
  noted,
} from './page-acts.ts';
import { BLANK_PAGE, type PageState } from './page-state.ts';
import type { Answer, PageVetted, Question } from './question.ts';
import { refusalLine } from './refusal-line.ts';
import { type Selection, stillThere } from './selection.ts';
import type { ShownProof } from './shown-proof.ts';
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
}

/** What is on the page: what the maker put there, and the newest proof of it. Of acts that overlap the newest wins. */
export class PageModel {
  /** What the maker put on the page, newer than the proof while {@link isBusy}. */
  state: PageState = BLANK_PAGE;
  /** The newest proof; `null` before the first, and where the newest question was refused. */
  shown: ShownProof | null = null;
  /** Why there is no proof of what is on the page; `null` while it is not known. */
  failure: Failure | null = null;
  /** The open finding of the proof that is shown. */
  selection: Selection | null = null;
  /** What the worker is at, once that takes long enough to be told. */
  working: WorkPart | null = null;

  readonly #ports: PagePorts;
  readonly #log: ActLog<PageState> = new ActLog(BLANK_PAGE);
  #count = 0;
  /** The newest question, and what of its answer is still to come. */
  #asked: Asked | null = null;
  #awaits: 'verdict' | 'ways' | 'nothing' = 'nothing';
  #waiting: Question | null = null;
  #isWorking = false;
  /** Why nobody will answer; `''` while somebody does. */
  #breakDown = '';

  constructor(ports: PagePorts) {
    this.#ports = ports;
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
      return [filesOpened(opened), opened.artwork !== null];
    }, `${names} could not be opened. Check that it is still there and is a file, not a folder, and try again.`);
  }

  /** Shows the demo order, with a job of its own. */
  showDemo(): Promise<void> {
    return this.#load(
      async () => [demoShown(await this.#ports.loads.demo()), true],
      'The demo could not be loaded. Check the connection and try again.',
    );
  }

  /** Brings back what the maker had on the page before the demo. */
  takeDemoOff(): void {
    this.#do(demoTakenOff());
  }

  /** Sets words in a font, with changes to the job. */
  setLettering(text: string, font: ChosenFont, part: JobPart): Promise<void> {
    return this.#load(async () => {
      const chosen = await this.#ports.loads.font(font);
      return [letteringSet(text, chosen, part), true];
    }, 'The font could not be opened. Check that it is still there and try again.');
  }

  /** Changes parts of the job; `undefined` resets a value to its default. */
  changeJob(part: JobPart): void {
    this.#do(jobChanged(part, this.state.note));
  }

  /** Returns to the materials that ship with pourproof, unless a job needs the maker's own. */
  dropMaterials(): void {
    this.#do(materialsDropped());
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

  /** Tells that whoever answers has broken down, or never came up. */
  breakDown(message: string): void {
    this.#breakDown = this.#count === 0 ? message : '';
    this.answer({ id: this.#count, kind: 'fault', message });
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

  async #load(load: () => Promise<readonly [Act<PageState>, boolean]>, problem: string): Promise<void> {
    const end = this.#log.begin();
    this.#ports.changed();
    try {
      end(...(await load()));
    } catch (error) {
      end(noted(refusalLine(error) ?? problem), false);
    }
    this.#settle();
  }

  #do(act: Act<PageState>): void {
    this.#log.perform(act);
    this.#settle();
  }

  #settle(): void {
    this.state = this.#log.state;
    this.#ask();
    this.#ports.changed();
  }

  #ask(): void {
    const { source, job, materials } = this.state;
    if (source === null) {
      this.#asked = null;
      this.#awaits = 'nothing';
      this.working = null;
      this.#show(null);
      this.failure = null;
      return;
    }
    const asked: Asked = { source, job, materials };
    if (this.#asked !== null && isSameQuestion(asked, this.#asked)) {
      return;
    }
    this.#asked = asked;
    this.#awaits = 'verdict';
    this.working = null;
    // what was wrong with another question is not wrong with this one
    this.failure = null;
    this.#waiting = { id: ++this.#count, source: bareSource(source), job, options: { materials } };
    this.#send();
    if (this.#breakDown !== '') {
      this.answer({ id: this.#count, kind: 'fault', message: this.#breakDown });
    }
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
