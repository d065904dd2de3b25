import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import { type RunnerTestCase, type RunnerTestFile, type RunnerTestSuite, TestRunner } from 'vitest';

/** A drawn mutant as tests/mutation/hot.mjs hands it on. */
interface Drawn {
  readonly id: string;
  readonly rank: string;
}

/** What instrumented code and this runner share, by Stryker's own names. */
interface Switchboard {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  mutantCoverage?: {
    readonly static: Readonly<Record<string, number>>;
    readonly perTest: Readonly<Record<string, Readonly<Record<string, number>>>>;
  };
}

/** Times as often as without a mutant that its line may be reached, and how often in any case, before it counts as a loop without end. */
const HIT_FACTOR = 50;
const HITS_ANYWAY = 100_000;

const folder = process.env.POURPROOF_HOT ?? '';

/** Modules share what is global: each file of tests has its own runner, but all have one process. */
function shared<T>(name: string, make: () => T): T {
  const all = globalThis as unknown as Record<string, T | undefined>;
  const value = all[name] ?? make();
  all[name] = value;
  return value;
}

const board = shared<Switchboard>('__stryker__', () => ({}));
const waiting = shared<Set<Drawn>>(
  '__waiting__',
  () => new Set(JSON.parse(readFileSync(`${folder}/waiting.json`, 'utf8')) as Drawn[]),
);

function tell(line: object): void {
  appendFileSync(`${folder}/told.jsonl`, `${JSON.stringify(line)}\n`);
}

function testsOf(suite: RunnerTestSuite): RunnerTestCase[] {
  return suite.tasks.flatMap((task) => (task.type === 'suite' ? testsOf(task) : [task]));
}

/**
 * Runs a file's tests as they are, noting which reach which mutant; then for every mutant that nothing noticed yet those that reach it once more, with the
 * mutant switched on, in the same process: modules are not loaded anew. A test that then fails without it, too, found something left behind, and the
 * process is given up.
 */
export default class HotRunner extends TestRunner {
  override onBeforeTryTask(test: RunnerTestCase): void {
    board.currentTestId = test.id;
    super.onBeforeTryTask(test);
  }

  override async onAfterRunFiles(files?: RunnerTestFile[]): Promise<void> {
    // what is reached from here on is no part of a test, and not of loading either
    board.currentTestId = 'trying out';
    for (const file of files ?? []) {
      const tests = testsOf(file).filter(({ result }) => result?.state === 'pass');
      tests.sort((a, b) => (a.result?.duration ?? 0) - (b.result?.duration ?? 0));
      for (const mutant of [...waiting]) {
        await tryOut(mutant, tests, file.name);
      }
      tell({ done: file.name, static: Object.keys(board.mutantCoverage?.static ?? {}) });
    }
    board.currentTestId = undefined;
    super.onAfterRunFiles();
  }
}

async function tryOut(mutant: Drawn, tests: readonly RunnerTestCase[], file: string): Promise<void> {
  const { perTest = {} } = board.mutantCoverage ?? {};
  const reaching = tests.filter(({ id }) => perTest[id]?.[mutant.id] !== undefined);
  for (const test of reaching) {
    writeFileSync(`${folder}/now.json`, JSON.stringify({ rank: mutant.rank, file, test: test.name }));
    const hits = perTest[test.id]?.[mutant.id] ?? 0;
    const failure = await failureOf(test, mutant.id, HITS_ANYWAY + HIT_FACTOR * hits);
    if (failure !== null) {
      waiting.delete(mutant);
      const isClean = (await failureOf(test, undefined, undefined)) === null;
      tell({ caught: mutant.rank, by: `${file} > ${test.name}`, failure: failure.slice(0, 200), isClean });
      if (!isClean) {
        process.exit(3);
      }
      return;
    }
  }
  if (reaching.length > 0) {
    tell({ survived: mutant.rank, file, tests: reaching.length });
  }
}

/** What a test says when it fails with a mutant switched on; `null` where it passes. */
async function failureOf(
  test: RunnerTestCase,
  mutant: string | undefined,
  hitLimit: number | undefined,
): Promise<string | null> {
  Object.assign(board, { activeMutant: mutant, hitCount: mutant && 0, hitLimit });
  try {
    await TestRunner.getTestFn(test)();
    return null;
  } catch (error) {
    return String(error);
  } finally {
    Object.assign(board, { activeMutant: undefined, hitCount: undefined, hitLimit: undefined });
  }
}
