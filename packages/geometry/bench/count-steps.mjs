import { Session } from 'node:inspector/promises';

/**
 * Counts steps of our packages: how often each block of code is entered, as the engine's own coverage counts it. No clock is asked, so the same
 * work gives the same number on every machine, and production code knows nothing of it. To be started before the code has run, or what was
 * compiled before is not counted.
 */
export async function stepCounter() {
  const session = new Session();
  session.connect();
  await session.post('Profiler.enable');
  await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
  const steps = async () => {
    const { result } = await session.post('Profiler.takePreciseCoverage');
    let sum = 0;
    for (const { url, functions } of result) {
      if (/\/packages\/\w+\/(src|dist)\//.test(url)) {
        for (const { ranges } of functions) {
          sum += ranges.reduce((all, { count }) => all + count, 0);
        }
      }
    }
    return sum;
  };
  return {
    /** Steps of a run; what it gives is dropped. */
    async count(run) {
      await steps();
      run();
      return steps();
    },
    stop: () => session.disconnect(),
  };
}
