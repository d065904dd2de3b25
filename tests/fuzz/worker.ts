import process from 'node:process';
import { parentPort, workerData } from 'node:worker_threads';
import fc from 'fast-check';
import { FUZZ_TARGETS } from './targets.ts';

/** What the campaign asks of a worker: one target for so long, from one seed. */
interface Order {
  readonly target: string;
  readonly seed: number;
  readonly ms: number;
  readonly most: number;
  /** Number of the input that is being tried, for who watches over hangs. */
  readonly heartbeat: Int32Array;
}

const order = workerData as Order;
const target = FUZZ_TARGETS.find(({ name }) => name === order.target);
if (target === undefined) {
  throw new Error(`no target ${order.target}`);
}
const { heartbeat } = order;
let slowest = { ms: 0, input: '' };
const started = performance.now();

// the time of each input, without asking the arbitrary: the property is wrapped where it is run
const { property } = target;
const run = property.run.bind(property);
/** Processor time of the process, ms: the campaign's own thread only waits. */
const spent = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** On a busy machine wall time says little: what seems slow is run once more by processor time. */
async function weigh(value: unknown[]): Promise<void> {
  const from = spent();
  await run(value);
  const ms = spent() - from;
  if (ms > target!.limitMs && ms > slowest.ms) {
    slowest = { ms: Math.round(ms), input: fc.stringify(value).slice(0, 5000) };
  }
}

const slow: unknown[][] = [];
property.run = (value: unknown[]) => {
  Atomics.add(heartbeat, 0, 1);
  const from = performance.now();
  const result = run(value);
  const done = (outcomeOfRun: unknown): unknown => {
    if (performance.now() - from > target.limitMs && slow.length < 5) {
      slow.push(value);
    }
    return outcomeOfRun;
  };
  return (result instanceof Promise ? result.then(done) : done(result)) as ReturnType<typeof run>;
};

const outcome = await fc.check(property as fc.IRawProperty<unknown[]>, {
  seed: order.seed,
  numRuns: order.most,
  interruptAfterTimeLimit: order.ms,
  markInterruptAsFailure: false,
});
for (const value of slow) {
  await weigh(value);
}
parentPort?.postMessage({
  runs: outcome.numRuns,
  shrinks: outcome.numShrinks,
  ms: performance.now() - started,
  slowest,
  failure: outcome.failed
    ? {
        seed: outcome.seed,
        path: outcome.counterexamplePath,
        message: String((outcome.errorInstance as Error | undefined)?.stack ?? outcome.errorInstance).slice(
          0,
          1500,
        ),
        input: fc.stringify(outcome.counterexample).slice(0, 20_000),
      }
    : null,
});
// a font library keeps timers of its own
process.exitCode = 0;
