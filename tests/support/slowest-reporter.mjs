// A reporter that ends a run with its ten slowest tests, each with its share of its time limit.

/** Tests in the order of their share of the limit, the largest first: name, seconds, limit in seconds. */
export function slowest(tests, count) {
  return tests
    .toSorted((a, b) => b.seconds / b.limitSeconds - a.seconds / a.limitSeconds)
    .slice(0, count)
    .map(
      ({ name, seconds, limitSeconds }) =>
        `${seconds.toFixed(1).padStart(6)} s of ${limitSeconds} s (${Math.round((100 * seconds) / limitSeconds)} %)  ${name}`,
    );
}

export default class SlowestReporter {
  onTestRunEnd(modules) {
    const tests = modules.flatMap((module) =>
      [...module.children.allTests()].map((test) => ({
        name: `${module.relativeModuleId} > ${test.fullName}`,
        seconds: (test.diagnostic()?.duration ?? 0) / 1000,
        limitSeconds: (test.options.timeout ?? module.project.config.testTimeout) / 1000,
      })),
    );
    console.log(`\nThe slowest tests, none of which should take half of its limit:`);
    console.log(slowest(tests, 10).join('\n'));
  }
}
